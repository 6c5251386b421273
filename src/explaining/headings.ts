import type { WorkbookReading } from "../workbook/file-reading";
import type { CellReading } from "../workbook/port";
import type { SheetArea } from "../workbook/table-columns";
import { type Area, areaText } from "../workbook/xlsx/address";
import type { Standing } from "./references";

/**
 * What the sheet calls the cells that a formula names: the heading above them and, where they do not stand in the
 * formula's own row, what stands at the left of theirs. Null where the sheet says nothing.
 */
export async function nameOf({ sheet, area }: SheetArea, from: Standing, port: WorkbookReading): Promise<string | null> {
  const near = await surroundings(sheet, area, port);
  const heading = headingOf(near, area.left) ?? headingOf(await farAbove(near, sheet, area, port), area.left);
  if (!heading) return labelAtLeft(near, area) ?? textAbove(near, area);
  const last = area.right === area.left ? heading : (headingOf(near, area.right) ?? heading);
  const columns = last.text === heading.text ? heading.text : `${heading.text} to ${last.text}`;
  const isOneRow = area.top === area.bottom;
  const isElsewhere = sheet !== from.sheet || area.top !== from.spot.row;
  const row = isOneRow && isElsewhere ? rowName(near, area, heading.left) : null;
  return row === null ? columns : `${columns} · ${row}`;
}

/** A part of a sheet that was read, in the sheet's own counting. */
interface Part {
  readonly area: Area;
  readonly rows: readonly (readonly CellReading[])[];
  /** The first row below the headings that are looked for. */
  readonly below: number;
}

const ROWS_ABOVE = 40;
const COLUMNS_LEFT = 15;
const COLUMNS_RIGHT = 4;
/** A heading this far above is still looked for in the column alone. */
const MOST_ROWS = 20_000;

async function surroundings(sheet: string, { top, left }: Area, port: WorkbookReading): Promise<Part> {
  const area = { top: Math.max(1, top - ROWS_ABOVE), bottom: top, left: Math.max(1, left - COLUMNS_LEFT), right: left + COLUMNS_RIGHT };
  return { area, rows: await port.read({ sheet, range: areaText(area) }), below: top };
}

/** Around the nearest text far above in the column. */
async function farAbove(near: Part, sheet: string, { left }: Area, port: WorkbookReading): Promise<Part> {
  const row = near.area.top > 1 ? await rowOfText(sheet, near.area.top, left, port) : null;
  if (row === null) return near;
  const area = { ...near.area, top: Math.max(1, row - 2), bottom: row };
  return { area, rows: await port.read({ sheet, range: areaText(area) }), below: row + 1 };
}

async function rowOfText(sheet: string, below: number, left: number, port: WorkbookReading): Promise<number | null> {
  if (port.textAbove) return port.textAbove(sheet, below, left);
  const top = Math.max(1, below - 1 - MOST_ROWS);
  const column = await port.read({ sheet, range: areaText({ top, bottom: below - 1, left, right: left }) });
  const above = column.findLastIndex(([cell]) => cell !== undefined && isText(cell));
  return above < 0 ? null : top + above;
}

const EMPTY: CellReading = { value: null, formula: null, error: false };

const at = ({ area, rows }: Part, row: number, column: number): CellReading => rows[row - area.top]?.[column - area.left] ?? EMPTY;

const isText = ({ value, formula, error }: CellReading): boolean => formula === null && !error && typeof value === "string" && value.trim() !== "";

const isFilled = ({ value, formula }: CellReading): boolean => formula !== null || (value !== null && value !== "");

interface Heading {
  readonly text: string;
  /** The first column of its list. */
  readonly left: number;
}

/** The heading above a column of a list, from one row or two. */
function headingOf(part: Part, column: number): Heading | null {
  // Beside a label two texts in a row are more likely another label and what it stands for.
  const row = headingRow(part, column, isText(at(part, part.below, column - 1)) ? 3 : 2);
  if (row === null) return null;
  const upper = groupAbove(part, row, column);
  const own = short(at(part, row, column));
  return { text: upper === null ? own : `${upper} ${own}`, left: filledAround(part, row, column).left };
}

/** The nearest row of headings; where the column itself holds texts, the topmost of them. */
function headingRow(part: Part, column: number, least: number): number | null {
  const isTextColumn = isText(at(part, part.below, column));
  let topmost: number | null = null;
  for (let row = part.below - 1; row >= part.area.top; row--) {
    const { left, right } = filledAround(part, row, column);
    const cells = cellsOf(part, row, left, right);
    if (cells.length >= least && cells.every(isText)) {
      if (!isTextColumn) return row;
      topmost = row;
    } else if (isTextColumn && cells.length === 0) break;
  }
  return topmost;
}

/** The filled cells of a row that touch one another and this column; none where the column's own is empty. */
function filledAround(part: Part, row: number, column: number): { left: number; right: number } {
  let [left, right] = [column, column - 1];
  while (right < part.area.right && isFilled(at(part, row, right + 1))) right++;
  if (right < column) return { left, right };
  while (left > part.area.left && isFilled(at(part, row, left - 1))) left--;
  return { left, right };
}

const cellsOf = ({ area, rows }: Part, row: number, left: number, right: number): readonly CellReading[] =>
  (rows[row - area.top] ?? []).slice(left - area.left, right + 1 - area.left);

/** The upper of two rows of headings. One that is merged over several columns holds its text in the first of them. */
function groupAbove(part: Part, row: number, column: number): string | null {
  const { left, right } = filledAround(part, row, column);
  const filled = cellsOf(part, row - 1, left, right).filter(isFilled);
  // A single text above the headings is the title of them all.
  if (filled.length < 2 || !filled.every(isText)) return null;
  const group = cellsOf(part, row - 1, left, column).findLast(isFilled);
  return group ? short(group) : null;
}

/** What a row of a list is called: what stands in its first cell. */
function rowName(part: Part, { top, left }: Area, listLeft: number): string | null {
  const first = cellsOf(part, top, listLeft, left - 1).find(isFilled);
  if (!first || first.error || typeof first.value === "boolean") return null;
  return typeof first.value === "number" && (first.numberFormat !== undefined || !Number.isInteger(first.value)) ? null : short(first);
}

function labelAtLeft(part: Part, { top, left }: Area): string | null {
  for (let column = left - 1; column >= part.area.left; column--) if (isText(at(part, top, column))) return short(at(part, top, column));
  return null;
}

/** A single column has its heading above it, with nothing between. */
function textAbove(part: Part, { top, left }: Area): string | null {
  for (let row = top - 1; row >= part.area.top; row--) {
    const cell = at(part, row, left);
    if (isText(cell)) return short(cell);
    if (!isFilled(cell)) return null;
  }
  return null;
}

const LONGEST = 60;

function short({ value }: CellReading): string {
  const text = String(value).replace(/\s+/gu, " ").trim();
  return text.length > LONGEST ? `${text.slice(0, LONGEST - 1)}…` : text;
}
