import type { NamedPlace, SheetInfo, TableInfo } from "../port";
import { type Area, areaText, columnName } from "../xlsx/address";
import { knows } from "./versions";

const PLACE = ["rowIndex", "columnIndex", "rowCount", "columnCount"];

/** Not from the range's address: that is A:A for a whole column. */
export const areaIn = ({ rowIndex, columnIndex, rowCount, columnCount }: Excel.Range): Area => ({
  top: rowIndex + 1,
  left: columnIndex + 1,
  bottom: rowIndex + rowCount,
  right: columnIndex + columnCount,
});

export async function sheetInfos(context: Excel.RequestContext): Promise<SheetInfo[]> {
  const sheets = context.workbook.worksheets.load("items/name,items/visibility");
  await context.sync();
  const first = sheets.items.map((sheet) => ({
    sheet,
    protection: sheet.protection.load("protected"),
    used: sheet.getUsedRangeOrNullObject(true).load([...PLACE, "rowHidden", "columnHidden"]),
    tables: sheet.tables.load("items/name,items/showHeaders,items/showTotals"),
  }));
  await context.sync();
  const second = first.map(({ used, tables, ...known }) => ({
    ...known,
    used: used.isNullObject ? null : used,
    tables: tables.items.filter(({ showHeaders }) => showHeaders).map((table) => ({ table, range: table.getRange().load(PLACE) })),
    columns: used.isNullObject || used.columnHidden === false ? [] : Array.from({ length: used.columnCount }, (_, i) => used.getColumn(i).load([...PLACE, "columnHidden"])),
    merged: used.isNullObject || !knows("1.13") ? null : used.getMergedAreasOrNullObject().load("address"),
  }));
  await context.sync();
  return second.map(({ sheet, protection, used, tables, columns, merged }) => ({
    name: sheet.name,
    isVisible: sheet.visibility === "Visible",
    isProtected: protection.protected,
    used: used ? areaText(areaIn(used)) : null,
    tables: tables.map(({ table, range }): TableInfo => ({ name: table.name, range: areaText(areaIn(range)), hasTotals: table.showTotals })),
    hiddenColumns: columns.filter(({ columnHidden }) => columnHidden).map((column) => columnName(areaIn(column).left)),
    // Null where some of the rows are hidden and some are not.
    hasHiddenRows: used !== null && (used.rowHidden as boolean | null) !== false,
    merged: merged && !merged.isNullObject ? rangesIn(merged.address) : [],
  }));
}

/** Of Lots!A9:C9,Lots!A12:C12 the ranges; a comma in a sheet's name stands in quotes. */
const rangesIn = (addresses: string): string[] => [...addresses.matchAll(/(?:^|[!,])(\$?[A-Z]{1,3}\$?\d+:\$?[A-Z]{1,3}\$?\d+)(?=,|$)/g)].map(([, range = ""]) => range.replaceAll("$", ""));

export async function namedPlaces(context: Excel.RequestContext): Promise<NamedPlace[]> {
  const names = context.workbook.names.load("items/name,items/type,items/visible");
  await context.sync();
  const ranges = names.items
    .filter(({ type, visible }) => type === "Range" && visible)
    .map((item) => {
      const range = item.getRangeOrNullObject().load(PLACE);
      return { name: item.name, range, sheet: range.worksheet.load("name") };
    });
  await context.sync();
  return ranges.filter(({ range }) => !range.isNullObject).map(({ name, range, sheet }) => ({ name, place: { sheet: sheet.name, range: areaText(areaIn(range)) } }));
}
