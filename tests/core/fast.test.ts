import { describe, expect, it } from "vitest";
import type { FastInputs } from "../../src/core/expression/fast";
import { type Formula, result } from "../../src/core/expression/formula";
import { Ratio } from "../../src/core/expression/ratio";
import { type Given, value } from "../../src/core/expression/value";
import { FaultError } from "../../src/core/fault";
import { payout } from "../../src/core/payout";
import { type Random, random } from "../random";
import { formulas, sample, scalarAmounts, scalarInputs } from "./formulas";
import { fastValues, filling } from "./filling";

const all = (await formulas()).filter(({ formula }) => scalarAmounts(formula).length > 0);

const SEED = 20261128;
const ROWS = 200_000;

type Columns = Readonly<Record<string, Float64Array>>;

const columnsOf = (rows: number, each: Readonly<Record<string, () => number>>): Columns =>
  Object.fromEntries(Object.entries(each).map(([name, make]) => [name, Float64Array.from({ length: rows }, make)]));

const filled = (columns: Columns): FastInputs => Object.fromEntries(Object.entries(columns).map(([name, column]) => [name, filling(column)]));

const rowOf = (columns: Columns, i: number): Given =>
  Object.fromEntries(Object.entries(columns).map(([name, column]) => [name, Ratio.of(column[i] ?? NaN)]));

/** Rows that float64 left to the exact reading; every other row is the exact one. */
function doubtfulShare(of: Formula, columns: Columns, rows: number): number {
  const { of: expression } = result(of);
  const { values, doubtful } = fastValues(expression, filled(columns), rows);
  const left = new Set(doubtful);
  let wrong = 0;
  for (let i = 0; i < rows; i++)
    if (!left.has(i) && values[i] !== value(expression, rowOf(columns, i)).toNumber() + 0) wrong++;
  expect(wrong, `rows that are not the exact ones (seed ${SEED})`).toBe(0);
  return doubtful.length / rows;
}

/** Whole and quarter ounces, half-cent prices, 97.5 %: many a payout ends in exactly half a cent. */
const tieRich = (r: Random, halfToEven: number): Readonly<Record<string, () => number>> => ({
  fine: () => r.pick([r.whole(1, 400) * 10, r.whole(1, 2000) * 2, r.whole(1, 900), r.whole(1, 4000) / 4, r.decimal(0.1, 900, 3)]),
  price: () => r.pick([r.whole(3000, 9000) / 200, r.whole(40, 80) / 2, r.decimal(20, 40, 2)]),
  payable: () => r.pick([0.975, 0.975, 0.98, 1]),
  refiningCharge: () => r.pick([0, 0.5, r.decimal(0, 2, 1)]),
  lotCharges: () => r.pick([0, 25, r.whole(0, 200) / 8]),
  decimals: () => 2,
  halfToEven: () => halfToEven,
});

/** Readings of scales and prices as they come: ties are chance. */
const everyday = (r: Random): Readonly<Record<string, () => number>> => ({
  ...tieRich(r, 0),
  fine: () => r.between(0.1, 900),
  price: () => r.decimal(20, 40, 4),
});

describe("the fast reading of a payout gives the exact cent or says that it cannot", () => {
  it.each([
    ["half away from zero", 0],
    ["half to even", 1],
  ])(`on ${ROWS / 2} lots rich in ties, rounded %s`, (name, halfToEven) => {
    const share = doubtfulShare(payout, columnsOf(ROWS / 2, tieRich(random(SEED), halfToEven)), ROWS / 2);
    console.log(`Rich in ties, ${name}: ${(share * 100).toFixed(1)} % of ${ROWS / 2} rows were left to the exact reading.`);
    expect(share).toBeGreaterThan(0.01);
    expect(share).toBeLessThan(0.5);
  });

  it(`on ${ROWS / 4} everyday lots, of which hardly one is left to the exact reading`, () => {
    const share = doubtfulShare(payout, columnsOf(ROWS / 4, everyday(random(SEED + 1))), ROWS / 4);
    console.log(`Everyday: ${(share * 100).toFixed(3)} % of ${ROWS / 4} rows were left to the exact reading.`);
    expect(share).toBeLessThan(0.001);
  });
});

describe("the fast reading of every formula is the exact one to nine digits, or says that it cannot settle a step", () => {
  const EACH = 600;
  it.each(all)("$name", ({ formula }) => {
    const r = random(SEED + 2);
    const columns = columnsOf(EACH, Object.fromEntries(scalarInputs(formula).map(([name, q]) => [name, () => sample(r, name, q)])));
    for (const { of, name } of scalarAmounts(formula)) {
      const { values, doubtful } = fastValues(of, filled(columns), EACH);
      const left = new Set(doubtful);
      for (let i = 0; i < EACH; i++) {
        if (left.has(i)) continue;
        const exact = valued(of, rowOf(columns, i));
        expect(exact, `${name}, row ${i}: the formula refuses it, the fast reading does not`).not.toBeNull();
        const apart = Math.abs((values[i] ?? NaN) - (exact ?? NaN));
        expect(apart, `${name}, row ${i}: ${values[i]} against ${exact} (seed ${SEED})`).toBeLessThanOrEqual(1e-9 * Math.max(0.01, Math.abs(exact ?? 0)));
      }
    }
  });
});

function valued(of: Parameters<typeof value>[0], given: Given): number | null {
  try {
    return value(of, given).toNumber();
  } catch (fault) {
    if (fault instanceof FaultError) return null;
    throw fault;
  }
}
