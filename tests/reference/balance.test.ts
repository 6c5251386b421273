import { expect } from "vitest";
import balance from "../../shared/checks/balance.json";
import { column, lot, spill } from "./lot";
import { type Given, listOf, published } from "./published";

const LONG_TON_LB = 2240;
const ouncesInLongTon = (fraction: number): number => lot("FINEWEIGHT", LONG_TON_LB, "lb", fraction);

const inventories = (): void => {
  expect(lot("UNACCOUNTED", 120, column([30, 45.5]), column([50, 20.25]), 124)).toBe(120 + (30 + 45.5) - (50 + 20.25) - 124);
  expect(lot("UNACCOUNTED", 10, 0, 0, 10)).toBe(0);
};

/** What BALANCE says of a gap when the one uncertainty is 1. */
function verdict(gap: number, k: number): unknown {
  return spill("BALANCE", 100 + gap, 50, 40, 110, 0, 1, 0, 0, 0, k).at(-1)?.[1];
}

const grade = (given: Given): number =>
  lot("MELTFINENESS", column(given.numbers("g")), column(given.numbers("pct").map((percent) => `${percent}%`)));

published(balance, {
  K01: inventories,
  K02: (given) => {
    // What the book says is opening + received − shipped.
    const [opening, shipped] = [40, 10];
    return lot("UNACCOUNTED", opening, given.number("book") + shipped - opening, shipped, given.number("physical"));
  },
  K03: inventories,
  // The limit is k times the uncertainty: a gap of two or of three is inside it, a little more is not.
  K04: (given) => {
    for (const k of listOf(given.expected, "expected").map(Number)) {
      expect(verdict(k, k)).toBe("within measurement");
      expect(verdict(k + 0.01, k)).toBe("metal missing");
      expect(verdict(-k - 0.01, k)).toBe("metal over");
    }
  },
  K06: (given) => [grade(given) / 10, ouncesInLongTon(grade(given) / 1000)],
  K07: (given) => ouncesInLongTon(lot("RECOVERY", given.number("g"), given.number("ore_g"))),
  K08: (given) => {
    const out = given.numbers("out");
    return given.numbers("in").map((charged, i) => (1 - lot("RECOVERY", out[i] ?? NaN, charged)) * 100);
  },
});
