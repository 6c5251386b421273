import { describe, expect, it } from "vitest";
import { formulaInText } from "../../src/formulas/formula-in-text";
import { mend } from "../../src/formulas/mend";

const slips = (formula: string): string[] => [...mend(formula).slips].sort();

describe("a formula with our names as they are to be", () => {
  it.each([
    ['=_xldudf_LOT_COPPER(A1,"lb")', "prefix", '=LOT.COPPER(A1,"lb")'],
    ['=_xlfn.LOT.COPPER(A1,"lb")', "prefix", '=LOT.COPPER(A1,"lb")'],
    ['=_xlfn._xlws.LOT.COPPER(A1,"lb")', "prefix", '=LOT.COPPER(A1,"lb")'],
    ['=_xludf.lot.copper(A1,"lb")', "prefix", '=LOT.COPPER(A1,"lb")'],
    ['=_xll.LOT.COPPER(A1,"lb")', "prefix", '=LOT.COPPER(A1,"lb")'],
    ['=[1]!LOT.COPPER(A1,"lb")', "prefix", '=LOT.COPPER(A1,"lb")'],
    [`='C:\\add-ins\\lotwright.xlam'!LOT.COPPER(A1,"lb")`, "prefix", '=LOT.COPPER(A1,"lb")'],
    ['=LOT_COPPER(A1,"lb")', "prefix", '=LOT.COPPER(A1,"lb")'],
    ['=@LOT.COPPER(A1,"lb")', "at", '=LOT.COPPER(A1,"lb")'],
    ['=2*@ lot.copper(A1,"lb")', "at,letters", '=2*LOT.COPPER(A1,"lb")'],
    ['=_xlfn.SINGLE(LOT.COPPER(A1,"lb"))', "at", '=LOT.COPPER(A1,"lb")'],
    ['=_xlfn.SINGLE( _xldudf_LOT_COPPER(A1,"lb") )+1', "at,prefix", '=LOT.COPPER(A1,"lb")+1'],
    ['=@LOT.BARS(250,"ozt",100,"ozt")', "at", '=INDEX(LOT.BARS(250,"ozt",100,"ozt"),1,1)'],
    ['=Lot.Copper (A1,"lb")', "letters", '=LOT.COPPER(A1,"lb")'],
    ['=LOT.FINEWIGHT(1,"g",925)', "near", '=LOT.FINEWEIGHT(1,"g",925)'],
    ['=ROUND(LOT.COPER(_xldudf_LOT_WEIGHT(1,"lb","g"),"g"),2)', "near,prefix", '=ROUND(LOT.COPPER(LOT.WEIGHT(1,"lb","g"),"g"),2)'],
  ])("%s (%s)", (before, kinds, after) => {
    expect(slips(before).join()).toBe(kinds);
    expect(mend(before)).toMatchObject({ formula: after, isOurs: true, unknown: [] });
    expect(slips(after)).toEqual([]);
  });

  it.each(['=LOT.COPPER( A1 ,"lb")', '=SUM(A1:B4)&"LOT.FINEWIGHT(1)"', "='LOT.COPER(1)'!A1", "=LOT_OWN(1)", "='[mine.xlam]'!LOT.MINE(1)", "=_xlfn.SINGLE(A1:A4)", "=@A1", "=LOTS.COPPER(1)", "=LOT.COPPER(", "=LOT.COPPER"])("is left as it is where there is nothing to mend: %s", (formula) => {
    expect(mend(formula)).toMatchObject({ formula, slips: new Set() });
  });

  it("tells the names that were taken for others, and those that nothing resembles", () => {
    expect(mend('=LOT.FINEWIGHT(1,"g",925)').taken).toEqual([{ from: "LOT.FINEWIGHT", for: "LOT.FINEWEIGHT" }]);
    expect(mend("=LOT.QQQQQQQQ(1)")).toMatchObject({ formula: "=LOT.QQQQQQQQ(1)", unknown: ["LOT.QQQQQQQQ"] });
  });
});

describe("a formula in a text", () => {
  it.each([
    ['=LOT.COPPER(10,"lb")', '=LOT.COPPER(10,"lb")'],
    [`'=LOT.COPPER(10,"lb")`, '=LOT.COPPER(10,"lb")'],
    ['  = LOT.COPPER(10;"lb") ', '=LOT.COPPER(10,"lb")'],
    ['=LOT.COPPER(10,5;"a;b";0,13)', '=LOT.COPPER(10.5,"a;b",0.13)'],
    ["=LOT.LOTCOST({1,5;3};A1:A2)", "=LOT.LOTCOST({1.5;3},A1:A2)"],
    ["=LOT.LOTCOST({1,2;3,4},A1:B2)", "=LOT.LOTCOST({1,2;3,4},A1:B2)"],
  ])("%s is %s", (text, formula) => {
    expect(formulaInText(text, ".")).toEqual({ formula });
  });

  it("is not guessed where a comma could part two arguments or begin decimals", () => {
    expect(formulaInText("=LOT.FINENESS(92,5)", ",")).toEqual({ fault: expect.stringMatching(/^Cannot tell whether its comma parts two arguments/) });
    expect(formulaInText("=LOT.FINENESS(92,5)", ".")).toEqual({ formula: "=LOT.FINENESS(92,5)" });
    expect(formulaInText("=LOT.LOTCOST({1,5\\2;3\\4};A1:B2)", ",")).toEqual({ fault: expect.stringMatching(/^Cannot read the list/) });
    expect(formulaInText('=LOT.COPPER(10;"lb",A1)', ",")).toEqual({ fault: expect.stringMatching(/^Cannot read it/) });
  });

  it("is none in an ordinary text", () => {
    expect(formulaInText("LOT.COPPER is what we use", ".")).toBe(null);
    expect(formulaInText("=", ".")).toBe(null);
    for (const text of ["=LOT.LOTCOST(C5:C13,D5:D13), rounded once at the end", '=LOT.COPPER(A1,"lb") gives pounds', "=LOT.COPPER(A1", '=LOT.COPPER(A1,"lb").', '=LOT.COPPER(A1,"lb")?']) expect(formulaInText(text, "."), text).toBe(null);
  });
});
