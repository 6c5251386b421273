import { expect } from "vitest";
import balance from "../../shared/checks/balance.json";
import { column, lot } from "./lot";
import { type Given, published } from "./published";

const LONG_TON_LB = 2240;
const ouncesInLongTon = (fraction: number): number => lot("FINEWEIGHT", LONG_TON_LB, "lb", fraction);

const inventories = (): void => {
  expect(lot("UNACCOUNTED", 120, column([30, 45.5]), column([50, 20.25]), 124)).toBe(120 + (30 + 45.5) - (50 + 20.25) - 124);
  expect(lot("UNACCOUNTED", 10, 0, 0, 10)).toBe(0);
};

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
  K06: (given) => [grade(given) / 10, ouncesInLongTon(grade(given) / 1000)],
  K07: (given) => ouncesInLongTon(lot("RECOVERY", given.number("g"), given.number("ore_g"))),
  K08: (given) => {
    const out = given.numbers("out");
    return given.numbers("in").map((charged, i) => (1 - lot("RECOVERY", out[i] ?? NaN, charged)) * 100);
  },
});
