import type { SheetInfo, TableInfo } from "../port";
import { type Area, areaText, columnName, LAST_COLUMN, readArea } from "./address";
import type { Package } from "./package";
import { isOn, sheetPieces } from "./sheet-pieces";
import type { SheetEntry } from "./workbook";
import { readRoot } from "./xml-part";
import { elements, localName, Tags } from "./xml-tags";

/** What is to be known of a worksheet besides its cells. */
export function sheetFacts(parts: Package, { name, state, part }: SheetEntry): SheetInfo {
  const xml = parts.text(part);
  const hiddenColumns: string[] = [];
  let hasHiddenRows = false;
  let used: Area | undefined;
  let end = 0;
  for (const piece of sheetPieces(xml)) {
    if (piece.kind === "columns" && piece.isHidden)
      for (let column = piece.min; column <= Math.min(piece.max, LAST_COLUMN); column++) hiddenColumns.push(columnName(column));
    else if (piece.kind === "row") hasHiddenRows ||= piece.isHidden;
    else if (piece.kind === "cell" && (piece.formula || piece.value)) used = around(used, piece.row, piece.column);
    if ("end" in piece) end = piece.end;
  }
  return {
    name,
    isVisible: state === "visible",
    used: used ? areaText(used) : null,
    tables: tablesWithHeadings(parts, part),
    hiddenColumns,
    hasHiddenRows,
    ...afterRows(xml, end),
  };
}

function around(area: Area | undefined, row: number, column: number): Area {
  if (!area) return { top: row, left: column, bottom: row, right: column };
  return { top: Math.min(area.top, row), left: Math.min(area.left, column), bottom: Math.max(area.bottom, row), right: Math.max(area.right, column) };
}

function afterRows(xml: string, from: number): Pick<SheetInfo, "isProtected" | "merged"> {
  const { prefix } = readRoot(new Tags(xml));
  const merged: string[] = [];
  let isProtected = false;
  const tags = new Tags(xml, from);
  while (tags.next()) {
    if (tags.kind === "close") continue;
    if (tags.name === `${prefix}sheetProtection`) isProtected = isOn(tags.attribute("sheet"));
    else if (tags.name === `${prefix}mergeCell`) {
      const area = readArea(tags.attribute("ref") ?? "");
      if (area) merged.push(areaText(area));
    }
  }
  return { isProtected, merged };
}

export const tablesWithHeadings = (parts: Package, sheet: string): TableInfo[] =>
  tablesOf(parts, sheet).filter(({ hasHeadings }) => hasHeadings).map(({ name, range, hasTotals }) => ({ name, range, hasTotals }));

interface StoredTable {
  readonly name: string;
  readonly range: string;
  readonly hasHeadings: boolean;
  readonly hasTotals: boolean;
}

function tablesOf(parts: Package, sheet: string): StoredTable[] {
  const tables: StoredTable[] = [];
  for (const { type, target } of parts.relationships(sheet)) {
    if (type !== "table" || target === null) continue;
    for (const tag of elements(parts.text(target), (name) => localName(name) === "table")) {
      const area = readArea(tag.attribute("ref") ?? "");
      if (area)
        tables.push({
          name: tag.attribute("displayName") ?? "",
          range: areaText(area),
          hasHeadings: tag.attribute("headerRowCount") !== "0",
          hasTotals: Number(tag.attribute("totalsRowCount") ?? 0) > 0,
        });
    }
  }
  return tables;
}
