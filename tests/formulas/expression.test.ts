import { describe, expect, it } from "vitest";
import { expression, parts } from "../../src/formulas/expression";

const kinds = (text: string): string[] => parts(expression(text)).map(({ kind, text: part }) => `${kind} ${part}`);

describe("an argument of a formula", () => {
  it.each([
    ["", ["nothing "]],
    [" 12.5 ", ["value 12.5"]],
    ['"lb"', ['value "lb"']],
    ["-3", ["value -3"]],
    ["Lots!D7", ["reference Lots!D7"]],
    ["[@[Net (g)]]", ["columns [@[Net (g)]]"]],
    ["B4-C4", ["reference B4", "reference C4", "arithmetic B4-C4"]],
    ["B4 - C4 * 2", ["reference B4", "reference C4", "value 2", "arithmetic C4 * 2", "arithmetic B4 - C4 * 2"]],
    ["(B4-C4)/2", ["reference B4", "reference C4", "arithmetic B4-C4", "brackets (B4-C4)", "value 2", "arithmetic (B4-C4)/2"]],
    ["98%", ["value 98", "percent 98%"]],
    ["-B4", ["reference B4", "negative -B4"]],
    ["SUM(B4:B9)", ["foreign SUM(B4:B9)"]],
    ["SUM(B4:B9)-C4", ["foreign SUM(B4:B9)", "reference C4", "arithmetic SUM(B4:B9)-C4"]],
    ["Price", ["name Price"]],
    ["TRUE", ["value TRUE"]],
    ["B4^2", ["foreign B4^2"]],
    ['B4&"lb"', ['foreign B4&"lb"']],
    ["A1:INDEX(A:A,3)", ["foreign A1:INDEX(A:A,3)"]],
    ["B4 C4", ["foreign B4 C4"]],
    ["B4+", ["foreign B4+"]],
    ["lot.weight(1,,B4)", ["value 1", "nothing ", "reference B4", "call lot.weight(1,,B4)"]],
    ["LOT.VERSION()", ["call LOT.VERSION()"]],
    ["{1,2;3,-4}", ["list {1,2;3,-4}"]],
    ["{1,B4}", ["foreign {1,B4}"]],
  ])("%s is read part by part", (text, expected) => {
    expect(kinds(text)).toEqual(expected);
  });
});
