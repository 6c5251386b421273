import type { Shop } from "../../lots/shop";
import { dateField } from "../date-field";
import { h } from "../dom";
import { type FormField, type MeasuredField, choiceField, measuredField, textField } from "../form-field";
import type { Prefill } from "../quote-a-client/prefill";
import type { Selected } from "../selection";
import { withTake } from "../taking-field";
import { massChoices, perMassChoices } from "../unit-choices";
import type { Entered } from "./memory";
import { LABELS, type RateKey, type SettleKey, type WeightKey } from "./settle-keys";

export interface SettleForm {
  /** Parts of the form, each in a group of its own. */
  readonly parts: readonly HTMLElement[];
  /** Puts what is known into every field that nobody has written into. */
  show(prefills: ReadonlyMap<SettleKey, Prefill>, entered: ReadonlyMap<SettleKey, Entered>): void;
  read(key: SettleKey): Entered;
  /** The sentence of each field; a remark does not make it wrong. */
  say(faults: ReadonlyMap<SettleKey, string>, remarks: ReadonlyMap<SettleKey, string>): void;
  offer(selected: Selected | null): void;
  focus(key: SettleKey): void;
}

const OPTIONAL = "may be left out";

export function settleForm({ currency }: Shop, changed: (key: SettleKey) => void): SettleForm {
  const money = currency && "value" in currency ? ` in ${currency.value}` : "";
  const text = (key: SettleKey, more: { about?: string; optional?: string; lines?: number } = {}): FormField => textField({ label: LABELS[key], ...more }, () => changed(key));
  const weight = (key: WeightKey, unit: string, more: { about?: string; optional?: string } = {}): MeasuredField => measuredField({ label: LABELS[key], units: massChoices, unit, ...more }, () => changed(key));
  const rate = (key: RateKey, more: { about?: string; optional?: string } = {}): MeasuredField => measuredField({ label: LABELS[key], units: perMassChoices, unit: "ozt", ...more }, () => changed(key));
  const price = withTake(rate("price", { about: `The number as it is now${money}; a cell that it came from is named on the statement.` }), LABELS.price, () => changed("price"));
  const measured: Readonly<Partial<Record<SettleKey, MeasuredField>>> = {
    weight: weight("weight", "g"),
    outturn: weight("outturn", "ozt", { optional: OPTIONAL, about: "The fine silver that the lot really gave. Without it the statement goes without its recovery." }),
    dropped: weight("dropped", "ozt", { optional: OPTIONAL, about: "Needed only where some of it is still in process." }),
    liquor: weight("liquor", "ozt", { optional: OPTIONAL }),
    stubs: weight("stubs", "ozt", { optional: OPTIONAL }),
    residues: weight("residues", "ozt", { optional: OPTIONAL, about: "Fine silver held back, by test or by the usual share." }),
    price,
    refiningCharge: rate("refiningCharge", { optional: OPTIONAL, about: "Per weight of payable fine metal." }),
    treatmentCharge: rate("treatmentCharge", { optional: OPTIONAL, about: "Per weight of the goods." }),
  };
  const fields = {
    client: text("client", { lines: 2, optional: OPTIONAL }),
    goods: text("goods", { lines: 2, optional: OPTIONAL }),
    ours: text("ours", { about: "As it is written: 925, 92.5% or 22k." }),
    theirs: text("theirs", { optional: OPTIONAL }),
    limit: text("limit", { about: "On the scale of our assay, as 3, or with its sign, as 3‰. Within it the mean of both is settled on." }),
    umpire: text("umpire", { about: "Decides where the two are further apart." }),
    payable: text("payable", { about: "Of the fine weight, as 98%." }),
    lotCharges: text("lotCharges", { optional: OPTIONAL, about: `For the lot as a whole${money}.` }),
    deduction: text("deduction", { optional: OPTIONAL, about: "Of the fineness, as 5‰, where that takes more than the payable share." }),
    payment: choiceField({ label: LABELS.payment, choices: PAYMENTS }, () => changed("payment")),
    metalUnit: choiceField({ label: LABELS.metalUnit, choices: METAL_UNITS }, () => changed("metalUnit")),
    quoted: text("quoted", { optional: OPTIONAL, about: `At the likely fineness${money}; stands beside what is settled.` }),
    number: text("number"),
    date: dateField({ label: LABELS.date, value: "" }, () => changed("date")),
    ...measured,
  } as Readonly<Record<SettleKey, FormField>>;
  const part = (legend: string, ...keys: readonly SettleKey[]): HTMLElement => h("fieldset", {}, h("legend", {}, legend), h("div", { class: "lw-fields" }, ...keys.map((key) => fields[key].element)));
  const froms = new Map<SettleKey, string>();
  return {
    parts: [
      part("What was received", "client", "goods", "weight"),
      part("The assays", "ours", "theirs", "limit", "umpire"),
      part("What came out", "outturn", "stubs", "residues", "liquor", "dropped"),
      part("The terms", "price", "payable", "refiningCharge", "treatmentCharge", "lotCharges", "deduction", "payment", "metalUnit", "quoted"),
      part("The statement", "number", "date"),
    ],
    show(prefills, entered) {
      froms.clear();
      for (const [key, field] of Object.entries(fields) as [SettleKey, FormField][]) {
        const own = entered.get(key);
        const { text: known = "", unit, from } = own ? { ...own, from: undefined } : (prefills.get(key) ?? {});
        field.set(known);
        measured[key]?.setUnit(unit ?? USUAL_UNITS[key] ?? "ozt");
        if (from !== undefined && known !== "") froms.set(key, from);
      }
    },
    read(key) {
      const unit = measured[key]?.unit();
      return { text: fields[key].text(), ...(unit === undefined ? {} : { unit }) };
    },
    say(faults, remarks) {
      fields.metalUnit.element.hidden = fields.payment.text() === "money";
      const areTwo = fields.ours.text() !== "" && fields.theirs.text() !== "";
      fields.limit.element.hidden = !areTwo;
      fields.umpire.element.hidden = !areTwo;
      for (const [key, field] of Object.entries(fields) as [SettleKey, FormField][]) {
        const fault = faults.get(key);
        const remark = remarks.get(key);
        field.element.classList.toggle("lw-remarked", fault === undefined && remark !== undefined);
        field.say(fault ?? remark ?? froms.get(key) ?? null, fault !== undefined);
      }
    },
    offer: (selected) => price.offer(selected),
    focus: (key) => fields[key].focus(),
  };
}

const USUAL_UNITS: Readonly<Partial<Record<SettleKey, string>>> = { weight: "g", treatmentCharge: "kg" };
const PAYMENTS = [
  { value: "money", label: "in money" },
  { value: "metal", label: "in metal" },
];
const METAL_UNITS = [
  { value: "ozt", label: "ozt (troy)" },
  { value: "g", label: "g" },
  { value: "kg", label: "kg" },
];
