import { expect } from "vitest";
import bars from "../../shared/checks/bars.json";
import { Ratio } from "../../src/core/expression/ratio";
import { round } from "../../src/core/expression/rounding";
import { lot } from "./lot";
import { type Given, listOf, published } from "./published";

/** Fine weights of the listed bars in troy ounces, to three decimals. */
function fineWeights(given: Given): readonly number[] {
  const grams = given.named("grams");
  return given.pairs("cells").map(([bar, fineness]) => {
    const [count = "", unit = ""] = bar.split(" ");
    const fine =
      unit === "oz"
        ? lot("FINEWEIGHT", Number(count), "ozt", Number(fineness))
        : lot("FINEWEIGHT", Ratio.of(count).times(Ratio.of(grams.get(unit) ?? NaN)).toNumber(), "g", Number(fineness));
    return round(Ratio.of(fine), 3, "half away from zero").toNumber();
  });
}

published(bars, {
  B06: fineWeights,
  // The market's figure is agreed on, ours is arithmetic: they differ by the last place.
  B07: (given) => {
    const rows = listOf(given.expected, "expected").map((row) => listOf(row, "row").map(Number));
    expect(fineWeights(given)).toEqual(rows.map(([, arithmetic]) => arithmetic));
    for (const [agreed = NaN, arithmetic = NaN] of rows) expect(agreed - arithmetic).toBeCloseTo(given.tolerance, 9);
  },
});
