import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { Ratio } from "../../src/core/expression/ratio";

/** The same arithmetic on whole numbers alone: a fraction whose bottom is above zero. */
interface Fraction {
  readonly top: bigint;
  readonly bottom: bigint;
}
const fraction = (top: bigint, bottom: bigint): Fraction => (bottom < 0n ? { top: -top, bottom: -bottom } : { top, bottom });

interface Both {
  readonly ours: Ratio;
  readonly theirs: Fraction;
}

/** As scales and prices show them, and with more digits than float64 holds. */
const digits = fc.oneof(fc.bigInt({ min: -999_999_999n, max: 999_999_999n }), fc.bigInt({ min: -(10n ** 30n), max: 10n ** 30n }));
const decimal = fc
  .record({ digits, places: fc.integer({ min: 0, max: 7 }) })
  .map(({ digits, places }): Both => ({ ours: Ratio.of(`${digits}e-${places}`), theirs: { top: digits, bottom: 10n ** BigInt(places) } }));
/** Quotients, as a unit's factor makes them. */
const quotient = fc.tuple(decimal, decimal.filter(({ theirs }) => theirs.top !== 0n)).map(([a, b]) => over(a, b));
const number = fc.oneof(decimal, quotient);

const over = (a: Both, b: Both): Both => ({
  ours: a.ours.over(b.ours),
  theirs: fraction(a.theirs.top * b.theirs.bottom, a.theirs.bottom * b.theirs.top),
});

const SCALE = 20;

/** Equal to twenty decimals, and equal exactly by the core's own comparison with the whole numbers. */
function expectSame({ ours, theirs }: Both): void {
  const scaled = ours.times(Ratio.of(`1e${SCALE}`)).floor();
  expect(BigInt(scaled.decimal().toFixed(0))).toBe(floorOf({ top: theirs.top * 10n ** BigInt(SCALE), bottom: theirs.bottom }));
  expect(ours.compare(Ratio.of(String(theirs.top)).over(Ratio.of(String(theirs.bottom))))).toBe(0);
}

const floorOf = ({ top, bottom }: Fraction): bigint => (top >= 0n || top % bottom === 0n ? top / bottom : top / bottom - 1n);
const compare = (a: Fraction, b: Fraction): number => {
  const gap = a.top * b.bottom - b.top * a.bottom;
  return gap < 0n ? -1 : gap > 0n ? 1 : 0;
};

describe("a ratio computes as fractions of whole numbers do", () => {
  it("adds and takes away", () =>
    fc.assert(
      fc.property(number, number, (a, b) => {
        const [x, y] = [a.theirs, b.theirs];
        expectSame({ ours: a.ours.plus(b.ours), theirs: fraction(x.top * y.bottom + y.top * x.bottom, x.bottom * y.bottom) });
        expectSame({ ours: a.ours.minus(b.ours), theirs: fraction(x.top * y.bottom - y.top * x.bottom, x.bottom * y.bottom) });
      }),
    ));

  it("multiplies and divides", () =>
    fc.assert(
      fc.property(number, number, (a, b) => {
        expectSame({ ours: a.ours.times(b.ours), theirs: fraction(a.theirs.top * b.theirs.top, a.theirs.bottom * b.theirs.bottom) });
        if (b.theirs.top !== 0n) expectSame(over(a, b));
      }),
    ));

  it("takes powers", () =>
    fc.assert(
      fc.property(decimal, fc.integer({ min: -3, max: 3 }), ({ ours, theirs }, n) => {
        fc.pre(theirs.top !== 0n);
        const [up, down] = [theirs.top ** BigInt(Math.abs(n)), theirs.bottom ** BigInt(Math.abs(n))];
        const raised = ours.power(Ratio.of(n));
        const expected = n < 0 ? fraction(down, up) : fraction(up, down);
        expect(raised.compare(Ratio.of(String(expected.top)).over(Ratio.of(String(expected.bottom))))).toBe(0);
      }),
    ));

  it("compares", () =>
    fc.assert(
      fc.property(number, number, (a, b) => {
        expect(Math.sign(a.ours.compare(b.ours))).toBe(compare(a.theirs, b.theirs));
        expect(a.ours.compare(a.ours.plus(b.ours).minus(b.ours))).toBe(0);
        expect(a.ours.isZero()).toBe(a.theirs.top === 0n);
      }),
    ));

  it("takes whole numbers below and above", () =>
    fc.assert(
      fc.property(number, ({ ours, theirs }) => {
        const below = floorOf(theirs);
        expect(BigInt(ours.floor().decimal().toFixed(0))).toBe(below);
        expect(BigInt(ours.ceiling().decimal().toFixed(0))).toBe(below * theirs.bottom === theirs.top ? below : below + 1n);
        expect(ours.isInteger()).toBe(theirs.top % theirs.bottom === 0n);
      }),
    ));

  it("goes back to the cell as the nearest number that a cell can hold", () =>
    fc.assert(
      fc.property(number, ({ ours, theirs }) => {
        const shown = ours.toNumber();
        const away = distance(shown, theirs);
        for (const neighbour of neighbours(shown)) expect(compare(away, distance(neighbour, theirs))).toBeLessThanOrEqual(0);
      }),
    ));
});

function distance(x: number, { top, bottom }: Fraction): Fraction {
  let [numerator, denominator] = [x, 1n];
  while (!Number.isInteger(numerator)) [numerator, denominator] = [numerator * 2, denominator * 2n];
  const gap = BigInt(numerator) * bottom - top * denominator;
  return { top: gap < 0n ? -gap : gap, bottom: denominator * bottom };
}

function neighbours(x: number): readonly number[] {
  const bits = new BigInt64Array(1);
  const value = new Float64Array(bits.buffer);
  return [-1n, 1n].map((step) => {
    value[0] = x;
    bits[0] = (bits[0] ?? 0n) + step;
    return value[0];
  }).filter(Number.isFinite);
}
