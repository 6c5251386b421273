import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { evaluate } from "../../src/engine/evaluate";

describe("rounding in a cell, as Excel rounds", () => {
  it.each([
    ["=ROUND(1.005,2)", 1.01],
    ["=ROUND(-1.005,2)", -1.01],
    ["=ROUND(2.5*3.33+0.1,2)", 8.43],
    ["=ROUND(2.675,2)", 2.68],
    ["=ROUND(1234.5,-2)", 1200],
    ["=ROUND(1250,-2)", 1300],
    ["=ROUND(0.5)", 1],
    ["=ROUND(-0.4)", 0],
    ["=ROUND(2.345,2.9)", 2.35],
    ["=ROUNDUP(2.1-2,1)", 0.1],
    ["=ROUNDUP(1.001,2)", 1.01],
    ["=ROUNDUP(-1.001,2)", -1.01],
    ["=ROUNDDOWN(1.1*3,1)", 3.3],
    ["=ROUNDDOWN(0.3-0.2,1)", 0.1],
    ["=ROUNDDOWN(-1.009,2)", -1],
    ["=ROUND(1E300,2)", 1e300],
    ["=ROUND(5,1000)", 5],
    ["=ROUND(5,-1000)", 0],
  ])("%s is %d", (formula, value) => {
    expect(Object.is(evaluate(formula), value)).toBe(true);
  });

  it("gives the nearer cent of every price in tenths of a cent, the half away from zero", () => {
    fc.assert(
      fc.property(fc.integer({ min: -10_000_000, max: 10_000_000 }), (tenths) => {
        const cents = Math.sign(tenths) * Math.floor((Math.abs(tenths) + 5) / 10);
        expect(evaluate("=ROUND(A1,2)*100", { A1: String(tenths / 1000) })).toBeCloseTo(cents, 6);
      }),
      { numRuns: 200 },
    );
  });

  it("works on a range, and passes an error on", () => {
    expect(evaluate("=ROUND(A1:A2,1)", { A1: "1.25", A2: "2.35" })).toEqual([[1.3], [2.4]]);
    expect(evaluate("=ROUND(A1,1)", { A1: "=1/0" })).toMatchObject({ error: "#DIV/0!" });
    expect(evaluate('=ROUND("a few",1)')).toMatchObject({ error: "#VALUE!" });
  });
});
