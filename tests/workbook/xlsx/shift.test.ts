import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { addressOf, columnName, columnNumber, readAddress } from "../../../src/workbook/xlsx/address";
import { shiftFormula } from "../../../src/workbook/xlsx/shift";

const column = fc.integer({ min: 1, max: 16_384 });
const row = fc.integer({ min: 1, max: 1_048_576 });

describe("an address", () => {
  it("is read back as it was written, over the whole sheet", () => {
    fc.assert(
      fc.property(row, column, (r, c) => {
        expect(readAddress(addressOf({ row: r, column: c }))).toEqual({ row: r, column: c });
      }),
    );
  });

  it("knows the columns next to its borders", () => {
    expect([1, 26, 27, 52, 53, 702, 703, 16_384].map(columnName)).toEqual(["A", "Z", "AA", "AZ", "BA", "ZZ", "AAA", "XFD"]);
    expect(["A", "Z", "AA", "ZZ", "AAA", "xfd"].map(columnNumber)).toEqual([1, 26, 27, 702, 703, 16_384]);
  });

  it("is refused outside the sheet", () => {
    for (const text of ["XFE1", "A1048577", "A0", "1A", "", "A", "AAAA1"]) expect(readAddress(text)).toBeNull();
  });
});

describe("a formula that is filled to another cell", () => {
  const filled = (formula: string) => shiftFormula(formula, 3, 2);

  it.each([
    ["A1+B2", "C4+D5"],
    ["$A1+A$1+$A$1", "$A4+C$1+$A$1"],
    ["SUM(A1:B9)", "SUM(C4:D12)"],
    ["SUM(A:A,$B:C,2:2,$3:4)", "SUM(C:C,$B:E,5:5,$3:7)"],
    ["Prices!B2*'Old lots'!B2", "Prices!D5*'Old lots'!D5"],
    ["'A1 lots'!A1", "'A1 lots'!C4"],
    ["'it''s B2'!B2", "'it''s B2'!D5"],
    ['"A1 is "&A1&" or ""B2"""', '"A1 is "&C4&" or ""B2"""'],
    ["LOG10(A1)+ATAN2(A1,B1)", "LOG10(C4)+ATAN2(C4,D4)"],
    ["LOG10 (A1)", "LOG10 (C4)"],
    ["_xldudf_LOT_COPPER(B4,\"lb\")", "_xldudf_LOT_COPPER(D7,\"lb\")"],
    ["Table1[A1]+Table1[[#This Row],[B2]]+A1", "Table1[A1]+Table1[[#This Row],[B2]]+C4"],
    ["Table1['[A1]+A1", "Table1['[A1]+C4"],
    ["[1]Sheet1!A1", "[1]Sheet1!C4"],
    ["'[Book A1.xlsx]Sheet'!A1", "'[Book A1.xlsx]Sheet'!C4"],
    ["SUM(Jan:Mar!B2)", "SUM(Jan:Mar!D5)"],
    ["Rate_A1*A1_rate*A1.rate*Ä1*éA1", "Rate_A1*A1_rate*A1.rate*Ä1*éA1"],
    ["1E5+1.5E10+A1%", "1E5+1.5E10+C4%"],
    ["XFE1+A1048577+A0+ABCD1", "XFE1+A1048577+A0+ABCD1"],
    ["IF(TRUE,#N/A,#REF!)", "IF(TRUE,#N/A,#REF!)"],
    ["{1,2;3,4}*A1", "{1,2;3,4}*C4"],
    ["A1:INDEX(A:A,3)", "C4:INDEX(C:C,3)"],
    ["A1 B1", "C4 D4"],
    ["XFD1", "#REF!"],
    ["XFC:XFD", "#REF!"],
    ["A1048574", "#REF!"],
    ["$XFD$1048576", "$XFD$1048576"],
  ])("%s becomes %s", (before, after) => {
    expect(filled(before)).toBe(after);
  });

  it("comes back when it is filled back", () => {
    const reference = fc
      .tuple(fc.constantFrom("", "$"), fc.integer({ min: 200, max: 16_000 }), fc.constantFrom("", "$"), fc.integer({ min: 200, max: 1_000_000 }))
      .map(([a, c, b, r]) => `${a}${columnName(c)}${b}${r}`);
    const piece = fc.oneof(reference, fc.constantFrom('"B2"', "'B2'!", "Table1[B2]", "+", "SUM(", ")", "1.5", "LOG10(", ",", "_xldudf_LOT_COPPER("));
    fc.assert(
      fc.property(fc.array(piece), fc.integer({ min: -199, max: 199 }), fc.integer({ min: -199, max: 199 }), (pieces, rows, columns) => {
        const formula = pieces.join(" ");
        expect(shiftFormula(shiftFormula(formula, rows, columns), -rows, -columns)).toBe(formula);
      }),
    );
  });

  it("moves each reference by exactly the distance, unless it is locked", () => {
    fc.assert(
      fc.property(fc.boolean(), fc.boolean(), row, column, fc.integer({ min: -20_000, max: 20_000 }), fc.integer({ min: -500, max: 500 }), (lockColumn, lockRow, r, c, rows, columns) => {
        const [a, b] = [lockColumn ? "$" : "", lockRow ? "$" : ""];
        const moved = { row: lockRow ? r : r + rows, column: lockColumn ? c : c + columns };
        const isOnSheet = moved.row >= 1 && moved.row <= 1_048_576 && moved.column >= 1 && moved.column <= 16_384;
        const expected = isOnSheet ? `${a}${columnName(moved.column)}${b}${moved.row}` : "#REF!";
        expect(shiftFormula(`2*${a}${columnName(c)}${b}${r}`, rows, columns)).toBe(`2*${expected}`);
      }),
    );
  });
});
