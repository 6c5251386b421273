import { type ShopField, isNumber } from "../../lots/shop-fields";
import { type Choice, type FormField, choiceField, measuredField, textField } from "../form-field";
import type { Notation } from "../notation";
import type { Selected } from "../selection";
import { withTake } from "../taking-field";
import { massChoices, perMassChoices, volumeChoices } from "../unit-choices";
import type { Typed } from "./memory";
import { inSignsOf } from "./signs";

export interface FieldView extends Pick<FormField, "element" | "say" | "focus"> {
  typed(): Typed;
  set(typed: Typed): void;
  /** The selected cell, where the field often takes one. */
  offer?(selected: Selected | null): void;
}

/** A field of the shop as it is asked for, by its kind. */
export function fieldView(field: ShopField, notation: Notation, changed: () => void): FieldView {
  const { title, kind, unit } = field;
  const signed = (text: string): string => (isNumber(kind) ? inSignsOf(text, notation) : text);
  const about = [MEANS[kind] ?? "", field.about].filter((text) => text !== "").join(" ");
  const words = { label: title, ...(about === "" ? {} : { about: signed(about) }), ...(field.usual === undefined ? {} : { suggestions: [signed(field.usual)] }) };
  const units = unitsOf(kind);
  if (units.length > 0) {
    const first = unit ?? units[0]?.value ?? "";
    const plain = measuredField({ ...words, units, unit: first }, changed);
    const view = field.isOftenACell ? withTake(plain, title, changed) : plain;
    return {
      ...view,
      typed: () => ({ text: view.text(), unit: view.unit() }),
      set(typed) {
        view.set(typed.text);
        view.setUnit(typed.text === "" ? (typed.unit ?? first) : (typed.unit ?? ""));
      },
    };
  }
  const view = kind === "paper" ? choiceField({ ...words, choices: PAPERS }, changed) : textField({ ...words, ...(kind === "lines" ? { lines: 3 } : {}) }, changed);
  return { ...view, typed: () => ({ text: view.text() }), set: ({ text }) => view.set(text) };
}

const PAPERS: readonly Choice[] = [
  { value: "", label: "not told" },
  { value: "letter", label: "Letter" },
  { value: "A4", label: "A4" },
];

/** The units that a field of this kind is asked for in; none where it has no unit, or only one. */
const unitsOf = (kind: ShopField["kind"]): readonly Choice[] => UNITS[kind] ?? [];
const UNITS: Readonly<Partial<Record<ShopField["kind"], readonly Choice[]>>> = { mass: massChoices, volume: volumeChoices, "per mass": perMassChoices };

/** The unit of a number that has only one. */
const MEANS: Readonly<Partial<Record<ShopField["kind"], string>>> = {
  "grams per litre": "In grams per litre.",
  "per hour": "Per hour.",
  hours: "In hours.",
  ppm: "In ppm by volume.",
  amperes: "In amperes.",
  volts: "In volts.",
};
