import { type FieldId, fieldOf } from "../../lots/fields";
import { matchOf } from "../../lots/list";
import { h } from "../dom";
import { type FormField, type MeasuredField, choiceField, measuredField, textField } from "../form-field";
import type { Selected } from "../selection";
import { dateField } from "../date-field";
import { BASES, type LotKey, type TermKey } from "./lot-keys";
import type { Draft, Typed } from "./memory";
import { type Known, suggestions } from "./prefill";
import { type ReadingsField, readingsField } from "./readings-field";
import type { Located } from "./session";
import { withTake } from "../taking-field";
import { massChoices, perMassChoices } from "../unit-choices";

/** The form of a lot. What nobody has touched stays as it is proposed. */
export interface LotForm {
  readonly element: HTMLElement;
  typed(key: LotKey): Typed;
  offer(selected: Selected | null): void;
  /** One sentence a field; those that are no faults are remarks. */
  say(sentences: ReadonlyMap<LotKey, { readonly sentence: string; readonly isFault: boolean }>): void;
  focusFirst(): void;
  focus(key: LotKey): void;
}

const ABOUT: Readonly<Record<TermKey, string>> = {
  price: "Of fine metal. A number, or the cell that holds it.",
  payable: "Share of the fine weight that is paid for.",
  refiningCharge: "Of the payable fine weight.",
  treatmentCharge: "Of the net weight.",
  lotCharges: "For the lot as a whole.",
  deduction: "The least that is kept of the fineness, in ‰.",
};

export function lotForm(located: Located, known: Known, draft: Draft, changed: () => void): LotForm {
  const { matches } = located.match;
  const has = (field: FieldId): boolean => matchOf(matches, field) !== undefined;
  const fields = new Map<LotKey, FormField>();
  const weights = new Map<"gross" | "tare", ReadingsField>();
  const taking: ReturnType<typeof withTake>[] = [];

  const typed = (key: LotKey): Typed => {
    const prefill = known.prefills.get(key);
    const own = draft.typed.get(key);
    if (key === "tare") return { texts: own?.texts ?? [""], unit: own?.unit ?? typed("gross").unit ?? "g" };
    // The uncertainty of our assay is that of no other.
    const proposed = key === "uncertainty" && typed("basis").texts[0] !== "our assay" ? undefined : prefill;
    const unit = own?.unit ?? prefill?.unit;
    return { texts: own?.texts ?? proposed?.texts ?? [""], ...(unit === undefined ? {} : { unit }) };
  };
  const touch = (key: LotKey, to: Typed): void => {
    draft.typed.set(key, to);
    if (key === "gross") weights.get("tare")?.set(typed("tare").texts, typed("tare").unit ?? "g");
    if (key === "basis") fields.get("uncertainty")?.set(typed("uncertainty").texts[0] ?? "");
    changed();
  };

  function add(key: LotKey, field: FormField): HTMLElement {
    fields.set(key, field);
    return field.element;
  }
  function text(key: LotKey, label: string, more: { readonly about?: string; readonly optional?: string; readonly suggestions?: readonly string[] } = {}): HTMLElement {
    const from = known.prefills.get(key)?.from;
    const about = more.about ?? from;
    const field: FormField = textField({ label, value: typed(key).texts[0] ?? "", ...more, ...(about === undefined ? {} : { about }) }, () => touch(key, { texts: [field.text()] }));
    return add(key, field);
  }
  function listed(key: "client" | "description" | "status", label: string): HTMLElement | null {
    return has(key) ? text(key, label, { suggestions: suggestions(known.lots, key) }) : null;
  }
  function scale(key: "gross" | "tare", label: string, optional?: string): HTMLElement {
    const field: ReadingsField = readingsField({ label, units: massChoices, ...(optional === undefined ? {} : { optional }) }, () => touch(key, { texts: field.texts(), unit: field.unit() }));
    field.set(typed(key).texts, typed(key).unit ?? "g");
    weights.set(key, field);
    return field.element;
  }
  function term(key: TermKey): HTMLElement {
    const prefill = known.prefills.get(key);
    const { texts, unit } = typed(key);
    const words = { label: fieldOf(key).title, value: texts[0] ?? "", about: [prefill?.from, ABOUT[key]].filter((one) => one !== undefined).join(" ") };
    const now = (): Typed => ({ texts: [field.text()], ...(unit === undefined ? {} : { unit: (field as unknown as MeasuredField).unit() }) });
    const touched = (): void => touch(key, now());
    const plain = unit === undefined ? textField(words, touched) : measuredField({ ...words, units: perMassChoices, unit }, touched);
    const field = withTake(plain, words.label, touched);
    taking.push(field);
    return add(key, field);
  }
  const group = (legend: string, ...children: readonly (HTMLElement | null)[]): HTMLElement | null =>
    children.every((child) => child === null) ? null : h("fieldset", { class: "lw-group" }, h("legend", {}, legend), ...children);
  const isUsed = (key: LotKey): boolean => typed(key).texts.some((one) => one !== "");

  const fineness = withTake(textField({ label: "Fineness", optional: "may stay empty", about: "As it is written: 925, 92.5%, sterling, 22k.", value: typed("fineness").texts[0] ?? "" }, () => touch("fineness", { texts: [fineness.text()] })), "Fineness", () => touch("fineness", { texts: [fineness.text()] }));
  taking.push(fineness);
  const basis: FormField = choiceField({ label: "Known from", choices: BASES, value: typed("basis").texts[0] ?? "" }, () => touch("basis", { texts: [basis.text()] }));
  const noPayout = has("payout") || known.terms.length > 0 ? null : h("p", { class: "lw-about" }, "This list has no columns for terms and payout; they can be added in step 1.");

  const element = h(
    "div",
    { class: "lw-body" },
    group(
      "Number and client",
      has("lot") ? text("lot", "Lot number") : null,
      has("date") ? add("date", dateField({ label: "Date", value: typed("date").texts[0] ?? "" }, (now) => touch("date", { texts: [now] }))) : null,
      listed("client", "Client"),
      listed("description", "What it is"),
      listed("status", "Status"),
    ),
    group("On the scale", scale("gross", "Gross"), scale("tare", "Tare", "may stay empty")),
    group(
      "Fineness",
      add("fineness", fineness),
      add("basis", basis),
      h(
        "details",
        { class: "lw-folded", open: isUsed("uncertainty") || isUsed("stamp") },
        h("summary", {}, "Its uncertainty, a stamp"),
        h(
          "div",
          { class: "lw-fields" },
          text("uncertainty", "Standard uncertainty", { optional: "may stay empty", about: "In ‰ or %, as 2‰. It goes beside the fineness as a note." }),
          text("stamp", "Stamp on the goods", { optional: "may stay empty", about: "To hold the fineness against it." }),
        ),
      ),
    ),
    group("Terms", ...known.terms.map(term), noPayout),
  );
  return {
    element,
    typed,
    offer: (selected) => taking.forEach((field) => field.offer(selected)),
    say(sentences) {
      for (const [key, field] of [...fields, ...weights]) {
        const said = sentences.get(key);
        field.say(said?.sentence ?? null, said?.isFault ?? false);
      }
    },
    focusFirst: () => (fields.get("lot") ?? weights.get("gross"))?.focus(),
    focus: (key) => (fields.get(key) ?? weights.get(key as "gross"))?.focus(),
  };
}
