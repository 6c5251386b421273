import { expect } from "vitest";
import chloride from "../../shared/checks/chloride.json";
import { lot } from "./lot";
import { published } from "./published";
import { gramsPerMol } from "./substance";

/** Mol per litre of silver that so much chloride leaves in solution. */
const leftBy = (chlorideInLitre: number): number => lot("SILVERLEFT", chlorideInLitre) / gramsPerMol("Ag");

published(chloride, {
  S02: (given) => {
    const dry = given.number("AgCl_g");
    return ((dry - lot("CHLORIDESILVER", dry, "g")) / given.number("sample_g")) * 100;
  },
  E10: () => 0.01 * leftBy(0.01),
  // Mixing equal volumes is rinsing once with as much as there is.
  E14: (given) => {
    const [silver, salt] = [given.number("Ag_M"), given.number("Cl_M")].map((start) => lot("RINSED", start, 1, 1, 1)) as [number, number];
    expect(leftBy(salt)).toBeLessThan(silver);
    return silver * salt;
  },
});
