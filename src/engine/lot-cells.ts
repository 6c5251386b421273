import { type CellPosition, type FormulaCell, type Model, type Zone, helpers } from "@odoo/o-spreadsheet";
import type { CellReading } from "./outcome";
import { lotNames } from "../formulas/lot-calls";
import { readCell } from "./read-cell";

export interface SheetCell {
  readonly sheet: string;
  readonly address: string;
  readonly reading: CellReading;
}

/** The cells with a function of ours in them and those that depend on one, sheet by sheet in reading order. */
export function lotCells(model: Model): SheetCell[] {
  const { getters } = model;
  const touched = new Touched();
  let waiting: Formula[] = [];
  for (const sheetId of getters.getSheetIds())
    for (const formula of formulas(model, sheetId)) {
      if (lotNames(formula.text).length > 0) touched.add(formula);
      else waiting.push(formula);
    }
  // A formula may stand before or after what it depends on, so the passes go to and fro until one finds nothing.
  for (let before = -1; before !== waiting.length; ) {
    before = waiting.length;
    waiting = waiting.filter((formula) => !touched.claim(formula)).reverse();
  }
  return touched.found.sort(inReadingOrder(getters.getSheetIds())).map(({ position }) => ({
    sheet: getters.getSheetName(position.sheetId),
    address: helpers.toXC(position.col, position.row),
    reading: readCell(model, position),
  }));
}

interface Area {
  readonly sheetId: string;
  readonly zone: Zone;
}

interface Formula {
  readonly position: CellPosition;
  readonly text: string;
  /** What it reads. */
  readonly reads: readonly Area[];
  /** Where its result stands: its own cell, or its spill. */
  readonly fills: Zone;
}

function formulas({ getters }: Model, sheetId: string): Formula[] {
  return getters
    .getCells(sheetId)
    .filter((cell): cell is FormulaCell => cell.isFormula)
    .map((cell) => {
      const position = getters.getCellPosition(cell.id);
      const { compiledFormula } = cell;
      const named = compiledFormula.getNamedRangesInFormula(getters).map(({ range }) => range);
      return {
        position,
        text: compiledFormula.toFormulaString(getters),
        reads: [...compiledFormula.rangeDependencies, ...named],
        fills: getters.getSpreadZone(position) ?? helpers.positionToZone(position),
      };
    });
}

/** The cells that a function of ours touches, kept by sheet and column so that a range is looked up quickly. */
class Touched {
  readonly found: Formula[] = [];
  readonly #rows = new Map<string, Map<number, Set<number>>>();

  add(formula: Formula): void {
    this.found.push(formula);
    const { fills, position } = formula;
    const columns = this.#rows.get(position.sheetId) ?? new Map<number, Set<number>>();
    this.#rows.set(position.sheetId, columns);
    for (let col = fills.left; col <= fills.right; col++) {
      const rows = columns.get(col) ?? new Set<number>();
      columns.set(col, rows);
      for (let row = fills.top; row <= fills.bottom; row++) rows.add(row);
    }
  }

  /** Adds a formula that reads a touched cell; says whether it did. */
  claim(formula: Formula): boolean {
    const reads = formula.reads.some((area) => this.#reaches(area));
    if (reads) this.add(formula);
    return reads;
  }

  #reaches({ sheetId, zone }: Area): boolean {
    const columns = this.#rows.get(sheetId);
    if (!columns) return false;
    for (const [col, rows] of columns) {
      if (col < zone.left || col > zone.right) continue;
      if (zone.bottom - zone.top < rows.size) {
        for (let row = zone.top; row <= zone.bottom; row++) if (rows.has(row)) return true;
      } else for (const row of rows) if (row >= zone.top && row <= zone.bottom) return true;
    }
    return false;
  }
}

const inReadingOrder =
  (sheetIds: readonly string[]) =>
  ({ position: a }: Formula, { position: b }: Formula): number =>
    sheetIds.indexOf(a.sheetId) - sheetIds.indexOf(b.sheetId) || a.row - b.row || a.col - b.col;
