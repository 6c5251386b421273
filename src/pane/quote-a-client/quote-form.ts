import type { Shop } from "../../lots/shop";
import { type FormField, type MeasuredField, choiceField, measuredField, textField } from "../form-field";
import { dateField } from "../date-field";
import { withTake } from "../taking-field";
import { massChoices, perMassChoices } from "../unit-choices";
import type { Selected } from "../selection";
import { h } from "../dom";
import type { Entered } from "./memory";
import type { Prefill } from "./prefill";
import { LABELS, type QuoteKey } from "./quote-keys";

export interface QuoteForm {
  /** Those of a part of the form, each part in a group of its own. */
  readonly goods: HTMLElement;
  readonly fineness: HTMLElement;
  readonly terms: HTMLElement;
  readonly paper: HTMLElement;
  /** Puts what is known into every field that nobody has written into. */
  show(prefills: ReadonlyMap<QuoteKey, Prefill>, entered: ReadonlyMap<QuoteKey, Entered>): void;
  read(key: QuoteKey): Entered;
  /** The sentence of each field; a remark does not make it wrong. */
  say(faults: ReadonlyMap<QuoteKey, string>, remarks: ReadonlyMap<QuoteKey, string>): void;
  offer(selected: Selected | null): void;
  focus(key: QuoteKey): void;
}

const OPTIONAL = "may be left out";
const BASES = ["the stamp", "our assay", "the client's assay", "agreed with the client"];

export function quoteForm({ currency }: Shop, touched: (key: QuoteKey) => void): QuoteForm {
  const froms = new Map<QuoteKey, string>();
  const changed = (key: QuoteKey): void => {
    froms.delete(key);
    touched(key);
  };
  const money = currency && "value" in currency ? ` in ${currency.value}` : "";
  const text = (key: QuoteKey, more: { about?: string; optional?: string; suggestions?: readonly string[]; lines?: number } = {}): FormField => textField({ label: LABELS[key], ...more }, () => changed(key));
  const rate = (key: QuoteKey, more: { about?: string; optional?: string } = {}): MeasuredField => measuredField({ label: LABELS[key], units: perMassChoices, unit: "ozt", ...more }, () => changed(key));
  const measured = {
    weight: withTake(measuredField({ label: LABELS.weight, units: massChoices, unit: "g" }, () => changed("weight")), LABELS.weight, () => changed("weight")),
    price: withTake(rate("price", { about: `The number as it is now${money}; a cell that it came from is named on the paper.` }), LABELS.price, () => changed("price")),
    refiningCharge: rate("refiningCharge", { optional: OPTIONAL, about: "Per weight of payable fine metal." }),
    treatmentCharge: rate("treatmentCharge", { optional: OPTIONAL, about: "Per weight of the goods." }),
  };
  const fields: Readonly<Record<QuoteKey, FormField>> = {
    ...measured,
    low: text("low"),
    likely: text("likely", { about: "As it is written: 925, 92.5% or 22k." }),
    high: text("high"),
    swing: text("swing", { optional: OPTIONAL, about: "As 5%." }),
    payable: text("payable", { about: "Of the fine weight, as 98%." }),
    lotCharges: text("lotCharges", { optional: OPTIONAL, about: `For the lot as a whole${money}.` }),
    deduction: text("deduction", { optional: OPTIONAL, about: "Of the fineness, as 5‰, where that takes more than the payable share." }),
    client: text("client", { lines: 2, optional: OPTIONAL }),
    goods: text("goods", { lines: 3, optional: OPTIONAL }),
    basis: text("basis", { optional: OPTIONAL, suggestions: BASES }),
    payment: choiceField({ label: LABELS.payment, choices: PAYMENTS }, () => changed("payment")),
    metalUnit: choiceField({ label: LABELS.metalUnit, choices: METAL_UNITS }, () => changed("metalUnit")),
    number: text("number"),
    date: dateField({ label: LABELS.date, value: "" }, () => changed("date")),
    days: text("days"),
  };
  const measuredOf = (key: QuoteKey): MeasuredField | undefined => (measured as Partial<Record<QuoteKey, MeasuredField>>)[key];
  const part = (legend: string, ...keys: readonly QuoteKey[]): HTMLElement => h("fieldset", {}, h("legend", {}, legend), h("div", { class: "lw-fields" }, ...keys.map((key) => fields[key].element)));
  return {
    goods: part("What is offered", "client", "goods", "weight"),
    fineness: part("What is assumed of the metal", "low", "likely", "high", "basis"),
    terms: part("The terms", "price", "swing", "payable", "refiningCharge", "treatmentCharge", "lotCharges", "deduction", "payment", "metalUnit"),
    paper: part("The paper", "number", "date", "days"),
    show(prefills, entered) {
      froms.clear();
      for (const [key, field] of Object.entries(fields) as [QuoteKey, FormField][]) {
        const own = entered.get(key);
        const { text: known = "", unit, from } = own ? { ...own, from: undefined } : (prefills.get(key) ?? {});
        field.set(known);
        measuredOf(key)?.setUnit(unit ?? USUAL_UNITS[key] ?? "ozt");
        if (from !== undefined && known !== "") froms.set(key, from);
      }
    },
    read(key) {
      const unit = measuredOf(key)?.unit();
      return { text: fields[key].text(), ...(unit === undefined ? {} : { unit }) };
    },
    say(faults, remarks) {
      fields.metalUnit.element.hidden = fields.payment.text() === "money";
      for (const [key, field] of Object.entries(fields) as [QuoteKey, FormField][]) {
        const fault = faults.get(key);
        const remark = remarks.get(key);
        field.element.classList.toggle("lw-remarked", fault === undefined && remark !== undefined);
        field.say(fault ?? remark ?? froms.get(key) ?? null, fault !== undefined);
      }
    },
    offer(selected) {
      measured.weight.offer(selected);
      measured.price.offer(selected);
    },
    focus: (key) => fields[key].focus(),
  };
}

const USUAL_UNITS: Readonly<Partial<Record<QuoteKey, string>>> = { weight: "g", treatmentCharge: "kg" };
const PAYMENTS = [
  { value: "money", label: "in money" },
  { value: "metal", label: "in metal" },
  { value: "either", label: "either, as the client chooses" },
];
const METAL_UNITS = [
  { value: "ozt", label: "ozt (troy)" },
  { value: "g", label: "g" },
  { value: "kg", label: "kg" },
];
