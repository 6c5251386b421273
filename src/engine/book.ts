import { type Model, type SheetData, helpers } from "@odoo/o-spreadsheet";
import { addresses } from "./addresses";
import { typed } from "./cell-text";
import { type SheetCell, lotCells } from "./lot-cells";
import { modelOf } from "./model";
import type { CellContent, CellReading, Outcome, OutcomeCell } from "./outcome";
import { outcomeOf } from "./outcome-of";
import { readCell } from "./read-cell";

/** A cell as a file holds it. */
export interface StoredCell {
  readonly address: string;
  /** With its equals sign and with LOT.NAME(…), or null. */
  readonly formula: string | null;
  /** The range that an array formula fills from here, or null. */
  readonly fills: string | null;
  readonly value: CellContent;
  /** True where the value is an error's code. */
  readonly error: boolean;
}

export interface StoredSheet {
  readonly name: string;
  readonly cells: Iterable<StoredCell>;
}

/** A name for a range, the range with its sheet: `Prices!$B$2:$B$9`. */
export interface RangeName {
  readonly name: string;
  readonly range: string;
}

/** A workbook that computes, without a page: its cells with our functions in them. */
export class Book {
  constructor(private readonly model: Model) {}

  read(sheet: string, address: string): CellReading {
    return readCell(this.model, { sheetId: this.#sheetId(sheet), ...helpers.toCartesian(address) });
  }

  /** What a cell gives: its value, or the rows that spill from it. */
  outcome(sheet: string, address: string): Outcome {
    const { getters } = this.model;
    const position = { sheetId: this.#sheetId(sheet), ...helpers.toCartesian(address) };
    const zone = getters.getSpreadZone(position) ?? helpers.positionToZone(position);
    const cell = (col: number, row: number): OutcomeCell => {
      const { value, error, message } = readCell(this.model, { sheetId: position.sheetId, col, row });
      return error ? { error: String(value), message: message ?? "" } : value;
    };
    if (zone.top === zone.bottom && zone.left === zone.right) return cell(position.col, position.row);
    return range(zone.top, zone.bottom).map((row) => range(zone.left, zone.right).map((col) => cell(col, row)));
  }

  /** What a formula would give on a sheet, the first unless one is named. */
  evaluate(formula: string, sheet?: string): Outcome {
    const { getters } = this.model;
    const sheetId = sheet === undefined ? (getters.getSheetIds()[0] ?? "") : this.#sheetId(sheet);
    return outcomeOf(this.model, sheetId, formula.startsWith("=") ? formula : `=${formula}`);
  }

  /** The cells with a function of ours in them and those that depend on one, sheet by sheet in reading order. */
  lotCells(): SheetCell[] {
    return lotCells(this.model);
  }

  #sheetId(name: string): string {
    const id = this.model.getters.getSheetIdByName(name);
    if (id === undefined) throw new Error(`Cannot find the sheet "${name}" in this workbook`);
    return id;
  }
}

export function workbookOf(sheets: readonly StoredSheet[], names: readonly RangeName[] = []): Book {
  return new Book(
    modelOf({
      sheets: sheets.map(({ name, cells }, i) => sheetData(`sheet${i + 1}`, name, contents(cells))),
      namedRanges: Object.fromEntries(names.map(({ name, range }) => [name, range])),
    }),
  );
}

export function sheetData(id: string, name: string, cells: Readonly<Record<string, string>>): SheetData {
  const spots = Object.keys(cells).map((address) => helpers.toCartesian(address));
  const colNumber = spots.reduce((most, { col }) => Math.max(most, col + 1), 26);
  const rowNumber = spots.reduce((most, { row }) => Math.max(most, row + 1), 100);
  if (colNumber * rowNumber > LARGEST_SHEET)
    throw new Error(`Cannot compute the sheet ${name}: it reaches to ${helpers.toXC(colNumber - 1, rowNumber - 1)}: delete what stands far out in its last rows and columns`);
  return { ...helpers.createEmptySheet(id, name), cells: { ...cells }, colNumber, rowNumber };
}

/** Places on a sheet, filled or not; the grid keeps something for each. All rows of 47 columns. */
const LARGEST_SHEET = 50_000_000;

const range = (first: number, last: number): number[] => Array.from({ length: last - first + 1 }, (_, i) => first + i);

/** What to type into each cell; the cells that an array formula fills from another one are left to it. */
export function contents(cells: Iterable<StoredCell>): Record<string, string> {
  const texts = new Map<string, string>();
  const filled: { readonly from: string; readonly range: string }[] = [];
  for (const { address, formula, fills, value, error } of cells) {
    const text = formula ?? (error ? String(value) : typed(value));
    if (text !== "") texts.set(address, text);
    if (fills) filled.push({ from: address, range: fills });
  }
  for (const { from, range } of filled) for (const follower of followers(range, texts)) if (follower !== from) texts.delete(follower);
  return Object.fromEntries(texts);
}

/** The filled cells in a range, found from whichever of the two is smaller: a range may be whole columns. */
function followers(range: string, texts: ReadonlyMap<string, string>): readonly string[] {
  const zone = helpers.toZone(range);
  const cells = (zone.bottom - zone.top + 1) * (zone.right - zone.left + 1);
  if (cells <= texts.size) return addresses(range);
  return [...texts.keys()].filter((address) => {
    const { col, row } = helpers.toCartesian(address);
    return helpers.isInside(col, row, zone);
  });
}
