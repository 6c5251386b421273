import { describe, expect, it } from "vitest";
import reactions from "../../shared/checks/reactions.json";
import { composition, parseEquation, reactions as table } from "../../src/core/matter";
import { lot } from "./lot";
import { type Given, published } from "./published";
import { gramsPerMol } from "./substance";

/** Grams of silver nitrate that a given weight of silver was dissolved in. */
const NITRATE_PER_SILVER = gramsPerMol("AgNO3") / gramsPerMol("Ag");

/** Silver of the nitrate, where the copper is more than enough to drop it. */
function allDropped(given: Given): number {
  const silver = given.number("AgNO3_g") / NITRATE_PER_SILVER;
  const copper = lot("COPPER", silver, "g");
  expect(copper).toBeLessThan(given.number("Cu_g"));
  return lot("SILVERDROPPED", copper, "g");
}

/** Grams of pure nitric acid that a charge takes: what is in the litres of it. */
const acid = (grams: number, fineness: number, no2share: number): number =>
  lot("NITRIC", grams, "g", fineness, "68%", no2share) * lot("ACIDMOLARITY", "68%") * gramsPerMol("HNO3");

/** Copper that a mol of free acid eats. */
const copperPerAcid = (): number => lot("COPPER", 1, "g", 0, 1) - lot("COPPER", 1, "g");

/** Mol of copper in grams of it: the strong route gives two of gas for each. */
const molOfCopper = (grams: number): number => lot("FUME", grams, "g", 0, 1) / 2;
/** Grams of copper that a mol of acid dissolves by the strong route. */
const dissolvedByMol = (): number => gramsPerMol("HNO3") / acid(1, 0, 1);

published(reactions, {
  S03: (given) => {
    const theory = (given.number("CuSO4_g") / gramsPerMol("CuSO4")) * gramsPerMol("Cu");
    return [theory, lot("RECOVERY", given.number("Cu_g"), theory) * 100];
  },
  S06: (given) => lot("SILVERDROPPED", given.number("Cu_g"), "g"),
  S07: allDropped,
  S08: (given) => lot("SILVERDROPPED", given.number("Cu_g"), "g"),
  S10: (given) => {
    const copper = given.number("Cu_g");
    const silver = lot("SILVERDROPPED", copper, "g");
    return [(copper / gramsPerMol("Cu")) * gramsPerMol("Cu(NO3)2"), given.number("AgNO3_g") - silver * NITRATE_PER_SILVER];
  },
  S12: (given) => lot("RECOVERY", given.number("Ag_g"), allDropped(given)) * 100,
  S13: (given) => {
    const dissolved = (given.number("HNO3_g") / gramsPerMol("HNO3")) * dissolvedByMol();
    return [molOfCopper(dissolved), given.number("Cu_g") - dissolved];
  },
  S15: (given) => {
    const acidInIt = (given.number("V_mL") / 1000) * given.number("M");
    return [molOfCopper(given.number("Cu_g")), molOfCopper(acidInIt * dissolvedByMol())];
  },
  S16: () => many(table.copperDilute.equation, ["Cu", "HNO3", "Cu(NO3)2", "H2O", "NO"]),
  S17: () => [
    many(table.silverDilute.equation, ["Ag", "HNO3", "AgNO3", "H2O", "NO"]),
    many(table.silverStrong.equation, ["Ag", "HNO3", "AgNO3", "H2O", "NO2"]),
  ],
  S18: (given) => given.texts("equations").map((equation) => balance(equation.replace(/(^| )(\d+)(?=[A-Z])/g, "$1$2 "))),
  S20: (given) => [acid(given.number("Ag_g"), 1, 1), lot("FUME", given.number("Ag_g"), "g", 1, 1) * gramsPerMol("NO2")],
  S21: (given) => [acid(given.number("Ag_g"), 1, 0), lot("FUME", given.number("Ag_g"), "g", 1, 0) * gramsPerMol("NO")],
  S22: (given) => [acid(given.number("Cu_g"), 0, 1), lot("FUME", given.number("Cu_g"), "g", 0, 1) * gramsPerMol("NO2")],
  S23: (given) => {
    const eaten = given.number("Cu_g") / copperPerAcid();
    expect(eaten * gramsPerMol("HNO3")).toBeCloseTo(acid(given.number("Cu_g"), 0, 0), 10);
    return [eaten * gramsPerMol("HNO3"), lot("FUME", given.number("Cu_g"), "g", 0, 0) * gramsPerMol("NO")];
  },
  S24: (given) => [1, 0].map((no2share) => acid(given.number("sterling_g"), given.number("fineness"), no2share)),
  S25: () => [lot("COPPER", 1, "g"), lot("SILVERDROPPED", 1, "g")],
  // The allowance reaches what practice needs.
  S26: (given) => lot("COPPER", 1, "kg", Number(given.expected) - 1) / lot("COPPER", 1, "kg"),
  S27: () => [lot("SALT", 1, "g"), 1 / lot("CHLORIDESILVER", 1, "g")],
});

describe("every reaction of the table balances by element and charge", () => {
  it.each(Object.values(table))("$name: $equation", ({ equation }) => expect(balance(equation)).toBe("balanced"));

  it("tells a charge that does not balance", () =>
    expect(balance("Cu + Ag+ -> Cu2+ + Ag")).toBe("unbalanced (charge 1 vs 2)"));
});

function many(equation: string, substances: readonly string[]): readonly number[] {
  const { left, right } = parseEquation(equation);
  const terms = [...left, ...right];
  expect(terms).toHaveLength(substances.length);
  return substances.map((substance) => terms.find((term) => term.substance === substance)?.many ?? NaN);
}

type Side = ReturnType<typeof parseEquation>["left"];

function balance(equation: string): string {
  const { left, right } = parseEquation(equation);
  const [before, after] = [counted(left), counted(right)];
  const uneven = [...new Set([...before.keys(), ...after.keys()])]
    .map((part) => [part, before.get(part) ?? 0, after.get(part) ?? 0] as const)
    .filter(([, a, b]) => a !== b);
  return uneven.length === 0 ? "balanced" : `unbalanced (${uneven.map(([part, a, b]) => `${part} ${a} vs ${b}`).join(", ")})`;
}

function counted(side: Side): ReadonlyMap<string, number> {
  const sum = new Map<string, number>();
  for (const { many, substance } of side) {
    const { elements, charge } = composition(substance);
    for (const [part, n] of [...elements, ["charge", charge] as const]) sum.set(part, (sum.get(part) ?? 0) + n * many);
  }
  return sum;
}
