import { describe, expect, it } from "vitest";
import { evaluate } from "../../src/engine/evaluate";

describe("a formula in a cell", () => {
  it("gives its value beside other cells", () => {
    expect(evaluate("A1", { A1: '=LOT.FINEWEIGHT(B1,"g",925,"g")', B1: "100" })).toBe(92.5);
  });

  it("takes small letters as capitals", () => {
    expect(evaluate('=lot.fineweight(100,"g",925,"g")')).toBe(92.5);
  });

  it("may stand among ordinary functions", () => {
    expect(evaluate('=ROUND(LOT.FINEWEIGHT(7,"lb",925),3)')).toBe(94.427);
    expect(evaluate('=IF(LOT.FINEWEIGHT(A1,"g",925,"g")>90,"heavy","light")', { A1: "100" })).toBe("heavy");
  });

  it("takes an argument left out between two commas for its usual value", () => {
    const plain = evaluate('=LOT.COPPER(10,"lb")');
    expect(plain).toBeTypeOf("number");
    expect(evaluate('=LOT.COPPER(10,"lb",,,"lb")')).toBe(plain);
  });

  it("tells an empty cell from a zero", () => {
    expect(evaluate('=LOT.COPPER(B1,"lb")', {})).toMatchObject({ error: "#VALUE!", message: expect.stringContaining("it is empty") });
  });

  it("reads ranges as rows of cells", () => {
    expect(evaluate("=LOT.LOTCOST(A1:B2,C1:D2)", { A1: "1", B1: "10", A2: "100", B2: "1000", C1: "0.5", D1: "0.25", C2: "0.1", D2: "0.01" })).toBe(23);
    expect(evaluate("=LOT.LOTCOST({2.5;1},{3.33;0.1})")).toBe(8.43);
    expect(evaluate("=LOT.LOTCOST(A1:A2,C1:D1)", { A1: "1", A2: "2", C1: "3", D1: "4" })).toMatchObject({ error: "#VALUE!" });
  });

  it("spills rows as rows", () => {
    const rows = evaluate("A1", { A1: '=LOT.SETTLEMENT(100,"lb",925,24,"98%",0.5,0.1,25)' });
    expect(Array.isArray(rows)).toBe(true);
    expect((rows as unknown[][])[0]).toHaveLength(3);
    expect((rows as unknown[][])[0]?.[0]).toBe("Net weight");
    expect(evaluate('=LOT.SETTLEMENT(100,"lb",925,24,"98%",0.5,0.1,25)')).toEqual(rows);
    expect(evaluate("=B1", { A1: '=LOT.SETTLEMENT(100,"lb",925,24,"98%",0.5,0.1,25)' })).toBe(100);
  });

  it("gives one result for each cell of a range that stands for a single value", () => {
    expect(evaluate('=LOT.FINEWEIGHT(A1:A2,"g",500,"g")', { A1: "10", A2: "20" })).toEqual([[5], [10]]);
  });
});

describe("an error in a cell", () => {
  it("has the words of its fault and the code that shows them in Excel", () => {
    expect(evaluate('=LOT.COPPER(10,"oz")')).toMatchObject({ error: "#VALUE!", message: expect.stringContaining('write "ozt"') });
    expect(evaluate('=LOT.STANDARD("tin")')).toMatchObject({ error: "#N/A" });
  });

  it("is an error to ordinary functions too", () => {
    expect(evaluate('=ISERROR(LOT.COPPER(10,"oz"))')).toBe(true);
    expect(evaluate('=IFERROR(LOT.COPPER(10,"oz"),"look here")')).toBe("look here");
  });

  it("passes through from the cell it came from, with its words", () => {
    const first = evaluate('=LOT.COPPER(10,"oz")');
    expect(evaluate('=LOT.COPPER(A1,"lb")', { A1: '=LOT.COPPER(10,"oz")' })).toEqual(first);
    expect(evaluate("=LOT.LOTCOST(A1:A2,B1:B2)", { A1: "1", A2: "=1/0", B1: "1", B2: "1" })).toMatchObject({ error: "#DIV/0!" });
  });

  it.each([
    ["=LOT.COPER(1)", "did you mean LOT.COPPER"],
    ["=1+lot.finewieght(1,2)", "did you mean LOT.FINEWEIGHT"],
    ["=LOT.SETTLEMEN({1,2},A1:A3,)", "did you mean LOT.SETTLEMENT"],
    ["=LOT.VERSIO()", "did you mean LOT.VERSION"],
    ["=LOT.SOMETHINGELSE(1)", "none of the LOT functions"],
  ])("offers the nearest name for %s", (formula, words) => {
    expect(evaluate(formula)).toMatchObject({ error: "#NAME?", message: expect.stringContaining(words) });
    expect(evaluate("A9", { A9: formula })).toMatchObject({ error: "#NAME?", message: expect.stringContaining(words) });
  });

  it("is a plain #NAME? for a name that is not ours", () => {
    expect(evaluate("=COPER(1)")).toMatchObject({ error: "#NAME?" });
  });

  it.each(["=10^309", "=-10^309", "=1E308*10", "=SUM(1E308,1E308)"])("is #NUM! where %s grows beyond what a cell can hold", (formula) => {
    for (const outcome of [evaluate(formula), evaluate("A1", { A1: formula })]) expect(outcome).toMatchObject({ error: "#NUM!" });
  });

  it("says what a formula with the wrong number of arguments needs", () => {
    expect(evaluate("=LOT.COPPER(10)")).toMatchObject({ error: "#VALUE!", message: expect.stringContaining("at least 2 arguments and got 1") });
    expect(evaluate("=LOT.COPPER(1,2,3,4,5,6)")).toMatchObject({ error: "#VALUE!", message: expect.stringContaining("at most 5 arguments and got 6") });
  });

  it.each(["=1+", "=LOT.COPPER(10", "=(1", '=LOT.COPPER(10;"lb")', "=A1", "=)"])("is one Excel knows, with a sentence, for %s", (formula) => {
    expect(evaluate("A1", { A1: formula })).toEqual({ error: "#VALUE!", message: expect.stringMatching(/^Cannot (?:read|compute)/) });
  });
});

it.each([
  ["brackets", `=${"(".repeat(4000)}1${")".repeat(4000)}`],
  ["signs", `=${"-".repeat(8000)}1`],
])("thousands of %s within each other are refused, and are not 0", (_, formula) => {
  const refused = { error: "#VALUE!", message: "Cannot read the formula: it is nested too deep: work a part of it out in a cell of its own" };
  expect(evaluate(formula)).toEqual(refused);
  expect(evaluate("A1", { A1: formula })).toEqual(refused);
  expect(evaluate("A1", { A1: "=B1+1", B1: formula })).toMatchObject({ error: "#VALUE!" });
});

it("says nothing on the console, which belongs to the command that asked", () => {
  const said: unknown[] = [];
  const { debug, log, error } = console;
  console.debug = console.log = console.error = (...words: unknown[]) => void said.push(words);
  try {
    evaluate("A1", { A1: '=LOT.COPPER(10,"oz")' });
  } finally {
    Object.assign(console, { debug, log, error });
  }
  expect(said).toEqual([]);
});
