import { tokens } from "../formulas/tokens";
import { readCellRange } from "../workbook/cell-range";
import type { Area } from "../workbook/xlsx/address";

/** Rows that move down by one, on which sheet, and the last lot above them. */
export interface MovedRows {
  readonly sheet: string;
  readonly block: Area;
  readonly lastLot: number;
}

/** A formula when these rows have moved: it names their cells where they are then. One of the moved total's own takes the new row in. */
export function movedFormula(formula: string, on: string, { sheet, block, lastLot }: MovedRows, isOfTotal: boolean): string {
  return tokens(formula)
    .map(({ kind, text }) => {
      if (kind !== "reference") return text;
      const range = readCellRange(text);
      if (!range || (range.sheet ?? on).toLowerCase() !== sheet.toLowerCase()) return text;
      const { top, bottom, left, right } = range.area;
      if (left < block.left || right > block.right) return text;
      const isIn = (row: number): boolean => row >= block.top && row <= block.bottom;
      const takesIn = isOfTotal && top < bottom && bottom === lastLot;
      return rowsOf(text, isIn(top) ? top + 1 : top, isIn(bottom) || takesIn ? bottom + 1 : bottom);
    })
    .join("");
}

/** The same reference with other rows, its dollar signs and its sheet kept. */
function rowsOf(reference: string, top: number, bottom: number): string {
  const at = reference.lastIndexOf("!") + 1;
  const [first = "", last] = reference.slice(at).split(":");
  const put = (cell: string, row: number): string => cell.replace(/\d+$/, String(row));
  return reference.slice(0, at) + put(first, top) + (last === undefined ? "" : `:${put(last, bottom)}`);
}
