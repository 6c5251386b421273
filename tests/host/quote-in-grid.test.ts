import { describe, expect, it } from "vitest";
import { sheetData } from "../../src/engine/book";
import { modelOf } from "../../src/engine/model";
import { quoteFigures } from "../../src/lots/quote-figures";
import { quoteSheet } from "../../src/lots/quote-sheet";
import { gridPort } from "../../src/workbook/grid";
import { fullQuote, plainQuote, SHEET } from "../lots/quotes";

describe("a quote in the grid", () => {
  it.each([["plain terms", plainQuote], ["every kind of term", fullQuote]])("with %s shows what it shows in the file", async (_, input) => {
    const model = modelOf({ sheets: [sheetData("s1", "Sheet1", {})] });
    const port = gridPort(model);
    const { undo } = await port.write([quoteSheet(input, SHEET)]);
    const rows = await port.read({ sheet: SHEET, range: "A1:E70" });
    expect(rows.flat().filter(({ error }) => error)).toEqual([]);
    const at = rows.findIndex(([first]) => first?.value === "Payout");
    const { payouts } = quoteFigures(input).quoted;
    expect(rows[at]?.slice(2).map(({ value }) => value)).toEqual(payouts);
    const sheetId = model.getters.getSheetIdByName(SHEET) ?? "";
    const shown = (col: number, row: number): string => model.getters.getEvaluatedCell({ sheetId, col, row }).formattedValue;
    expect([shown(4, 2), shown(3, at)]).toEqual(["2026-03-02", `$${payouts[1].toFixed(2)}`]);
    await undo();
    expect((await port.sheets()).map(({ name }) => name)).toEqual(["Sheet1"]);
  });
});
