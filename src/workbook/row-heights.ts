import type { NewSheet, SheetCell } from "./port";
import { readAddress, readArea } from "./xlsx/address";

interface Held extends Pick<SheetCell, "cell" | "wraps" | "merge" | "look"> {
  readonly text: string;
}

const LINE = 15;
/** Of the larger letters of a title. */
const TITLE_LINE = 24;
/** The highest that a spreadsheet lets a row be. */
const HIGHEST = 409;
const USUAL_WIDTH = 8;

/** Those of a sheet that is still to be written: what its formulas give is not known yet. */
export const plannedHeights = ({ cells, columnWidths = [] }: NewSheet): ReadonlyMap<number, number> =>
  rowHeights(
    cells.filter(({ content, asText }) => asText || !String(content ?? "").startsWith("=")).map((cell) => ({ ...cell, text: String(cell.content ?? "") })),
    columnWidths,
  );

/** How high rows must be for titles and for the texts that wrap in them, in points; rows of one line are left out. */
export function rowHeights(cells: readonly Held[], columnWidths: readonly number[]): ReadonlyMap<number, number> {
  const heights = new Map<number, number>();
  for (const { cell, text, wraps, merge, look } of cells) {
    const spot = readAddress(cell);
    if (spot && look === "title") heights.set(spot.row, Math.max(TITLE_LINE, heights.get(spot.row) ?? 0));
    if (!wraps || !spot) continue;
    const area = merge === undefined ? null : readArea(merge);
    const [left, right] = area ? [area.left, area.right] : [spot.column, spot.column];
    let width = 0;
    for (let column = left; column <= right; column++) width += columnWidths[column - 1] ?? USUAL_WIDTH;
    const lines = text.split("\n").reduce((sum, line) => sum + Math.max(1, Math.ceil(line.length / Math.max(1, width))), 0);
    const rows = area ? area.bottom - area.top + 1 : 1;
    const height = Math.min(HIGHEST, Math.ceil(lines / rows) * LINE);
    if (height > LINE) for (let row = spot.row; row < spot.row + rows; row++) heights.set(row, Math.max(height, heights.get(row) ?? 0));
  }
  return heights;
}
