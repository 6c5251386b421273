import type { CellWrite } from "../workbook/port";
import { areaText, columnName, readArea } from "../workbook/xlsx/address";
import { tableRange } from "./corrections";
import type { LotList } from "./list";
import { isTotal } from "./list-rows";
import { type SheetReading, isFilled, isTyped } from "./sheet-reading";

export interface FreeRow {
  readonly row: number;
  /** The range that the table must take up, where the row lies right below it; else null. */
  readonly tableRange: string | null;
  readonly remarks: readonly string[];
  /** Sums of the total row that end above the new row, widened to take it in. Each overwrites a formula. */
  readonly widened: readonly CellWrite[];
}

/** The row in which the next lot goes, or a sentence that says what to do before there is one. `lotColumn` may bear its number already. */
export function freeRow(sheet: SheetReading, list: LotList, lotColumn: number | null, canGrowTables: boolean): FreeRow | string {
  const row = list.lastRow + 1;
  const numbers = list.columns.map(({ number }) => number);
  const table = sheet.info.tables.find(({ name }) => name === list.table);
  const area = table ? readArea(table.range) : null;
  if (table && area && table.hasTotals && row === area.bottom)
    return `Table ‘${table.name}’ has its totals right below the last lot: select a cell of its last lot, insert a table row below it (right-click, Insert, Table Row Below; or Tab in the last cell), then look again`;
  if (isTotal(sheet, numbers, row))
    return `Row ${row} right below the last lot holds the total: insert a row above it (right-click the row number ${row}, Insert), then look again; the sums of the total are then offered widened to take the new row in`;
  const filled = numbers.find((number) => isTyped(sheet.at(row, number)) && number !== lotColumn);
  if (filled !== undefined)
    return `Row ${row} right below the last lot is not free (${columnName(filled)}${row} holds something): insert a row above it (right-click the row number ${row}, Insert), then look again`;
  const merged = sheet.info.merged.map(readArea).find((block) => block && block.top <= row && row <= block.bottom && numbers.some((number) => block.left <= number && number <= block.right));
  if (merged) return `Row ${row} right below the last lot has merged cells (${areaText(merged)}): unmerge them, or insert a row above it, then look again`;
  const grows = area !== null && row > area.bottom;
  if (grows && !canGrowTables)
    return `Table ‘${list.table ?? ""}’ ends with its last lot: select the last cell of that row and press Tab, so that the table gains an empty row, then look again`;
  const widened = list.totalRow === null || table ? [] : widenedSums(sheet, list, row);
  return {
    row,
    tableRange: grows ? tableRange(list, row) : null,
    widened,
    remarks: widened.length > 0 ? [`The sums in row ${list.totalRow ?? ""} end above row ${row}: tick them to have them take the new lot in`] : [],
  };
}

function widenedSums(sheet: SheetReading, list: LotList, row: number): CellWrite[] {
  const totalRow = list.totalRow ?? 0;
  return list.columns.flatMap(({ number, letter }): CellWrite[] => {
    const cell = sheet.at(totalRow, number);
    if (!isFilled(cell) || cell.formula === null) return [];
    const content = cell.formula.replace(/(?<![!\p{L}\p{N}$])(\$?[A-Z]{1,3}\$?)(\d+):(\$?[A-Z]{1,3}\$?)(\d+)(?![\p{L}\p{N}(])/giu, (whole, first: string, top: string, last: string, bottom: string) =>
      Number(bottom) === list.lastRow && Number(top) < Number(bottom) ? `${first}${top}:${last}${row}` : whole,
    );
    return content === cell.formula ? [] : [{ sheet: list.sheet, cell: `${letter}${totalRow}`, content }];
  });
}
