import { readArea } from "../workbook/xlsx/address";
import { isHeadingText, saying } from "./assign";
import { IDENTITY, WEIGHTS, fields } from "./fields";
import { readHeading } from "./words";
import { type SheetReading, isFilled } from "./sheet-reading";

export interface HeadingRow {
  readonly row: number;
  readonly upper: number;
  /** The words over each column, by its number. */
  readonly headings: ReadonlyMap<number, string>;
  /** How many fields it names, weighted by how clearly. */
  readonly score: number;
}

/** Headings name at least so many fields, among them one by which a lot is known and one weight. */
const FEWEST = 3;

/** The rows of a sheet that can be headings of a list of lots, in reading order. */
export function headingRows(sheet: SheetReading): HeadingRow[] {
  const { area } = sheet;
  if (!area) return [];
  const merged = sheet.info.merged.flatMap((range) => readArea(range) ?? []);
  const found: HeadingRow[] = [];
  for (let row = area.top; row <= area.bottom; row++) {
    const single = textsOf(sheet, row);
    if (!canBeHeadings(sheet, row, single)) continue;
    const one = rated(row, row, single);
    const two = row > area.top ? rated(row, row - 1, underUpper(sheet, row, single, merged)) : null;
    const best = two && two.score > (one?.score ?? 0) + 0.05 ? two : one;
    if (best) found.push(best);
  }
  // The lower of two heading rows can look like headings by itself, and so can the upper one.
  return found.filter((one) => !found.some((other) => other !== one && other.upper <= one.row && one.row < other.row && other.score >= one.score));
}

export function rated(row: number, upper: number, headings: ReadonlyMap<number, string>): HeadingRow | null {
  const read = [...headings.values()].map(readHeading);
  const named = fields
    .map((field) => ({ id: field.id, said: Math.max(0, ...read.map((heading) => saying(field, heading))) }))
    .filter(({ said }) => said >= 0.5);
  const clear = [...headings.values()].filter((text) => isHeadingText(text) >= 0.5).length;
  const enough = Math.min(named.length, clear) >= FEWEST && named.some(({ id }) => IDENTITY.has(id)) && named.some(({ id }) => WEIGHTS.has(id));
  // A unit told in the headings is worth a little, so that a row of units below the words is taken with them.
  const units = read.filter(({ measure }) => measure !== null).length;
  return enough ? { row, upper, headings, score: named.reduce((sum, { said }) => sum + said, 0) + 0.1 * units } : null;
}

function textsOf(sheet: SheetReading, row: number): Map<number, string> {
  const texts = new Map<number, string>();
  const { left, right } = sheet.area ?? { left: 1, right: 0 };
  for (let column = left; column <= right; column++) {
    const text = sheet.text(row, column);
    if (text !== "") texts.set(column, text);
  }
  return texts;
}

/** Headings are words: a row with numbers of its own is a lot. */
function canBeHeadings(sheet: SheetReading, row: number, texts: ReadonlyMap<number, string>): boolean {
  if (texts.size < 2) return false;
  const { left, right } = sheet.area ?? { left: 1, right: 0 };
  let numbers = 0;
  for (let column = left; column <= right; column++) if (typeof sheet.at(row, column).value === "number") numbers++;
  return numbers === 0 || numbers * 3 < texts.size;
}

/** Each column's upper and lower words together; a merged group stands over all its columns. A title does so too, and makes the headings worse. */
function underUpper(sheet: SheetReading, row: number, lower: ReadonlyMap<number, string>, merged: readonly { top: number; left: number; bottom: number; right: number }[]): Map<number, string> {
  const together = new Map(lower);
  const { left, right } = sheet.area ?? { left: 1, right: 0 };
  for (let column = left; column <= right; column++) {
    const block = merged.find((area) => area.top <= row - 1 && row - 1 <= area.bottom && area.left <= column && column <= area.right);
    const words = block ? sheet.text(block.top, block.left) : sheet.text(row - 1, column);
    if (words === "") continue;
    // A merged heading over both rows stands in its upper cell.
    const own = lower.get(column);
    together.set(column, own === undefined ? words : `${words} ${own}`);
  }
  return together;
}

/** Headings from the column of the clearest one outwards, as far as they belong together. */
export function columnsOf(sheet: SheetReading, { headings, row }: HeadingRow, rowsBelow: readonly number[]): number[] {
  const columns = [...headings.keys()].sort((a, b) => a - b);
  const blocks: number[][] = [];
  for (const column of columns) {
    const last = blocks.at(-1);
    if (last && column === (last.at(-1) ?? 0) + 1) last.push(column);
    else blocks.push([column]);
  }
  const weight = (block: readonly number[]): number => block.reduce((sum, column) => sum + isHeadingText(headings.get(column) ?? ""), 0);
  const main = blocks.reduce((best, block) => (weight(block) > weight(best) ? block : best), blocks[0] ?? []);
  const filledShare = (block: readonly number[]): number =>
    rowsBelow.length === 0 ? 0 : Math.max(...block.map((column) => rowsBelow.filter((below) => below > row && isFilled(sheet.at(below, column))).length / rowsBelow.length));
  // A box of prices beside the list has cells of its own, in other rows: it is no part of the list.
  return blocks.filter((block) => block === main || (filledShare(block) >= 0.5 && Math.min(...block.map((column) => distance(main, column))) <= 2)).flat();
}

const distance = (block: readonly number[], column: number): number => Math.min(...block.map((one) => Math.abs(one - column)));

