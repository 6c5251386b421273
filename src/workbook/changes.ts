import type { CellWrite, Change, Chart, NewSheet, Note, Picture, SheetCell, TableGrowth } from "./port";
import { areaText, isInside, readAddress, readArea } from "./xlsx/address";

/** Changes by their kind, each of a shape that a workbook can take. */
export interface SortedChanges {
  readonly cells: readonly CellWrite[];
  readonly sheets: readonly NewSheet[];
  readonly notes: readonly Note[];
  /** Those of the new sheets too. */
  readonly pictures: readonly Picture[];
  readonly tables: readonly TableGrowth[];
}

/** Refuses in a sentence what no workbook could take, before anything is asked of one. */
export function sortedChanges(changes: readonly Change[]): SortedChanges {
  const cells: CellWrite[] = [];
  const sheets: NewSheet[] = [];
  const notes: Note[] = [];
  const pictures: Picture[] = [];
  const tables: TableGrowth[] = [];
  for (const change of changes)
    if ("newSheet" in change) {
      sheets.push(change);
      pictures.push(...(change.pictures ?? []));
    } else if ("png" in change) pictures.push(change);
    else if ("note" in change) notes.push(change);
    else if ("table" in change) tables.push(change);
    else cells.push(change);

  checkOnce(cells);
  cells.forEach((cell) => checkWrite(cell));
  checkOnce(notes);
  notes.forEach(checkNote);
  sheets.forEach((sheet) => checkSheet(sheet, sheets));
  pictures.forEach(checkPicture);
  tables.forEach((growth) => checkGrowth(growth, tables));
  return { cells, sheets, notes, pictures, tables };
}

/** A name as sheets are compared: case does not matter. */
export const sheetKey = (name: string): string => name.toLowerCase();

function checkOnce(writes: readonly { readonly sheet: string; readonly cell: string }[]): void {
  const seen = new Set<string>();
  for (const { sheet, cell } of writes) {
    const at = `${sheet}!${cell}`;
    if (!readAddress(cell)) refuse(at, "a write goes to one cell, such as B4");
    const key = `${sheetKey(sheet)}!${cell.replaceAll("$", "").toUpperCase()}`;
    if (seen.has(key)) refuse(at, "it is written twice in one go");
    seen.add(key);
  }
}

const LONGEST_TEXT = 32_767;
const LONGEST_FORMULA = 8192;

function checkWrite({ sheet, cell, content, asText, like }: CellWrite): void {
  const at = `${sheet}!${cell}`;
  if (like !== undefined && !readAddress(like)) refuse(at, `it cannot look like ${like}: name one cell of the sheet, such as B4`);
  if (typeof content === "number" && !Number.isFinite(content)) refuse(at, `${content} is not a number that a cell can hold`);
  if (typeof content !== "string") return;
  const isFormula = content.startsWith("=") && !asText;
  if (isFormula && content.length > LONGEST_FORMULA) refuse(at, `the formula has ${content.length} characters, and Excel takes ${LONGEST_FORMULA}`);
  if (content.length > LONGEST_TEXT) refuse(at, `the text has ${content.length} characters, and a cell takes ${LONGEST_TEXT}`);
}

function checkNote({ sheet, cell, note }: Note): void {
  if (note !== null && note.length > LONGEST_TEXT) refuse(`a note beside ${sheet}!${cell}`, `it has ${note.length} characters, and a note takes ${LONGEST_TEXT}`);
}

function checkSheet({ newSheet: name, cells, columnWidths = [], print, pictures = [], charts = [] }: NewSheet, all: readonly NewSheet[]): void {
  const what = `the sheet ${name}`;
  if (name === "" || name.length > 31) refuse(what, "a sheet's name has 1 to 31 characters");
  if (/[[\]:*?/\\]|^'|'$/.test(name)) refuse(what, "a sheet's name has none of [ ] : * ? / \\ and no apostrophe at its ends");
  if (sheetKey(name) === "history") refuse(what, "Excel keeps this name for itself");
  if (all.filter(({ newSheet }) => sheetKey(newSheet) === sheetKey(name)).length > 1) refuse(what, "it is made twice in one go");
  checkOnce(cells.map(({ cell }) => ({ sheet: name, cell })));
  cells.forEach((cell) => {
    checkWrite({ sheet: name, ...cell });
    checkMerge(name, cell);
  });
  if (columnWidths.some((width) => !(width >= 0 && width <= 255))) refuse(what, "a column is 0 to 255 characters wide");
  if (print && !readArea(print.area)) refuse(what, `${print.area} cannot be printed: name a range, such as A1:F40`);
  charts.forEach((chart) => checkChart(name, chart));
  const stranger = pictures.find(({ sheet }) => sheet !== name);
  if (stranger) refuse(what, `its picture belongs to ${stranger.sheet}`);
}

function checkChart(sheet: string, { title, at, categories, series, width, height }: Chart): void {
  const what = `the chart ${title} at ${sheet}!${at}`;
  if (!readAddress(at)) refuse(what, "its place is one cell, such as B4");
  if (!(width > 0 && height > 0 && width <= 4000 && height <= 4000)) refuse(what, `${width} × ${height} is no size for it`);
  const rows = readArea(categories);
  const columns = [rows, ...series.map(({ values }) => readArea(values))];
  const isFit = columns.every((area) => area && rows && area.left === area.right && area.top === rows.top && area.bottom === rows.bottom);
  if (series.length === 0 || !isFit) refuse(what, "it is drawn over columns of the same rows, such as A4:A9 and B4:B9");
}

function checkMerge(sheet: string, { cell, merge }: SheetCell): void {
  if (merge === undefined) return;
  const area = readArea(merge);
  const spot = readAddress(cell);
  if (!area || !spot || area.top !== spot.row || area.left !== spot.column) refuse(`${sheet}!${cell}`, `${merge} cannot be merged into it: it must be the first of these cells`);
}

const PNG = [0x89, 0x50, 0x4e, 0x47];

function checkPicture({ sheet, at, png, width, height }: Picture): void {
  const what = `a picture at ${sheet}!${at}`;
  if (!readAddress(at)) refuse(what, "its place is one cell, such as B4");
  if (!PNG.every((byte, i) => png[i] === byte)) refuse(what, "it is not a PNG");
  if (!(width > 0 && height > 0 && width <= 4000 && height <= 4000)) refuse(what, `${width} × ${height} is no size for it`);
}

function checkGrowth({ table, tableRange }: TableGrowth, all: readonly TableGrowth[]): void {
  if (!readArea(tableRange)) refuseGrowth(table, `it cannot take up ${tableRange}: name a range, such as A1:F40`);
  if (all.filter((one) => sheetKey(one.table) === sheetKey(table)).length > 1) refuseGrowth(table, "it grows twice in one go");
}

const refuse = (what: string, why: string): never => {
  throw new Error(`Cannot write ${what}: ${why}`);
};

export const refuseGrowth = (table: string, why: string): never => {
  throw new Error(`Cannot enlarge the table ${table}: ${why}`);
};

interface KnownSheet {
  readonly name: string;
  readonly isProtected: boolean;
  readonly merged: readonly string[];
}

/** Refuses what this workbook, as it is now, would not take. */
export function refuseBySheets({ cells, sheets, notes, pictures }: SortedChanges, known: readonly KnownSheet[]): void {
  const byName = new Map(known.map((sheet) => [sheetKey(sheet.name), sheet]));
  const made = new Set(sheets.map(({ newSheet }) => sheetKey(newSheet)));
  for (const { newSheet } of sheets)
    if (byName.has(sheetKey(newSheet))) refuse(`the sheet ${newSheet}`, "the workbook has a sheet of that name: choose another one");
  const places = [...cells, ...notes, ...pictures.map(({ sheet, at }) => ({ sheet, cell: at }))];
  for (const { sheet, cell } of places) {
    const found = byName.get(sheetKey(sheet));
    if (!found && !made.has(sheetKey(sheet))) refuse(`${sheet}!${cell}`, "this workbook has no sheet of that name");
    if (found?.isProtected) refuse(`${sheet}!${cell}`, `the sheet ${found.name} is protected: take the protection off first (Review, Unprotect Sheet)`);
  }
  for (const { sheet, cell } of cells) {
    const spot = readAddress(cell);
    const range = byName.get(sheetKey(sheet))?.merged.find((one) => {
      const area = readArea(one);
      return area && spot && isInside(spot, area) && !(area.top === spot.row && area.left === spot.column);
    });
    const area = range === undefined ? null : readArea(range);
    if (area) refuse(`${sheet}!${cell}`, `it is part of the merged cells ${areaText(area)}, which show only their first: write there, or split them`);
  }
}
