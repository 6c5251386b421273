import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { formulaPieces } from "../../src/formulas/pieces";
import { textIn, tokens } from "../../src/formulas/tokens";

const anything = fc.string({ unit: fc.constantFrom('"', "'", "[", "]", "(", "A", "1", ".", "$", "!", ":", ",", "#", " ", "é", "𝄞") });

describe("the pieces of a formula", () => {
  it("give the formula again when they are put together, whatever it is", () => {
    fc.assert(
      fc.property(anything, (formula) => {
        expect(formulaPieces(formula).map(({ text }) => text).join("")).toBe(formula);
      }),
    );
  });
});

describe("the tokens of a formula", () => {
  const kinds = (formula: string): string[] => tokens(formula).filter(({ kind }) => kind !== "space").map(({ kind, text }) => `${kind} ${text}`);

  it("give the formula again when they are put together, whatever it is", () => {
    fc.assert(
      fc.property(anything, (formula) => {
        const found = tokens(formula);
        expect(found.map(({ text }) => text).join("")).toBe(formula);
        for (const { text, start, end } of found) expect(formula.slice(start, end)).toBe(text);
      }),
    );
  });

  it.each([
    ["B4", ["reference B4"]],
    ["$B$4:C9", ["reference $B$4:C9"]],
    ["A:C", ["reference A:C"]],
    ["1:3", ["reference 1:3"]],
    ["Lots!D7", ["reference Lots!D7"]],
    ["'Old lots'!D7:D9", ["reference 'Old lots'!D7:D9"]],
    ["'it''s (old)'!B2", ["reference 'it''s (old)'!B2"]],
    ["[1]Sheet1!A1", ["reference [1]Sheet1!A1"]],
    ["'[Book A1.xlsx]Sheet'!A1", ["reference '[Book A1.xlsx]Sheet'!A1"]],
    ["A1:INDEX(A:A,3)", ["reference A1", "operator :", "function INDEX", "open (", "reference A:A", "separator ,", "number 3", "close )"]],
    ["LOG10(A1)", ["function LOG10", "open (", "reference A1", "close )"]],
    ["LOG10 (A1)", ["function LOG10", "open (", "reference A1", "close )"]],
    ["LOT.COPPER(1)", ["function LOT.COPPER", "open (", "number 1", "close )"]],
    ["Price*A1_rate", ["name Price", "operator *", "name A1_rate"]],
    ["1E5+.5%", ["number 1E5", "operator +", "number .5", "operator %"]],
    ['"a ""b"""&A1', ['text "a ""b"""', "operator &", "reference A1"]],
    ["Costs[[#All],[Price]]", ["columns Costs[[#All],[Price]]"]],
    ["[@[Net (g)]]-Lots[@Tare]", ["columns [@[Net (g)]]", "operator -", "columns Lots[@Tare]"]],
    ["#N/A+#DIV/0!+A1#", ["error #N/A", "operator +", "error #DIV/0!", "operator +", "reference A1", "operator #"]],
    ["A1<>2", ["reference A1", "operator <>", "number 2"]],
    ["{1,2;3,4}", ["open {", "number 1", "separator ,", "number 2", "separator ;", "number 3", "separator ,", "number 4", "close }"]],
  ])("of %s tell what each is", (formula, expected) => {
    expect(kinds(formula)).toEqual(expected);
  });

  it("hold texts whose quotation marks are written twice", () => {
    expect(textIn('"6"" bar"')).toBe('6" bar');
  });
});
