import { overlaps } from "./cell-range";
import { type SortedChanges, refuseGrowth, sheetKey } from "./changes";
import type { BookPort, CellContent, CellWrite, SheetInfo, TableGrowth, TableInfo } from "./port";
import { type Area, addressOf, areaText, isInside, readAddress, readArea } from "./xlsx/address";

/** A table on its way to a larger range. */
export interface GrownTable extends TableGrowth {
  readonly before: string;
  /** All of them, from left to right, as they then are. */
  readonly headings: readonly string[];
}

/** The tables that are to grow, or a sentence about one that Excel would not let grow, or not without changing its headings. */
export async function grownTables(changes: SortedChanges, known: readonly SheetInfo[], read: BookPort["read"]): Promise<readonly GrownTable[]> {
  return Promise.all(changes.tables.map((growth) => grownTable(growth, changes, known, read)));
}

async function grownTable(growth: TableGrowth, changes: SortedChanges, known: readonly SheetInfo[], read: BookPort["read"]): Promise<GrownTable> {
  const no = (why: string): never => refuseGrowth(growth.table, why);
  const sheet = known.find(({ name }) => sheetKey(name) === sheetKey(growth.sheet)) ?? no(`this workbook has no sheet ${growth.sheet}`);
  if (sheet.isProtected) no(`the sheet ${sheet.name} is protected: take the protection off first (Review, Unprotect Sheet)`);
  const table = tableOn(sheet, growth) ?? no(`the sheet ${sheet.name} has no table of that name`);
  const [old, wanted] = [areaOf(table.range), areaOf(growth.tableRange)];
  if (wanted.top !== old.top || wanted.left !== old.left || wanted.bottom < old.bottom || wanted.right < old.right)
    no(`it stands in ${table.range} and grows from there, down and to the right: it cannot take up ${growth.tableRange}`);
  if (table.hasTotals && wanted.bottom > old.bottom) no("its totals stand in its last row: insert a row above them in the sheet first (right-click, Insert, Table Row Above)");
  for (const area of newAreas(old, wanted)) {
    const inTheWay = thingIn(area, table, sheet, changes);
    if (inTheWay !== null) no(`in ${areaText(area)} it would run into ${inTheWay}`);
  }
  const after = (row: number): Promise<CellContent[]> => rowAfter({ ...wanted, top: row, bottom: row }, sheet, changes.cells, read);
  const headings = await after(wanted.top);
  const totals = table.hasTotals && wanted.right > old.right ? await after(wanted.bottom) : [];
  for (let column = old.right + 1; column <= wanted.right; column++) {
    const i = column - wanted.left;
    checkHeading(headings, i, addressOf({ row: wanted.top, column }), no);
    if ((totals[i] ?? "") !== "") no(`${addressOf({ row: wanted.bottom, column })} beside its totals is filled: empty it first`);
  }
  return { sheet: sheet.name, table: table.name, tableRange: areaText(wanted), before: table.range, headings: headings.map((content) => String(content ?? "")) };
}

/** A heading is also a name that formulas and the table's own part know, which only Excel changes together. */
export function refuseHeadings({ sheet, cell }: Pick<CellWrite, "sheet" | "cell">, tables: readonly Pick<TableInfo, "name" | "range">[]): void {
  const spot = readAddress(cell);
  const hit = tables.find(({ range }) => {
    const area = readArea(range);
    return area && spot && isInside(spot, { ...area, bottom: area.top });
  });
  if (hit && spot) throw new Error(`Cannot change ${sheet}!${addressOf(spot)}: it is a heading of the table ${hit.name}: rename it in Excel`);
}

const tableOn = ({ tables }: SheetInfo, { table }: TableGrowth): TableInfo | undefined => tables.find(({ name }) => sheetKey(name) === sheetKey(table));

const areaOf = (range: string): Area => readArea(range) ?? { top: 1, left: 1, bottom: 1, right: 1 };

/** The cells that a larger range has and the smaller one at its upper left has not. */
export function newAreas(old: Area, wanted: Area): Area[] {
  const right = { ...wanted, left: old.right + 1 };
  const below = { ...wanted, top: old.bottom + 1, right: old.right };
  return [right, below].filter(({ top, left, bottom, right }) => top <= bottom && left <= right);
}

function thingIn(area: Area, table: TableInfo, { name, tables, merged }: SheetInfo, changes: SortedChanges): string | null {
  for (const other of tables) {
    if (other === table) continue;
    const growth = changes.tables.find((one) => sheetKey(one.sheet) === sheetKey(name) && sheetKey(one.table) === sheetKey(other.name));
    if (overlaps(area, areaOf(growth?.tableRange ?? other.range))) return `the table ${other.name}`;
  }
  const block = merged.find((range) => overlaps(area, areaOf(range)));
  return block === undefined ? null : `the merged cells ${block}: split them first`;
}

/** What a row of cells holds when all is written. A formula that is written stands as its text. */
async function rowAfter(area: Area, { name }: SheetInfo, cells: readonly CellWrite[], read: BookPort["read"]): Promise<CellContent[]> {
  const [row = []] = await read({ sheet: name, range: areaText(area) });
  const contents = row.map(({ value, formula }) => formula ?? value);
  for (const { sheet, cell, content } of cells) {
    const spot = readAddress(cell);
    if (spot && sheetKey(sheet) === sheetKey(name) && isInside(spot, area)) contents[spot.column - area.left] = content;
  }
  return contents;
}

const LONGEST_HEADING = 255;

/** Excel gives a new column a heading where it has none, and another one where two are alike. */
function checkHeading(headings: readonly CellContent[], i: number, at: string, no: (why: string) => never): void {
  const heading = headings[i] ?? "";
  if (String(heading).trim() === "") no(`${at}, the heading of its new column, is empty: write a heading with it`);
  if (typeof heading !== "string" || heading.startsWith("=")) return no(`${at}, the heading of its new column, is not a text: write a heading with it`);
  if (heading.length > LONGEST_HEADING) no(`the heading in ${at} has ${heading.length} characters, and a heading takes ${LONGEST_HEADING}`);
  if (headings.findIndex((one) => sheetKey(String(one ?? "")) === sheetKey(heading)) !== i) no(`it has the heading ${heading} already: choose another one for ${at}`);
}
