import electrochemistry from "../../shared/checks/electrochemistry.json";
import { value } from "../../src/core/expression/value";
import { natural } from "../../src/core/matter";
import { lot } from "./lot";
import { published } from "./published";
import { gramsPerMol } from "./substance";

const gramsPerAmpereHour = (): number => 1 / lot("CELLHOURS", 1, "g", 1, 1);
const SECONDS = 3600;
/** What the international ampere of 1895 deposited in a second, in grams. */
const INTERNATIONAL = 0.001118;

published(electrochemistry, {
  E01: () => value(natural("faraday"), {}).toNumber(),
  E02: () => (gramsPerAmpereHour() / SECONDS) * 1000,
  E03: () => [gramsPerAmpereHour(), lot("CELLHOURS", 1, "kg", 1, 1)],
  E05: () => [INTERNATIONAL * SECONDS, ((INTERNATIONAL * SECONDS) / gramsPerAmpereHour() - 1) * 1e6],
  E11: () => value(natural("silverChloride"), {}).toNumber(),
  E12: (given) => {
    const silver = lot("SILVERLEFT", Math.sqrt(given.number("Ksp"))) / gramsPerMol("Ag");
    return [silver, silver * gramsPerMol("AgCl") * 1000];
  },
  E19: (given) => given.numbers("V").map((volts) => lot("CELLENERGY", 1, "kg", volts, 1)),
});
