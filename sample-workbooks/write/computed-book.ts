import { type Book as Engine, type StoredCell, workbookOf } from "../../src/engine/book";
import { type CellContent, isCellError } from "../../src/engine/outcome";
import { addressOf, areaText, type Spot } from "../../src/workbook/xlsx/address";
import type { Book, Cell, Sheet } from "./book";
import type { Format } from "./formats";
import type { Look } from "./looks";

export interface ValuedCell extends Spot {
  readonly look: Look | null;
  readonly format: Format;
  readonly value: CellContent;
  readonly formula: string | null;
  /** True for a formula and for what spills from one. */
  readonly isComputed: boolean;
  /** The range that a spilling formula fills, its own cell included. */
  readonly fills: string | null;
}

/** Every sheet's cells in reading order, each formula with the value that our own engine computes. */
export function computedBook(book: Book): ReadonlyMap<Sheet, readonly ValuedCell[]> {
  const placed = new Map(book.sheets.map((sheet) => [sheet, placedCells(sheet)]));
  const engine = workbookOf(
    [...placed].map(([{ name }, cells]) => ({ name, cells: cells.map(stored) })),
    Object.entries(book.names).map(([name, range]) => ({ name, range })),
  );
  return new Map([...placed].map(([sheet, cells]) => [sheet, cells.map((cell) => valued(engine, sheet.name, cell))]));
}

function placedCells({ rows }: Sheet): ValuedCell[] {
  return Object.entries(rows)
    .flatMap(([row, cells]) => cells.flatMap((cell, i) => placedCell({ row: Number(row), column: i + 1 }, cell)))
    .sort((a, b) => a.row - b.row || a.column - b.column);
}

function placedCell(at: Spot, cell: Cell): ValuedCell[] {
  if (cell.kind === "spill") return spilledCells(at, cell);
  const empty = { ...at, look: cell.look, format: "general", value: null, formula: null, fills: null, isComputed: false } as const;
  switch (cell.kind) {
    case "blank":
      return cell.look ? [empty] : [];
    case "text":
      return [{ ...empty, value: cell.text }];
    case "number":
      return [{ ...empty, format: cell.format, value: cell.value }];
    case "formula":
      return [{ ...empty, format: cell.format, formula: cell.formula, isComputed: true }];
  }
}

function spilledCells({ row, column }: Spot, { formula, looks }: Extract<Cell, { kind: "spill" }>): ValuedCell[] {
  const fills = areaText({ top: row, left: column, bottom: row + looks.length - 1, right: column + (looks[0]?.length ?? 1) - 1 });
  return looks.flatMap((ofRow, r) =>
    ofRow.map(([look, format = "general"], c) => {
      const holdsFormula = r === 0 && c === 0 ? { formula, fills } : { formula: null, fills: null };
      return { row: row + r, column: column + c, look, format, value: null, isComputed: true, ...holdsFormula };
    }),
  );
}

const stored = (cell: ValuedCell): StoredCell => ({ ...cell, address: addressOf(cell), error: false });

function valued(engine: Engine, sheet: string, cell: ValuedCell): ValuedCell {
  if (!cell.isComputed) return cell;
  const { value, error, message } = engine.read(sheet, addressOf(cell));
  // A sample that shows an error, or leaves a cell of its spill empty, was written wrongly.
  if (error || value === null) throw new Error(`${sheet}!${addressOf(cell)} gives ${value ?? "nothing"} ${message ?? ""}`);
  if (cell.fills) checkSpill(engine, sheet, cell);
  return { ...cell, value };
}

function checkSpill(engine: Engine, sheet: string, { row, column, fills }: ValuedCell): void {
  const address = addressOf({ row, column });
  const outcome = engine.outcome(sheet, address);
  const rows = typeof outcome === "object" && outcome !== null && !isCellError(outcome) ? outcome : [[outcome]];
  const filled = areaText({ top: row, left: column, bottom: row + rows.length - 1, right: column + (rows[0]?.length ?? 1) - 1 });
  if (filled !== fills) throw new Error(`${sheet}!${address} fills ${filled}; its looks are for ${String(fills)}`);
}
