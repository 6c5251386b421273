import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fromStored, toStored } from "../../../src/workbook/xlsx/stored-formula";

describe("a formula in a file", () => {
  it.each([
    ['_xldudf_LOT_COPPER(B4,"lb")', 'LOT.COPPER(B4,"lb")'],
    ["_xldudf_LOT_COPPER (B4)", "LOT.COPPER(B4)"],
    ["_xldudf_LOT_COPPER(_xldudf_LOT_PRICE(A1))", "LOT.COPPER(LOT.PRICE(A1))"],
    ["_xldudf_LOT_A_B(1)", "LOT.A.B(1)"],
    ["_XLDUDF_LOT_COPPER(1)", "LOT.COPPER(1)"],
    ['"_xldudf_LOT_COPPER("&_xldudf_LOT_VERSION()', '"_xldudf_LOT_COPPER("&LOT.VERSION()'],
    ["'_xldudf_LOT_X('!A1", "'_xldudf_LOT_X('!A1"],
    ["my_xldudf_LOT_COPPER(1)", "my_xldudf_LOT_COPPER(1)"],
    ["_xldudf_OTHER_COPPER(1)", "_xldudf_OTHER_COPPER(1)"],
    ["_xlfn.CONCAT(A1,_xlfn._xlws.SORT(B1:B9))", "CONCAT(A1,SORT(B1:B9))"],
    ["_xlfn.LET(_xlpm.x,1,_xlpm.x)", "_xlfn.LET(_xlpm.x,1,_xlpm.x)"],
    ["_xlfn.ANCHORARRAY(A1)", "_xlfn.ANCHORARRAY(A1)"],
    ["SUM(A1:A9)", "SUM(A1:A9)"],
  ])("%s is read as %s", (stored, read) => {
    expect(fromStored(stored)).toBe(read);
  });

  it.each([
    ['=LOT.COPPER(B4,"lb")', '_xldudf_LOT_COPPER(B4,"lb")'],
    ["=lot.copper (B4)", "_xldudf_LOT_COPPER(B4)"],
    ["=ROUND(LOT.FINEWEIGHT(7,\"lb\",925),3)", "ROUND(_xldudf_LOT_FINEWEIGHT(7,\"lb\",925),3)"],
    ['="LOT.COPPER("&A1', '"LOT.COPPER("&A1'],
    ["=PILOT.COPPER(1)", "PILOT.COPPER(1)"],
    ["=concat(A1)+Sort(B1:B9)", "_xlfn.CONCAT(A1)+_xlfn._xlws.SORT(B1:B9)"],
    ["=_xlfn.CONCAT(A1)", "_xlfn.CONCAT(A1)"],
    ["=IFERROR(SUMIFS(A:A,B:B,1),0)", "IFERROR(SUMIFS(A:A,B:B,1),0)"],
    ["=IF(A1=#N/A,#REF!,#DIV/0!)", "IF(A1=#N/A,#REF!,#DIV/0!)"],
    ["=SUM(Table1[[#This Row],[a@b]])", "SUM(Table1[[#This Row],[a@b]])"],
    ["=SUM(Table1[#All])", "SUM(Table1[#All])"],
    ["=_xlfn.LET(_xlpm.x,1,_xlpm.x)", "_xlfn.LET(_xlpm.x,1,_xlpm.x)"],
  ])("%s is written as %s", (formula, stored) => {
    expect(toStored(formula)).toBe(stored);
  });

  it.each([
    ["=LET(x,1,x)", "Cannot write LET( into a file: type that formula in Excel"],
    ["=SUM(A1#)", "Cannot write @ or # beside a reference into a file"],
    ["=@A1:A3", "Cannot write @ or # beside a reference into a file"],
    ["=SUM(Table1[@Weight])", "Cannot write @ or # beside a reference into a file"],
    ["=", "Cannot write an empty formula"],
  ])("%s is refused in a sentence", (formula, sentence) => {
    expect(() => toStored(formula)).toThrow(sentence);
  });

  it("is refused when it is longer than Excel takes", () => {
    expect(() => toStored(`=${"1+".repeat(5000)}1`)).toThrow("Cannot write a formula of more than 8,192 characters");
  });

  it("comes back as it was written", () => {
    const piece = fc.constantFrom("LOT.COPPER(", "LOT.A.B(", "XLOOKUP(", "SUM(", "A1", '"LOT.X("', "'LOT.X('!B2", ")", ",", "+", "Table1[LOT.X(]");
    fc.assert(
      fc.property(fc.array(piece, { minLength: 1 }), (pieces) => {
        expect(fromStored(toStored(`=${pieces.join("")}`))).toBe(pieces.join(""));
      }),
    );
  });
});
