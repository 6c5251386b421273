import rounding from "../../shared/checks/rounding.json";
import { Ratio } from "../../src/core/expression/ratio";
import { round } from "../../src/core/expression/rounding";
import { lot } from "./lot";
import { type Given, published } from "./published";

/** Money that one troy ounce at a price pays is that price, rounded: places as the cell takes them, 0 to 6. */
const inCell = (x: string, places: number, halfEven: boolean): number =>
  lot("PAYOUT", 1, "ozt", Number(x), null, null, null, halfEven ? `${places} half-even` : places);

const halfToEven = (places: readonly number[]) => (given: Given): readonly number[] =>
  given.texts("x").map((x, i) => {
    const to = places[i] ?? NaN;
    // Tens are beyond what a cell rounds money to.
    return to < 0 ? round(Ratio.of(x), to, "half to even").toNumber() : inCell(x, to, true);
  });

const toCents = (given: Given): readonly number[] => given.texts("x").map((x) => inCell(x, 2, false));

published(rounding, {
  R01: halfToEven([5, 4, 1, 0, 2, -1]),
  R02: halfToEven([1, 1, 1, 1]),
  R03: halfToEven([1, 1, -1, -1]),
  R04: toCents,
  R07: toCents,
});
