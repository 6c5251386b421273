import type { BatchChoices } from "../../../lots/batch-plan-cells";
import type { PlanGroup } from "../../../lots/batch-plan-line";
import type { ChoiceId } from "../../../lots/batch-plan-needs";
import { readArgument } from "../../argument";
import { readDate } from "../../date";
import { freshId, h } from "../../dom";
import { type FormField, measuredField, textField } from "../../form-field";
import type { Notation } from "../../notation";
import type { TypedChoices } from "./memory";

export interface ChoiceFields {
  /** The fields that belong beside the figures of a group, or null. */
  of(group: PlanGroup): HTMLElement | null;
  /** What can be read; a field that cannot says so itself. */
  read(): BatchChoices;
  focus(): void;
}

const WATER_UNITS = ["L", "mL", "gal", "galimp", "ft3", "m3"].map((unit) => ({ value: unit, label: unit }));

/** What is decided for this batch alone, and written nowhere. */
export function choiceFields(typed: TypedChoices, notation: Notation, changed: () => void): ChoiceFields {
  const fields = new Map<ChoiceId, FormField>();
  const kept = (id: ChoiceId, field: FormField): HTMLElement => {
    fields.set(id, field);
    return field.element;
  };
  const touched = (id: ChoiceId) => (): void => {
    typed.texts.set(id, fields.get(id)?.text() ?? "");
    changed();
  };
  const text = (id: ChoiceId, label: string, about: string): HTMLElement => kept(id, textField({ label, about, value: typed.texts.get(id) ?? "" }, touched(id)));

  const water = measuredField({ label: "Water added before the drop", about: "All of it, with the acid and after. 0 where there is none.", units: WATER_UNITS, unit: typed.waterUnit, value: typed.texts.get("water") ?? "" }, () => {
    typed.waterUnit = water.unit();
    touched("water")();
  });
  const iron = h("input", { type: "checkbox", onchange: () => {
    typed.takesCopperOut = iron.checked;
    changed();
  } });
  iron.checked = typed.takesCopperOut;

  const groups: Readonly<Partial<Record<PlanGroup, HTMLElement>>> = {
    Dissolving: group(
      kept("water", water),
      text("strongShare", "Strong route share", "From 0 to 1, or 40%. Empty: both ends."),
      text("pails", "Pails that you take", "Empty: as many as are needed."),
    ),
    Drop: group(
      kept("start", startField(typed.texts.get("start") ?? "", touched("start"))),
      text("dropHours", "Hours you give it", "Empty: until the shop's target."),
      text("freeAcid", "Free acid left, mol", "By titration. Empty: none."),
    ),
    "Melt and cell": group(text("barFineness", "Fineness of the silver bars", "990, 99% or 0.99.")),
    Waste: h("label", { class: "lw-tick" }, iron, "Take the copper out with iron"),
  };

  return {
    of: (name) => groups[name] ?? null,
    focus: () => fields.get("water")?.focus(),
    read() {
      const value = (id: ChoiceId, read: (value: number | string) => string | null): number | string | undefined => {
        const field = fields.get(id);
        const argument = readArgument(field?.text() ?? "", notation);
        const given = argument.kind === "value" ? argument.value : undefined;
        const fault = argument.kind === "nothing" ? null : argument.kind === "unreadable" ? argument.sentence : given === undefined ? "Cannot use a cell or a list here: write the number" : read(given);
        field?.say(fault);
        return fault === null ? given : undefined;
      };
      const number = (id: ChoiceId, wants: string, fits: (value: number) => boolean): number | undefined => {
        const given = value(id, (one) => (typeof one === "number" && fits(one) ? null : `Cannot use ${one}: it must be ${wants}`));
        return typeof given === "number" ? given : undefined;
      };
      const start = readDate(fields.get("start")?.text() ?? "")?.value;
      const amount = number("water", "a number from 0 up", (one) => one >= 0);
      return present({
        strongShare: value("strongShare", (one) => (isShare(one) ? null : `Cannot use ${one}: it must be a share from 0 to 1, or a text such as 40%`)),
        water: amount === undefined ? undefined : { value: amount, unit: water.unit() },
        pails: number("pails", "a whole number above 0", (one) => Number.isInteger(one) && one > 0),
        freeAcid: number("freeAcid", "a number from 0 up", (one) => one >= 0),
        dropHours: number("dropHours", "hours above 0, up to 10000", (one) => one > 0 && one <= 10_000),
        start,
        barFineness: value("barFineness", () => null),
        takesCopperOut: iron.checked,
      });
    },
  };
}

const group = (...fields: readonly HTMLElement[]): HTMLElement => h("div", { class: "lw-plan-choices" }, ...fields);

/** As the cell functions read a share. */
const isShare = (value: number | string): boolean => (typeof value === "number" ? value >= 0 && value <= 1 : /^\d+(?:\.\d+)?\s*%$/.test(value) && parseFloat(value) <= 100);

type Loose = { readonly [K in keyof BatchChoices]: BatchChoices[K] | undefined };
const present = (choices: Loose): BatchChoices => Object.fromEntries(Object.entries(choices).filter(([, value]) => value !== undefined)) as BatchChoices;

/** A day and time, which the browser asks for in the user's own way. */
function startField(value: string, changed: () => void): FormField {
  const field = textField({ label: "Start of the drop", value }, changed);
  const id = freshId("start");
  const input = h("input", { id, type: "datetime-local", oninput: changed });
  input.value = value;
  field.element.querySelector("label")?.setAttribute("for", id);
  field.element.querySelector(".lw-entry")?.replaceChildren(input);
  return { ...field, text: () => input.value, set: (to) => void (input.value = to), focus: () => input.focus() };
}
