import { describe, expect, it } from "vitest";
import { fast } from "../../src/core/expression/fast";
import { result } from "../../src/core/expression/formula";
import { payout } from "../../src/core/payout";
import { type Random, random } from "../random";
import { call } from "./call";
import { filling } from "../core/filling";

const SEED = 20261201;
const ROWS = 1_000_000;
/** Cells of a million rows at once would fill the memory of a small machine. */
const AT_ONCE = 50_000;
const A_BUSY_MACHINE = 300_000;

/** A lot in whole numbers: fine in hundred-thousandths of its unit, payable, prices and charges in thousandths. */
interface Lot {
  readonly fine: number;
  readonly payable: number;
  readonly price: number;
  readonly refiningCharge: number;
  readonly lotCharges: number;
}

const FINE = 100_000;
const THOUSANDTHS = 1000;

/** Net weights times standard finenesses, half-cent prices, 97.5 %: what often ends in exactly half a cent. */
const tieRich = (r: Random, perUnit: Ounces): Lot => ({
  fine: r.pick([
    () => r.whole(1, 4000) * 25 * r.pick([925, 900, 800, 958, 999]),
    () => r.whole(1, 2000) * 24_000,
    () => r.whole(1, 900) * FINE,
    () => perUnit.under * r.whole(1, 40_000) * 20,
  ])(),
  payable: r.pick([975, 975, 980, 1000]),
  price: r.pick([() => r.whole(3600, 9000) * 5, () => r.whole(18, 45) * THOUSANDTHS, () => r.whole(180, 450) * 100])(),
  refiningCharge: r.pick([0, 0, 500, r.whole(0, 20) * 100]),
  lotCharges: r.pick([0, 0, 25_000, r.whole(0, 12_000) * 5]),
});

/** Troy ounces in a unit of weight, as a fraction. */
interface Ounces {
  readonly unit: string;
  readonly over: number;
  readonly under: number;
}
const units: readonly Ounces[] = [
  { unit: "ozt", over: 1, under: 1 },
  { unit: "lb", over: 175, under: 12 },
];

interface Cents {
  readonly cents: bigint;
  readonly isTie: boolean;
}

/** The payout in cents by whole numbers alone. */
function exactly(lot: Lot, { over, under }: Ounces, halfToEven: boolean): Cents {
  const divisor = BigInt(FINE) * 1_000_000n * BigInt(under);
  const value = BigInt(lot.fine) * BigInt(lot.payable) * BigInt(lot.price - lot.refiningCharge) * BigInt(over);
  const all = value - (BigInt(lot.lotCharges) * divisor) / 1000n;
  const [size, sign] = all < 0n ? [-all, -1n] : [all, 1n];
  const hundredfold = size * 100n;
  const below = hundredfold / divisor;
  const twice = (hundredfold - below * divisor) * 2n;
  const isTie = twice === divisor;
  const up = isTie ? !halfToEven || below % 2n === 1n : twice > divisor;
  return { cents: sign * (up ? below + 1n : below), isTie };
}

const column = (lots: readonly Lot[], of: (lot: Lot) => number) => lots.map((lot) => [of(lot)]);

const doubtful = (lots: readonly Lot[], { over, under }: Ounces, halfToEven: boolean): number => {
  const numbers = (of: (lot: Lot) => number) => filling(Float64Array.from(lots, of));
  return fast(
    result(payout).of,
    {
      fine: numbers(({ fine }) => (fine / FINE) * (over / under)),
      price: numbers(({ price }) => price / THOUSANDTHS),
      payable: numbers(({ payable }) => payable / THOUSANDTHS),
      refiningCharge: numbers(({ refiningCharge }) => refiningCharge / THOUSANDTHS),
      lotCharges: numbers(({ lotCharges }) => lotCharges / THOUSANDTHS),
      decimals: 2,
      halfToEven: halfToEven ? 1 : 0,
    },
    lots.length,
    () => undefined,
  ).length;
};

describe(`PAYOUTS gives the cents that whole numbers give, on ${ROWS} lots rich in ties`, () => {
  const kinds = units.flatMap((unit) => [false, true].map((halfToEven) => [unit.unit, halfToEven ? "half to even" : "half away from zero", unit, halfToEven] as const));

  it.each(kinds)("in %s, rounded %s", (name, rounding, unit, halfToEven) => {
    const r = random(SEED);
    const rows = ROWS / kinds.length;
    const seen = { wrong: 0, ties: 0, doubtful: 0 };
    for (let start = 0; start < rows; start += AT_ONCE) {
      const lots = Array.from({ length: Math.min(AT_ONCE, rows - start) }, () => tieRich(r, unit));
      const paid = call(
        "PAYOUTS",
        column(lots, ({ fine }) => fine / FINE),
        unit.unit,
        column(lots, ({ price }) => price / THOUSANDTHS),
        column(lots, ({ payable }) => payable / THOUSANDTHS),
        column(lots, ({ refiningCharge }) => refiningCharge / THOUSANDTHS),
        column(lots, ({ lotCharges }) => lotCharges / THOUSANDTHS),
        halfToEven ? "2 half-even" : 2,
      ) as readonly (readonly number[])[];
      lots.forEach((lot, i) => {
        const { cents, isTie } = exactly(lot, unit, halfToEven);
        if (isTie) seen.ties++;
        // A cent is no float64: the cell must hold the number that is nearest to it.
        if (paid[i]?.[0] !== Number(cents) / 100) seen.wrong++;
      });
      seen.doubtful += doubtful(lots, unit, halfToEven);
    }
    const percent = (n: number): string => `${((n / rows) * 100).toFixed(1)} %`;
    console.log(`${name}, ${rounding}: ${percent(seen.ties)} of ${rows} payouts end in exactly half a cent; the fast reading left ${percent(seen.doubtful)} to the exact one.`);
    expect(seen.wrong, `seed ${SEED}`).toBe(0);
    expect(seen.ties / rows).toBeGreaterThan(0.01);
    expect(seen.doubtful).toBeGreaterThanOrEqual(seen.ties);
  }, A_BUSY_MACHINE);
});
