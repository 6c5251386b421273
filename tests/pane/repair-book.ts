import { type Handmade, handmade, sheet } from "../workbook/handmade";

const text = (value: string): string => value.replaceAll("&", "&amp;").replaceAll("<", "&lt;");
const plain = (cell: string, value: number | string): string =>
  typeof value === "number" ? `<c r="${cell}"><v>${value}</v></c>` : `<c r="${cell}" t="inlineStr"><is><t xml:space="preserve">${text(value)}</t></is></c>`;
const formula = (cell: string, written: string, value: number | string): string =>
  `<c r="${cell}"${typeof value === "string" ? ' t="e"' : ""}><f>${text(written)}</f><v>${value}</v></c>`;
const row = (n: number, ...cells: readonly string[]): string => `<row r="${n}">${cells.join("")}</row>`;

/** An invented shop's list, whose formulas have been through other programs. */
const LOTS = [
  row(1, plain("A1", "Lot"), plain("B1", "Net (g)"), plain("C1", "Fineness"), plain("D1", "Fine (ozt)")),
  row(2, plain("A2", "L-201"), plain("B2", 1240.5), plain("C2", 925), formula("D2", '_xldudf_LOT_FINEWEIGHT(B2,"g",C2)', "#NAME?")),
  row(3, plain("A3", "L-202"), plain("B3", 800), plain("C3", 925), formula("D3", 'LOT.FINEWIGHT(B3,"g",C3)', "#NAME?")),
  row(4, plain("A4", "L-203"), plain("B4", 310), plain("C4", 800), plain("D4", '=LOT.FINEWEIGHT(B4;"g";C4)')),
  row(5, plain("A5", "L-204"), plain("B5", 500), plain("C5", 925), formula("D5", '_xlfn.LOT.FINEWEIGHT(B5,"g",C5)', "#NAME?")),
  row(6, plain("A6", "L-205"), plain("B6", 500), plain("C6", 925), formula("D6", '_xlfn.SINGLE(_xldudf_LOT_FINEWEIGHT(B6,"g",C6))', "#NAME?")),
  row(7, plain("A7", "L-206"), plain("B7", 500), plain("C7", 925), formula("D7", '_xldudf_LOT_FINEWEIGHT(B7,"g",C7)', "#GETTING_DATA")),
  row(8, plain("A8", "L-207"), plain("B8", 500), plain("C8", 92.5), formula("D8", '_xldudf_LOT_FINEWEIGHT(B8,"oz",C8)', "#VALUE!")),
  row(9, plain("A9", "L-208"), plain("B9", 500), plain("C9", 925), formula("D9", '_xldudf_LOT_FINEWEIGHT(B9,"g",C9)', "#VALUE!")),
  row(10, plain("A10", "L-209"), plain("B10", 500), plain("C10", 925), formula("D10", '_xldudf_LOT_FINEWEIGHT(B10,"stone",C10)', "#N/A")),
  row(11, plain("A11", "L-210"), plain("B11", 500), plain("C11", 925), formula("D11", "LOT.QQQQQQQQ(B11)", "#NAME?")),
  row(12, plain("A12", "L-211"), plain("B12", 500), plain("C12", 925), formula("D12", 'lot.fineweight(B12,"g",C12)', "#NAME?")),
  row(13, plain("A13", "L-212"), plain("B13", 500), plain("C13", 925), formula("D13", '_xldudf_LOT_FINEWEIGHT(B13,"g",C13)', 14.869714) + formula("E13", "B13/0", "#DIV/0!")),
].join("");

const WORKINGS = row(1, plain("A1", "Workings of Lotwright")) + row(2, plain("C2", '=LOT.FINEWEIGHT(B2,"g",C2)'));
const LOCKED = row(1, formula("A1", '_xldudf_LOT_COPPER(10,"lb")', "#NAME?"));
/** The text beside the formula tells of it, and the one below is a sentence. */
const GOOD = row(1, plain("A1", 500), formula("B1", '_xldudf_LOT_FINEWEIGHT(A1,"g",925)', 14.869714), plain("C1", '=LOT.FINEWEIGHT(A1,"g",925)')) + row(2, plain("A2", "=LOT.LOTCOST(C5:C13,D5:D13), rounded once at the end"));

const WRONG: Handmade = { sheets: { Lots: sheet(LOTS), "Old prices": sheet(LOCKED).replace("</worksheet>", '<sheetProtection sheet="1"/></worksheet>'), Workings: sheet(WORKINGS) } };

export const repairBooks: Readonly<Record<"wrong" | "good" | "none", Uint8Array>> = {
  wrong: handmade(WRONG),
  good: handmade({ sheets: { Lots: sheet(GOOD), Notes: sheet(row(1, plain("A1", "=not ours"))) } }),
  none: handmade({ sheets: { Lots: sheet(row(1, plain("A1", "Lot"))) } }),
};
