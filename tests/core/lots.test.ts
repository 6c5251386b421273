import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { find } from "../../src/catalogue/catalogue";
import { copperDemand, silverDropped } from "../../src/core/drop";
import { unaccounted } from "../../src/core/balance";
import { lotCost } from "../../src/core/cost";
import { fume, nitricAcid } from "../../src/core/dissolve";
import { type Formula, result } from "../../src/core/expression/formula";
import { Ratio } from "../../src/core/expression/ratio";
import { type Given, value } from "../../src/core/expression/value";
import { payout, settlement } from "../../src/core/payout";
import { fineWeight, grossWeight, meltFineness } from "../../src/core/weigh";

/** Numbers as scales and price lists show them. */
const decimal = (low: number, high: number, places: number): fc.Arbitrary<number> =>
  fc.integer({ min: Math.ceil(low * 10 ** places), max: Math.floor(high * 10 ** places) }).map((n) => n / 10 ** places);

const grams = decimal(0.01, 5000, 2);
const fineness = decimal(0.3, 0.9999, 4);
const price = fc.oneof(decimal(18, 45, 2), decimal(18, 45, 3), fc.integer({ min: 18, max: 45 }));
const share = decimal(0.8, 1, 3);
const charge = decimal(0, 60, 2);
const decimals = fc.constantFrom(2, 0, 3, "2 half-even" as const);

const ratios = (given: Readonly<Record<string, number>>): Given => Object.fromEntries(Object.entries(given).map(([name, x]) => [name, Ratio.of(x)]));
const computed = (of: Formula, given: Given): Ratio => value(result(of).of, given);

describe("a lot equals its two halves", () => {
  const additive: readonly (readonly [string, Formula, string, Readonly<Record<string, number>>])[] = [
    ["fine weight", fineWeight, "weight", { fineness: 0.925 }],
    ["net weight from fine weight", grossWeight, "fine", { fineness: 0.925 }],
    ["copper for the drop", copperDemand, "silver", { allowance: 0.13, freeAcid: 0 }],
    ["silver from the bars' loss", silverDropped, "copperLost", { freeAcid: 0 }],
    ["acid", nitricAcid, "weight", { fineness: 0.8, strength: 0.68, density: 1.4048, no2share: 0.4, excess: 0.05 }],
    ["fume", fume, "weight", { fineness: 0.8, no2share: 0.4 }],
  ];

  it.each(additive)("in %s, exactly", (_, of, split, rest) => {
    fc.assert(
      fc.property(grams, grams, (a, b) => {
        const of1 = (weight: Ratio): Ratio => computed(of, { ...ratios(rest), [split]: weight });
        const [one, other] = [Ratio.of(a), Ratio.of(b)];
        expect(of1(one).plus(of1(other)).compare(of1(one.plus(other)))).toBe(0);
      }),
    );
  });

  it("in the fineness of a melt, exactly", () => {
    fc.assert(
      fc.property(grams, grams, fineness, (a, b, f) => {
        const melt = (weights: readonly number[]): Ratio =>
          computed(meltFineness, { weights: weights.map((w) => Ratio.of(w)), finenesses: weights.map(() => Ratio.of(f)) });
        expect(melt([a, b]).compare(melt([a]))).toBe(0);
      }),
    );
  });

  it("in unaccounted metal, exactly", () => {
    fc.assert(
      fc.property(fc.array(grams, { minLength: 1 }), fc.array(grams, { minLength: 1 }), fc.nat(), (received, shipped, at) => {
        const gap = (r: readonly number[], s: readonly number[]): Ratio =>
          computed(unaccounted, { opening: [], received: r.map((x) => Ratio.of(x)), shipped: s.map((x) => Ratio.of(x)), closing: [] });
        const [i, j] = [at % (received.length + 1), at % (shipped.length + 1)];
        const halves = gap(received.slice(0, i), shipped.slice(0, j)).plus(gap(received.slice(i), shipped.slice(j)));
        expect(halves.compare(gap(received, shipped))).toBe(0);
      }),
    );
  });

  it("in payout and cost, to the cent that the second rounding can shift", () => {
    fc.assert(
      fc.property(grams, grams, price, share, (a, b, p, s) => {
        const pay = (fine: Ratio): Ratio =>
          computed(payout, { fine, ...ratios({ price: p, payable: s, refiningCharge: 0.5, lotCharges: 0, decimals: 2, halfToEven: 0 }) });
        const gap = pay(Ratio.of(a)).plus(pay(Ratio.of(b))).minus(pay(Ratio.of(a).plus(Ratio.of(b))));
        expect(Math.abs(gap.toNumber())).toBeLessThanOrEqual(0.01);
        const cost = (quantities: readonly number[]): number =>
          computed(lotCost, { quantities: quantities.map((q) => Ratio.of(q)), prices: quantities.map(() => Ratio.of(p)) }).toNumber();
        expect(Math.abs(cost([a]) + cost([b]) - cost([a, b]))).toBeLessThanOrEqual(0.0100001);
      }),
    );
  });
});

describe("fine never exceeds gross", () => {
  it("at any fineness", () =>
    fc.assert(
      fc.property(grams, fineness, (weight, f) => {
        expect(computed(fineWeight, ratios({ weight, fineness: f })).compare(Ratio.of(weight))).toBeLessThanOrEqual(0);
      }),
    ));
});

const terms = fc.record({
  net: grams,
  unit: fc.constantFrom("g", "ozt", "lb", "dwt"),
  fineness: fc.oneof(fineness, fc.constant(1)),
  price,
  payable: share,
  refiningCharge: decimal(0, 2, 2),
  treatmentCharge: decimal(0, 1, 3),
  lotCharges: charge,
  deduction: fc.constantFrom(0, 0.5, 2, 5),
  decimals,
});
type Terms = typeof terms extends fc.Arbitrary<infer T> ? T : never;

/** The statement's amounts by their labels. */
function statement(t: Terms): ReadonlyMap<string, number> {
  const rows = find("SETTLEMENT")?.call(
    t.net, t.unit, t.fineness, t.price, t.payable, t.refiningCharge, t.treatmentCharge, t.lotCharges, t.deduction, t.decimals,
  ).value() as (string | number)[][];
  return new Map(rows.map(([label, amount]) => [String(label), Number(amount)]));
}

const amount = (of: ReadonlyMap<string, number>, label: string): number => of.get(label) ?? NaN;

describe("a settlement", () => {
  it("has lines that add up to its payout, to the last decimal", () => {
    fc.assert(
      fc.property(terms, (t) => {
        const lines = statement(t);
        const places = Number(String(t.decimals).slice(0, 1));
        const units = (label: string): number => Math.round(amount(lines, label) * 10 ** places);
        const added = ["Metal value", "Refining charge", "Treatment charge", "Lot charges", "Rounding"].map(units).reduce((a, b) => a + b);
        expect(added).toBe(units("Payout"));
        expect(Math.abs(units("Rounding"))).toBeLessThanOrEqual(2);
      }),
    );
  });

  it("pays what PAYOUT pays when there is neither deduction nor treatment charge", () => {
    fc.assert(
      fc.property(terms, (t) => {
        const places = Number(String(t.decimals).slice(0, 1));
        const agreed = ratios({
          price: t.price,
          payable: t.payable,
          refiningCharge: t.refiningCharge,
          lotCharges: t.lotCharges,
          decimals: places,
          halfToEven: typeof t.decimals === "string" ? 1 : 0,
        });
        const [net, f] = [Ratio.of(t.net), Ratio.of(t.fineness)];
        const total = settlement.rows.at(-1)?.[1];
        if (typeof total !== "object" || !("of" in total)) throw new Error("The last line of a settlement is its payout");
        const settled = value(total.of, { ...agreed, net, netAsGiven: net, fineness: f, treatmentCharge: Ratio.of(0), deduction: Ratio.of(0) });
        expect(settled.compare(computed(payout, { ...agreed, fine: net.times(f) }))).toBe(0);
      }),
    );
  });

  it("pays in a cell what PAYOUT pays in a cell for fine metal", () => {
    fc.assert(
      fc.property(terms, (t) => {
        const lines = statement({ ...t, fineness: 1, deduction: 0, treatmentCharge: 0 });
        const paid = find("PAYOUT")?.call(t.net, t.unit, t.price, t.payable, t.refiningCharge, t.lotCharges, t.decimals).value();
        expect(amount(lines, "Payout")).toBe(paid);
      }),
    );
  });
});

describe("a payout never falls", () => {
  it("when the price rises", () => {
    fc.assert(
      fc.property(terms, decimal(0, 5, 3), (t, rise) => {
        expect(amount(statement({ ...t, price: t.price + rise }), "Payout")).toBeGreaterThanOrEqual(amount(statement(t), "Payout"));
      }),
    );
  });

  // A refining charge above the price would take more the more fine metal there is.
  it("when the fineness rises, at a price above the refining charge", () => {
    fc.assert(
      fc.property(terms, fineness, (t, other) => {
        const [low, high] = [Math.min(t.fineness, other), Math.max(t.fineness, other)];
        expect(amount(statement({ ...t, fineness: high }), "Payout")).toBeGreaterThanOrEqual(amount(statement({ ...t, fineness: low }), "Payout"));
      }),
    );
  });
});
