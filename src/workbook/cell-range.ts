import { type Area, areaText, readArea } from "./xlsx/address";

/** A cell or a rectangle of cells, as a formula names it. */
export interface CellRange {
  /** Null for the sheet that the formula stands on. */
  readonly sheet: string | null;
  readonly area: Area;
  /** The range as it was typed, dollar signs and all, without the sheet. */
  readonly written: string;
}

const WITH_SHEET = /^(?:(?:'((?:[^']|'')+)'|([\p{L}\p{N}_.]+))!)?([^!]+)$/u;

export function readCellRange(text: string): CellRange | null {
  const [, quoted, bare, written = ""] = WITH_SHEET.exec(text) ?? [];
  const area = readArea(written);
  if (!area) return null;
  return { sheet: quoted?.replaceAll("''", "'") ?? bare ?? null, area, written: written.toUpperCase() };
}

export const cellRange = (sheet: string | null, range: string): CellRange | null => {
  const area = readArea(range);
  return area && { sheet, area, written: areaText(area) };
};

/** As a formula on a sheet writes it: the sheet's own cells without its name. */
export function writtenRange({ sheet, written }: CellRange, on: string | null): string {
  return sheet === null || sheet === on ? written : `${sheetName(sheet)}!${written}`;
}

/** Where cells stand, as a formula on a sheet writes it; null for one that names every sheet. */
export const addressOn = (sheet: string, area: Area, on: string | null): string => writtenRange({ sheet, area, written: areaText(area) }, on);

/** The same cells seen from another sheet. */
export const seenFrom = (range: CellRange, before: string, now: string): CellRange => {
  const sheet = range.sheet ?? before;
  return { ...range, sheet: sheet === now ? null : sheet };
};

const PLAIN_NAME = /^[\p{L}_][\p{L}\p{N}_.]*$/u;
/** These mean a cell where they stand alone. */
const CELL_LIKE = /^(?:[a-z]{1,3}\d+|r\d*c?\d*|c\d*)$/i;

const sheetName = (sheet: string): string =>
  PLAIN_NAME.test(sheet) && !CELL_LIKE.test(sheet) ? sheet : `'${sheet.replaceAll("'", "''")}'`;

export const isOneCell = ({ area }: CellRange): boolean => area.top === area.bottom && area.left === area.right;

export const overlaps = (a: Area, b: Area): boolean =>
  a.top <= b.bottom && b.top <= a.bottom && a.left <= b.right && b.left <= a.right;
