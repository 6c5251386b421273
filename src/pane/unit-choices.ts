import { type FieldId, type Kind, fieldOf } from "../lots/fields";
import type { Choice } from "./form-field";

const same = (...units: readonly string[]): Choice[] => units.map((unit) => ({ value: unit, label: unit }));

export const massChoices: readonly Choice[] = [
  ...same("g", "kg", "lb"),
  { value: "ozt", label: "ozt (troy)" },
  { value: "ozav", label: "ozav (avoirdupois)" },
  ...same("dwt"),
  { value: "gr", label: "gr (grains)" },
  { value: "lbt", label: "lbt (troy)" },
  ...same("mg"),
];

export const perMassChoices: readonly Choice[] = ["ozt", "lb", "kg", "g", "dwt", "ozav"].map((unit) => ({ value: unit, label: `per ${unit}` }));

export const volumeChoices: readonly Choice[] = [...same("L", "mL"), { value: "gal", label: "gal (US)" }, { value: "galimp", label: "gal (imperial)" }];

/** The units or scales that a column of this kind can be in; none where it has no unit. */
export function columnUnits(field: FieldId): readonly Choice[] {
  return BY_KIND[fieldOf(field).kind] ?? [];
}

const BY_KIND: Readonly<Partial<Record<Kind, readonly Choice[]>>> = {
  mass: massChoices,
  volume: volumeChoices,
  "per mass": perMassChoices,
  fineness: [
    { value: "ppt", label: "‰, as 925" },
    { value: "%", label: "%, as 92.5" },
    { value: "fraction", label: "share, as 0.925" },
    { value: "karat", label: "karat, as 22" },
    { value: "as written", label: "as it is written" },
  ],
  share: [
    { value: "fraction", label: "share, as 0.95" },
    { value: "%", label: "%, as 95" },
  ],
  "per thousand": [
    { value: "ppt", label: "‰" },
    { value: "%", label: "%" },
  ],
};
