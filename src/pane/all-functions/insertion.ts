import { type Plan, type Undo, apply, plan } from "../../workbook/plan";
import type { BookPort, CellReading } from "../../workbook/port";
import { type Area, LAST_COLUMN, LAST_ROW, addressOf, areaText, readAddress } from "../../workbook/xlsx/address";
import { type CellRange, overlaps, writtenRange } from "../../workbook/cell-range";

/** A formula on its way into a cell. */
export interface Insertion {
  readonly sheet: string;
  readonly cell: string;
  /** In the port's notation. */
  readonly formula: string;
  readonly rows: number;
  readonly columns: number;
  /** The cells that it reads. */
  readonly reads: readonly CellRange[];
}

/** An insertion is refused with a sentence, or planned. */
export type Review = { readonly refusal: string } | { readonly plan: Plan };

export async function review(port: BookPort, insertion: Insertion, spillOf: (formula: string) => Promise<Size>): Promise<Review> {
  const { sheet, cell, formula, rows, columns } = insertion;
  const area = areaOf(insertion);
  if (!area) return { refusal: `${needs(insertion)}, and the sheet ends before: choose another cell` };
  const circle = insertion.reads.find((read) => (read.sheet ?? sheet) === sheet && overlaps(read.area, area));
  if (circle) return { refusal: `The formula reads ${writtenRange(circle, sheet)} and cannot stand in it: choose another cell` };
  const planned = await plan(port, [{ sheet, cell, content: formula }]);
  const before = planned.cells[0]?.before.formula ?? null;
  if (before === formula) return { refusal: `${cell} holds this formula already` };
  if (rows * columns > 1) {
    const own = before === null ? { rows: 1, columns: 1 } : await spillOf(before);
    const filled = filledCells(area, await port.read({ sheet, range: areaText(area) }), own);
    if (filled.length > 0) return { refusal: `${needs(insertion)}, but ${listed(filled)}: empty what is in the way or choose another cell` };
  }
  return { plan: planned };
}

export interface Size {
  readonly rows: number;
  readonly columns: number;
}

/** The cells that a formula fills from the one it stands in; null where the sheet ends before. */
export function areaOf({ cell, rows, columns }: Pick<Insertion, "cell" | "rows" | "columns">): Area | null {
  const spot = readAddress(cell);
  if (!spot) throw new Error(`Cannot find the cell ${cell}`);
  const area = { top: spot.row, left: spot.column, bottom: spot.row + rows - 1, right: spot.column + columns - 1 };
  return area.bottom <= LAST_ROW && area.right <= LAST_COLUMN ? area : null;
}

export const sizeText = ({ rows, columns }: Size): string =>
  `${rows} ${rows === 1 ? "row" : "rows"} × ${columns} ${columns === 1 ? "column" : "columns"}`;

const needs = (insertion: Insertion): string => {
  const area = areaOf(insertion);
  return `The result takes ${sizeText(insertion)}${area ? `, ${areaText(area)}` : ""}`;
};

/** Filled cells in the way. The first is the formula's own, and so are those that the formula in it fills now. */
const filledCells = (area: Area, cells: readonly (readonly CellReading[])[], own: Size): readonly string[] =>
  cells.flatMap((row, r) =>
    row.flatMap((cell, c) => {
      const isFilled = cell.formula !== null || (cell.value !== null && cell.value !== "");
      return isFilled && !(r < own.rows && c < own.columns) ? [addressOf({ row: area.top + r, column: area.left + c })] : [];
    }),
  );

const LISTED = 3;

function listed(cells: readonly string[]): string {
  const more = cells.length - LISTED;
  if (cells.length === 1) return `${cells[0]} is filled`;
  return `${cells.slice(0, LISTED).join(", ")}${more > 0 ? ` and ${more} more` : ""} are filled`;
}

/** Writes what was planned. Its undoing is refused when the cell has changed since. */
export const insert = (port: BookPort, planned: Plan, overwrite: boolean): Promise<Undo> => apply(port, planned, () => overwrite);
