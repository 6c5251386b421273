import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { Ratio } from "../../src/core/expression/ratio";
import { block, call, number, sum } from "./call";
import { decimal, whole } from "./numbers";

const fine = decimal(0, 900, 3);
const weight = decimal(0.01, 5000, 2);
/** Two cells each round once. */
const TWO_ROUNDINGS = 2 ** -51;

const near = (ours: number, expected: number): void => expect(Math.abs(ours / expected - 1)).toBeLessThanOrEqual(4 * TWO_ROUNDINGS);

describe("metal is conserved through every account", () => {
  it("HELDBACK: its lines add up to the charge, exactly, and its shares to one", () =>
    fc.assert(
      fc.property(decimal(1, 900, 3), fine, fine, fine, fine, fine, (charged, dropped, liquor, stubs, residues, crystal) => {
        const lines = [...block("HELDBACK", charged, dropped, liquor, stubs, residues, crystal).values()];
        expect(sum(lines.map(([held]) => Number(held))).compare(Ratio.of(charged))).toBe(0);
        const shares = lines.map(([, share]) => Number(share));
        const size = shares.reduce((a, share) => a + Math.abs(share), 0);
        expect(Math.abs(shares.reduce((a, share) => a + share, 0) - 1)).toBeLessThan(1e-14 * size);
        lines.forEach(([held], i) => expect(Math.abs((shares[i] ?? NaN) * charged - Number(held))).toBeLessThan(1e-12));
      }),
    ));

  const entries = fc.array(fine, { minLength: 1, maxLength: 6 });
  const column = (numbers: readonly number[]) => numbers.map((n) => [n]);

  it("UNACCOUNTED: what came and did not go is on hand or unaccounted for, exactly", () =>
    fc.assert(
      fc.property(entries, entries, entries, entries, (opening, received, shipped, closing) => {
        const gap = number("UNACCOUNTED", column(opening), column(received), column(shipped), column(closing));
        expect(sum([...opening, ...received]).compare(sum([...shipped, ...closing, gap]))).toBe(0);
        expect(number("UNACCOUNTED", column(closing), column(shipped), column(received), column(opening)) + 0).toBe(-gap + 0);
      }),
    ));

  it("BALANCE: its lines add up, it finds the gap that UNACCOUNTED finds, and its verdict follows from them", () =>
    fc.assert(
      fc.property(entries, entries, entries, entries, fc.array(decimal(0, 2, 2), { minLength: 4, maxLength: 4 }), decimal(0, 0.01, 4), fc.integer({ min: 1, max: 3 }), (opening, received, shipped, closing, us, bias, k) => {
        const sides = [opening, received, shipped, closing].map(column);
        const lines = block("BALANCE", ...sides, ...us, bias, k);
        const at = (label: string): number => Number(lines.get(label)?.[0]);
        expect(sum([at("Opening"), at("Received")]).compare(sum([at("Shipped"), at("Closing"), at("Unaccounted")]))).toBe(0);
        expect(at("Unaccounted")).toBe(call("UNACCOUNTED", ...sides));
        expect(sum(opening).compare(Ratio.of(at("Opening")))).toBe(0);
        const [gap, uncertainty] = [at("Unaccounted"), at("Expanded uncertainty")];
        const verdict = Math.abs(gap) <= uncertainty ? "within measurement" : gap > 0 ? "metal missing" : "metal over";
        expect(lines.get("Verdict")?.[0]).toBe(verdict);
        const throughput = Math.max(at("Received"), at("Shipped"));
        if (throughput > 0) expect(Math.abs(at("Share of throughput") * throughput - gap)).toBeLessThan(1e-12);
      }),
    ));

  it("BARS: whole bars and the remainder are the weight, exactly, and the remainder fills no bar", () =>
    fc.assert(
      fc.property(weight, decimal(0.01, 300, 2), (total, mould) => {
        const lines = block("BARS", total, "g", mould, "g");
        const [bars, remainder] = [Number(lines.get("Bars")?.[0]), Number(lines.get("Remainder")?.[0])];
        expect(Number.isInteger(bars)).toBe(true);
        expect(Ratio.of(bars).times(Ratio.of(mould)).plus(Ratio.of(remainder)).compare(Ratio.of(total))).toBe(0);
        expect(remainder).toBeGreaterThanOrEqual(0);
        expect(remainder).toBeLessThan(mould);
      }),
    ));

  it("BARS: of pounds in a mould of troy ounces, to the last digit", () =>
    fc.assert(
      fc.property(weight, decimal(1, 300, 2), (pounds, mould) => {
        const lines = block("BARS", pounds, "lb", mould, "ozt");
        const [bars, remainder] = [Number(lines.get("Bars")?.[0]), Number(lines.get("Remainder")?.[0])];
        expect(Math.abs((bars * mould * 12) / 175 + remainder - pounds)).toBeLessThan(1e-11);
        expect((remainder * 175) / 12).toBeLessThan(mould);
      }),
    ));

  it("METALRETURN: what is returned and the charges in metal are the payable fine weight, but for less than 0.001 ozt that is cut", () =>
    fc.assert(
      fc.property(decimal(20, 900, 3), decimal(0.8, 1, 3), decimal(0.01, 60, 2), decimal(18, 45, 2), (metal, payable, charges, price) => {
        const returned = Ratio.of(number("METALRETURN", metal, "ozt", payable, charges, price));
        const cut = Ratio.of(metal).times(Ratio.of(payable)).minus(Ratio.of(charges).over(Ratio.of(price))).minus(returned);
        expect(cut.compare(Ratio.of(0))).toBeGreaterThanOrEqual(0);
        expect(cut.compare(Ratio.of("0.001"))).toBeLessThan(0);
      }),
    ));

  it("a melt to which ALLOYADD has added comes out at its target", () =>
    fc.assert(
      fc.property(weight, decimal(0.6, 0.999, 3), decimal(0, 0.4, 3), decimal(0.42, 0.58, 3), fc.boolean(), (melt, high, low, target, raise) => {
        const [from, added] = raise ? [low, high] : [high, low];
        const more = number("ALLOYADD", melt, "g", from, target, added);
        near(number("MELTFINENESS", [[melt], [more]], [[from], [added]]) / 1000, target);
      }),
    ));

  it("the silver that COPPER was asked for is the silver that SILVERDROPPED finds in the bars' loss", () =>
    fc.assert(
      // Little silver beside much acid would be a small difference of large weights.
      fc.property(decimal(100, 5000, 2), decimal(0, 0.3, 2), (silver, freeAcid) => {
        near(number("SILVERDROPPED", number("COPPER", silver, "g", 0, freeAcid), "g", freeAcid), silver);
      }),
    ));
});

describe("fine never exceeds gross", () => {
  it("in FINEWEIGHT, in FINEWEIGHTS and in GROSSWEIGHT", () =>
    fc.assert(
      fc.property(weight, decimal(0.001, 1, 4), (gross, fineness) => {
        for (const held of [number("FINEWEIGHT", gross, "g", fineness, "g"), ...(call("FINEWEIGHTS", [[gross], [gross]], "g", fineness, "g") as number[][]).flat()]) {
          expect(held).toBeGreaterThan(0);
          expect(held).toBeLessThanOrEqual(gross);
        }
        expect(number("GROSSWEIGHT", gross, "g", fineness)).toBeGreaterThanOrEqual(gross);
      }),
    ));
});

describe("whole numbers are the least that do", () => {
  const PLACES = 2;
  const share = fc.integer({ min: 10, max: 100 });
  /** How much so many hold of what is to be held, both in hundredths of hundredths. */
  const least = (n: number, each: number, percent: number, all: number): void => {
    const [one, needed] = [whole(each, PLACES) * BigInt(percent), whole(all, PLACES) * 100n];
    expect(BigInt(n) * one).toBeGreaterThanOrEqual(needed);
    expect(BigInt(n - 1) * one).toBeLessThan(needed);
  };

  it.each(["HEATS", "VESSELS"])("%s: one fewer would not hold it", (id) => {
    const unit = id === "HEATS" ? "g" : "L";
    fc.assert(
      fc.property(weight, decimal(1, 300, PLACES), share, (all, each, percent) => {
        least(number(id, all, unit, each, unit, `${percent}%`), each, percent, all);
      }),
    );
  });

  it("COPPERBARS: one fewer would not give the copper", () =>
    fc.assert(
      fc.property(weight, decimal(1, 300, PLACES), fc.integer({ min: 0, max: 60 }), (copper, bar, stub) => {
        least(number("COPPERBARS", copper, "g", bar, "g", `${stub}%`), bar, 100 - stub, copper);
      }),
    ));

  it("RINSES: the target is met, and one rinse fewer does not meet it", () =>
    fc.assert(
      fc.property(decimal(0.01, 90, 2), decimal(0.001, 5, 3), decimal(0.1, 9, 1), decimal(0.1, 90, 1), fc.boolean(), (start, aim, retained, rinse, exact) => {
        // Half of the targets are just what some whole number of rinses leaves.
        const [retainedTo, rinseTo] = exact ? [1, 9] : [retained, rinse];
        const target = exact ? Number((start / 10 ** Math.floor(aim)).toFixed(7)) : aim;
        const n = number("RINSES", start, target, retainedTo, rinseTo);
        const [c, t, kept, all] = [whole(start, 7), whole(target, 7), whole(retainedTo, 1), whole(retainedTo, 1) + whole(rinseTo, 1)];
        const meets = (rinses: number): boolean => c * kept ** BigInt(rinses) <= t * all ** BigInt(rinses);
        expect(meets(n)).toBe(true);
        if (n > 0) expect(meets(n - 1)).toBe(false);
      }),
      { numRuns: 300 },
    ));
});

describe("a first-order drop", () => {
  it("DROPRATE of readings that lie on an exponential gives its rate back", () =>
    fc.assert(
      fc.property(decimal(0.01, 1, 3), decimal(1, 200, 1), fc.uniqueArray(decimal(0, 30, 1), { minLength: 2, maxLength: 8 }), (rate, start, hours) => {
        fc.pre(Math.max(...hours) - Math.min(...hours) >= 2);
        const silver = hours.map((t) => [start * Math.exp(-rate * t)]);
        expect(Math.abs(number("DROPRATE", hours.map((t) => [t]), silver) / rate - 1)).toBeLessThan(1e-12);
      }),
    ));

  it("DROPHOURS and DROPPED undo each other", () =>
    fc.assert(
      fc.property(decimal(0.01, 1, 3), decimal(0.5, 48, 1), (rate, hours) => {
        const left = 1 - number("DROPPED", hours, rate);
        fc.pre(left > 1e-4 && left < 0.999);
        expect(Math.abs(number("DROPHOURS", 1, left, rate) / hours - 1)).toBeLessThan(1e-9);
      }),
    ));
});

describe("PAYOUT never falls", () => {
  const terms = fc.tuple(decimal(0.8, 1, 3), decimal(0, 2, 2), decimal(0, 60, 2), fc.constantFrom(2, 0, 3, "2 half-even"));

  it("when the price rises", () =>
    fc.assert(
      fc.property(weight, decimal(2, 45, 3), decimal(0, 5, 3), terms, (metal, price, rise, agreed) => {
        expect(number("PAYOUT", metal, "ozt", price + rise, ...agreed)).toBeGreaterThanOrEqual(number("PAYOUT", metal, "ozt", price, ...agreed));
      }),
    ));

  // At a price below the refining charge more metal costs more.
  it("when there is more fine metal, at a price above the refining charge", () =>
    fc.assert(
      fc.property(weight, decimal(0, 100, 2), decimal(2, 45, 3), terms, (metal, more, price, agreed) => {
        expect(number("PAYOUT", metal + more, "ozt", price, ...agreed)).toBeGreaterThanOrEqual(number("PAYOUT", metal, "ozt", price, ...agreed));
      }),
    ));
});
