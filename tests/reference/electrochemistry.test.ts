import { expect } from "vitest";
import electrochemistry from "../../shared/checks/electrochemistry.json";
import { value } from "../../src/core/expression/value";
import { natural } from "../../src/core/matter";
import { lot } from "./lot";
import { listOf, published } from "./published";
import { gramsPerMol } from "./substance";

const gramsPerAmpereHour = (): number => 1 / lot("CELLHOURS", 1, "g", 1, 1);
const SECONDS = 3600;
/** Hours in which a current deposits mol of a metal whose ions take so many electrons: as many as the silver of that charge takes. */
const hours = (mol: number, electrons: number, amps: number): number => lot("CELLHOURS", mol * electrons * gramsPerMol("Ag"), "g", amps, 1);
/** What the international ampere of 1895 deposited in a second, in grams. */
const INTERNATIONAL = 0.001118;

published(electrochemistry, {
  E01: () => value(natural("faraday"), {}).toNumber(),
  E02: () => (gramsPerAmpereHour() / SECONDS) * 1000,
  E03: () => [gramsPerAmpereHour(), lot("CELLHOURS", 1, "kg", 1, 1)],
  E04: () => gramsPerAmpereHour() / SECONDS,
  E05: () => [INTERNATIONAL * SECONDS, ((INTERNATIONAL * SECONDS) / gramsPerAmpereHour() - 1) * 1e6],
  E11: () => value(natural("silverChloride"), {}).toNumber(),
  E12: (given) => {
    const silver = lot("SILVERLEFT", Math.sqrt(given.number("Ksp"))) / gramsPerMol("Ag");
    return [silver, silver * gramsPerMol("AgCl") * 1000];
  },
  E15: (given) => {
    const cubicCentimetres = (given.number("m2") * given.number("mm") * 1e6) / 1e3;
    return hours((cubicCentimetres * given.number("d")) / given.number("M"), given.number("z"), given.number("A"));
  },
  E16: (given) => {
    const [length = NaN, width = NaN] = given.numbers("m");
    const grams = ((length * width * given.number("mm") * 1e6) / 1e3) * given.number("d");
    return [grams / 1000, hours(grams / gramsPerMol("Zn"), given.number("z"), given.number("A"))];
  },
  E17: (given) => {
    const [lowVolts, highVolts, low, high] = listOf(given.expected, "expected").map(Number);
    for (const [volts = NaN, energy = NaN] of [
      [lowVolts, low],
      [highVolts, high],
    ]) {
      const efficiency = lot("CELLENERGY", 1, "kg", volts, 1) / energy;
      expect(efficiency).toBeGreaterThan(0.8);
      expect(lot("CELLENERGY", 1, "kg", volts, efficiency)).toBeCloseTo(energy, 12);
    }
  },
  E19: (given) => given.numbers("V").map((volts) => lot("CELLENERGY", 1, "kg", volts, 1)),
});
