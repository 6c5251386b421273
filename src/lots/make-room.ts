import { find } from "../catalogue/catalogue";
import { tokens } from "../formulas/tokens";
import { overlaps, readCellRange } from "../workbook/cell-range";
import type { CellReading, CellWrite, NamedPlace } from "../workbook/port";
import { type Area, addressOf, columnName, readArea } from "../workbook/xlsx/address";
import type { LotList } from "./list";
import { isTotal } from "./list-rows";
import { movedFormula } from "./moved-formula";
import { SheetReading, isFilled } from "./sheet-reading";

/** The rows right below the last lot moved down by one, with every formula that names their cells. */
export interface MadeRoom {
  /** The sheet and the list as they are then. */
  readonly sheet: SheetReading;
  readonly list: LotList;
  /** The rows that move. */
  readonly from: number;
  readonly to: number;
  /** The cells of the moved rows in their new place, the lowest first, so that each can look like the one above it. */
  readonly moved: readonly CellWrite[];
  /** Formulas elsewhere that follow the moved cells. */
  readonly following: readonly CellWrite[];
  /** The cells of the row that is free now; what the lot does not fill is emptied. */
  readonly freed: readonly CellWrite[];
}

/** A total with its remarks is no taller; what is taller is another list. */
const MOST_ROWS = 8;

/**
 * Moves a total that stands right below the last lot down by one row, as inserting a row would. Null where a row cannot be
 * moved cell by cell: the user is then told to insert one.
 */
export function makeRoom(sheets: readonly SheetReading[], sheet: SheetReading, list: LotList, names: readonly NamedPlace[]): MadeRoom | null {
  const from = list.lastRow + 1;
  const numbers = list.columns.map(({ number }) => number);
  if (list.table !== null || list.rows.length === 0 || !isTotal(sheet, numbers, from)) return null;
  const [left = 0, right = 0] = [Math.min(...numbers), Math.max(...numbers)];
  let to = from;
  while (to - from < MOST_ROWS && isAnyFilled(sheet, to + 1, left, right)) to++;
  const block: Area = { top: from, bottom: to + 1, left, right };
  if (to - from >= MOST_ROWS || isHeldFast(sheets, sheet, block, names)) return null;

  const lots = { sheet: sheet.info.name, block: { ...block, bottom: to }, lastLot: list.lastRow };
  const contentOf = ({ value, formula }: CellReading, on: string, isMoved: boolean): CellWrite["content"] => (formula === null ? value : movedFormula(formula, on, lots, isMoved));
  const moved: CellWrite[] = [];
  const grid = new Map<string, CellReading>();
  for (let row = to; row >= from; row--)
    for (let column = left; column <= right; column++) {
      const cell = sheet.at(row, column);
      const content = contentOf(cell, sheet.info.name, true);
      moved.push({ sheet: sheet.info.name, cell: addressOf({ row: row + 1, column }), content, ...(cell.formula === null && typeof content === "string" ? { asText: true } : {}), like: addressOf({ row, column }) });
      grid.set(addressOf({ row: row + 1, column }), { ...cell, formula: cell.formula === null ? null : String(content) });
    }
  const freed = [];
  for (let column = left; column <= right; column++) {
    freed.push({ sheet: sheet.info.name, cell: addressOf({ row: from, column }), content: null, like: addressOf({ row: list.lastRow, column }) });
    grid.set(addressOf({ row: from, column }), { value: null, formula: null, error: false });
  }
  const following = followers(sheets, sheet, block, lots);
  if (following === null) return null;
  return { sheet: changed(sheet, grid), list: { ...list, totalRow: list.totalRow === null ? null : list.totalRow + 1 }, from, to, moved, following, freed };
}

function isAnyFilled(sheet: SheetReading, row: number, left: number, right: number): boolean {
  for (let column = left; column <= right; column++) if (isFilled(sheet.at(row, column))) return true;
  return false;
}

/** What the moving of single cells would tear apart or lose. */
function isHeldFast(sheets: readonly SheetReading[], sheet: SheetReading, block: Area, names: readonly NamedPlace[]): boolean {
  const { info, area } = sheet;
  const touches = (range: string): boolean => {
    const other = readArea(range);
    return other !== null && overlaps(other, block);
  };
  if (info.merged.some(touches) || info.tables.some(({ range }) => touches(range))) return true;
  if (names.some(({ place }) => place.sheet.toLowerCase() === info.name.toLowerCase() && touches(place.range) && (readArea(place.range)?.bottom ?? 0) <= block.bottom)) return true;
  for (let row = block.top; row < block.bottom; row++)
    for (let column = area?.left ?? 1; column <= (area?.right ?? 0); column++) {
      const isBeside = column < block.left || column > block.right;
      const { formula } = sheet.at(row, column);
      if ((isBeside && isFilled(sheet.at(row, column))) || (formula !== null && spills(formula))) return true;
    }
  return sheets.some(({ rows }) => rows.some((row) => row.some(({ formula }) => formula !== null && /\b(?:INDIRECT|OFFSET)\s*\(/i.test(formula))));
}

const spills = (formula: string): boolean => tokens(formula).some(({ kind, text }) => kind === "function" && find(text)?.spills === true);

/** Formulas outside the moved rows that name cells in them; null where one cannot follow. */
function followers(sheets: readonly SheetReading[], sheet: SheetReading, block: Area, lots: Parameters<typeof movedFormula>[2]): CellWrite[] | null {
  const found: CellWrite[] = [];
  for (const other of sheets) {
    const { area, info } = other;
    if (!area) continue;
    for (const [r, row] of other.rows.entries())
      for (const [c, { formula }] of row.entries()) {
        const spot = { row: area.top + r, column: area.left + c };
        if (formula === null || (other === sheet && spot.row >= block.top && spot.row < block.bottom && spot.column >= block.left && spot.column <= block.right)) continue;
        if (namesUnmovable(formula, other === sheet, lots)) return null;
        const content = movedFormula(formula, info.name, lots, false);
        if (content === formula) continue;
        if (info.isProtected || spills(formula)) return null;
        found.push({ sheet: info.name, cell: addressOf(spot), content });
      }
  }
  return found;
}

/** Whole rows, several sheets at once, or a range that lies partly beside the moved cells. */
function namesUnmovable(formula: string, isHere: boolean, { sheet, block }: Parameters<typeof movedFormula>[2]): boolean {
  return tokens(formula).some(({ kind, text }) => {
    if (kind !== "reference") return false;
    const [, named, , cells = text] = /^((.*)!)?([^!]*)$/.exec(text) ?? [];
    if (named?.includes(":")) return true;
    const range = readCellRange(text);
    const isOnIt = range === null ? isHere || (named ?? "").toLowerCase().includes(sheet.toLowerCase()) : range.sheet === null ? isHere : range.sheet.toLowerCase() === sheet.toLowerCase();
    if (!isOnIt) return false;
    if (range === null) return /^\$?\d+:\$?\d+$/.test(cells);
    const { area } = range;
    const isBeside = area.left < block.left || area.right > block.right;
    return isBeside && overlaps(area, block);
  });
}

function changed(sheet: SheetReading, cells: ReadonlyMap<string, CellReading>): SheetReading {
  const { area, info } = sheet;
  if (!area) return sheet;
  const bottom = Math.max(area.bottom, ...[...cells.keys()].map((cell) => readArea(cell)?.bottom ?? 0));
  const rows: CellReading[][] = [];
  for (let row = area.top; row <= bottom; row++) {
    const line: CellReading[] = [];
    for (let column = area.left; column <= area.right; column++) line.push(cells.get(addressOf({ row, column })) ?? sheet.at(row, column));
    rows.push(line);
  }
  return new SheetReading({ ...info, used: `${columnName(area.left)}${area.top}:${columnName(area.right)}${bottom}` }, rows);
}
