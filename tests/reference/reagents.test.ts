import { expect } from "vitest";
import reagents from "../../shared/checks/reagents.json";
import { lot, spill } from "./lot";
import { published } from "./published";
import { gramsPerMol } from "./substance";

published(reagents, {
  M04: (given) => lot("GOLDDROP", given.number("gold_ozt"), "ozt", "sodium metabisulfite", null, "g"),
  M05: (given) => lot("SODA", (given.number("V_mL") / 1000) * given.number("M"), "Na2CO3", "g"),
  M06: (given) => lot("SODA", given.number("HNO3_g") / gramsPerMol("HNO3"), "NaOH", "g"),
  M07: (given) => {
    const chloride = given.number("silver_lb") / lot("CHLORIDESILVER", 1, "lb");
    const needed = (excess: number | null) => new Map(spill("SILVERFROMCHLORIDE", chloride, "lb", "zinc", excess).map(([label, lb]) => [label, Number(lb)]));
    expect(needed(null).get("Silver that it gives")).toBeCloseTo(given.number("silver_lb"), 10);
    expect(needed(null).get("Reagent")).toBeLessThan(Number(given.expected));
    return needed(given.number("excess")).get("Reagent");
  },
});
