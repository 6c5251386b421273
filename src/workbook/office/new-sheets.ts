import { sheetKey } from "../changes";
import type { NewSheet } from "../port";
import { plannedHeights } from "../row-heights";
import { columnName } from "../xlsx/address";
import { addChart } from "./charts";
import { dress } from "./cell-look";
import { typedContent } from "./typed";
import { give } from "./writing";

export function addSheet(context: Excel.RequestContext, planned: NewSheet): void {
  const { newSheet: name, isHidden, columnWidths = [], cells, print, charts = [] } = planned;
  const sheet = context.workbook.worksheets.add(name);
  sheet.showGridlines = false;
  columnWidths.forEach((width, i) => (sheet.getRange(`${columnName(i + 1)}1`).format.columnWidth = points(width)));
  for (const cell of cells) {
    const range = sheet.getRange(cell.cell);
    dress(range, cell);
    give(range, typedContent(cell), cell.numberFormat ?? null);
  }
  for (const { merge } of cells) if (merge !== undefined) sheet.getRange(merge).merge(false);
  for (const [row, height] of plannedHeights(planned)) sheet.getRange(`A${row}`).format.rowHeight = height;
  if (print) {
    sheet.pageLayout.setPrintArea(print.area);
    sheet.pageLayout.orientation = print.orientation === "portrait" ? "Portrait" : "Landscape";
    if (print.paper !== undefined) sheet.pageLayout.paperSize = print.paper === "letter" ? "Letter" : "A4";
    if (print.fitsOnePage) sheet.pageLayout.zoom = { horizontalFitToPages: 1, verticalFitToPages: 1 };
  }
  charts.forEach((chart) => addChart(sheet, chart));
  if (isHidden) sheet.visibility = "Hidden";
}

/** A width of so many digits, seven pixels each, and five for the margins. */
const points = (characters: number): number => (characters * 7 + 5) * 0.75;

/** Deletes those of these sheets that are there; gives the names of the others. */
export async function deleteSheets(context: Excel.RequestContext, names: readonly string[]): Promise<readonly string[]> {
  if (names.length === 0) return [];
  const all = context.workbook.worksheets.load("items/name");
  await context.sync();
  const found = all.items.filter(({ name }) => names.some((one) => sheetKey(one) === sheetKey(name)));
  for (const sheet of found) {
    sheet.visibility = "Visible";
    sheet.delete();
  }
  return names.filter((name) => !found.some((sheet) => sheetKey(sheet.name) === sheetKey(name)));
}
