import air from "../../shared/checks/air.json";
import { lot } from "./lot";
import { type Given, published } from "./published";
import { gramsPerMol } from "./substance";

/** Cubic metres that one mol makes a mixture of one ppm of. */
const cubicMetres = (): number => lot("DILUTIONAIR", 1, 1, 1, 1, "m3/h");
/** Molar volumes in litres at the temperatures at which others reckon, and at 298.15 K, at which we do. */
const MOLAR = { at293K: 24.04, at70F: 24.15, at298K: 24.45 };
const MINUTES = 60;
const MILLILITRES_IN_A_PINT = 473.176473;

const milligrams = (gas: string, ppm: readonly number[]): readonly number[] => ppm.map((one) => (one * gramsPerMol(gas) * 1000) / cubicMetres());
const printed = (given: Given): readonly number[] => milligrams(given.text("gas"), given.numbers("ppm"));

published(air, {
  H01: printed,
  H02: printed,
  H03: printed,
  H04: printed,
  H07: (given) => {
    const ppm = given.numbers("ppm");
    return ["NO2", "NO", "HNO3"].flatMap((gas, i) => milligrams(gas, [ppm[i] ?? NaN]));
  },
  H12: (given) => {
    const grams = lot("VOLUME", given.number("gal_h"), "gal", "mL") * given.number("v") * given.number("SG");
    const vapour = ((grams / given.number("MW")) * MOLAR.at293K) / MINUTES;
    const rounded = Number(vapour.toFixed(2));
    return [vapour, lot("DILUTIONAIR", (rounded * MINUTES) / MOLAR.at298K, 1, given.number("ppm"), given.number("K"), "L/min")];
  },
  // A pint of a liquid as heavy as water, of molar mass 1, per minute, to one part in a million.
  H13: () => {
    const mol = (MILLILITRES_IN_A_PINT * MOLAR.at70F) / MOLAR.at298K;
    return [lot("DILUTIONAIR", mol, 1 / MINUTES, 1e6, 1, "cfm"), cubicMetres() / 1000];
  },
});
