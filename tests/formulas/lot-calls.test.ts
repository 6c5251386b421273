import { describe, expect, it } from "vitest";
import { lotCalls, lotNames, replaceCalls, wholeCall } from "../../src/formulas/lot-calls";

describe("the calls in a formula", () => {
  it("are found with the texts of their arguments", () => {
    const formula = '=1+LOT.COPPER(B4, "lb" ,,A1*2)';
    expect(lotCalls(formula)).toEqual([
      { name: "LOT.COPPER", arguments: ["B4", '"lb"', "", "A1*2"], text: 'LOT.COPPER(B4, "lb" ,,A1*2)', start: 3, end: formula.length },
    ]);
  });

  it("are found within one another, outer before inner, where they stand", () => {
    const formula = '=lot.price(LOT.WEIGHT(1,"lb","g"),"ozt","lb")/LOT.VERSION()';
    const calls = lotCalls(formula);
    expect(calls.map(({ name }) => name)).toEqual(["LOT.PRICE", "LOT.WEIGHT", "LOT.VERSION"]);
    for (const { text, start, end } of calls) expect(formula.slice(start, end)).toBe(text);
    expect(calls[2]?.arguments).toEqual([]);
  });

  it("are not looked for in texts and sheet names", () => {
    expect(lotCalls(`="LOT.COPPER(1)"&'LOT.X(1)'!A1`)).toEqual([]);
    expect(lotCalls('=LOT.COPPER(1,"a,(b","c""d)")')[0]?.arguments).toEqual(["1", '"a,(b"', '"c""d)"']);
  });

  it("keep array literals and table columns whole", () => {
    expect(lotCalls("=LOT.LOTCOST({1,2;3,4},Costs[[#All],[Price]])")[0]?.arguments).toEqual(["{1,2;3,4}", "Costs[[#All],[Price]]"]);
  });

  it.each([
    ['=LOT.COPPER(1,"lb"', "a bracket in it is not closed"],
    ['=LOT.COPPER(1))', "closes a bracket"],
    ['=LOT.COPPER(1,"lb)', "no closing quotation mark"],
  ])("cannot be read in %s", (formula, words) => {
    expect(() => lotCalls(formula)).toThrow(words);
  });
});

describe("a formula that is one call", () => {
  it("is told from one in which there is more", () => {
    expect(wholeCall('= LOT.COPPER(B4,"lb") ')?.name).toBe("LOT.COPPER");
    for (const formula of ['=LOT.COPPER(B4,"lb")*2', '=ROUND(LOT.COPPER(B4,"lb"),2)', "=SUM(A1)", '="LOT.COPPER(1)"']) expect(wholeCall(formula)).toBeNull();
  });
});

describe("putting other text in the place of calls", () => {
  it("works from within, and leaves the rest as it is", () => {
    expect(replaceCalls('= 1 + LOT.PRICE( LOT.WEIGHT(1,"lb","g") ,"ozt","lb") & "LOT.X(" ', ({ name }, given) => `<${name}:${given.join("|")}>`)).toBe(
      '= 1 + <LOT.PRICE:<LOT.WEIGHT:1|"lb"|"g">|"ozt"|"lb"> & "LOT.X(" ',
    );
  });

  it("gives back a formula without calls", () => {
    expect(replaceCalls("=SUM(A1:A3)", () => "never")).toBe("=SUM(A1:A3)");
  });
});

it("names under our namespace are found even in a formula that is not finished", () => {
  expect(lotNames("=lot.coper(LOT.PRICE(1,")).toEqual(["LOT.COPER", "LOT.PRICE"]);
  expect(lotNames('=SUM("LOT.X(1)")')).toEqual([]);
});

it("calls that stand in each other by the thousand are refused at once", () => {
  const nested = (levels: number): string => `=${"LOT.WEIGHT(".repeat(levels)}1${',"lb","g")'.repeat(levels)}`;
  expect(lotCalls(nested(64))).toHaveLength(64);
  expect(() => lotCalls(nested(3000))).toThrow("Cannot read the formula: it is nested too deep");
});
