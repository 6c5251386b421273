import type { AddedCell, AddedSheet } from "../workbook/file";
import type { SharedCell } from "./shared-cell";
import { placeOf } from "./shared-cell";

/** The sheet of a shared copy that tells what every changed cell was; putting back reads it again. */
export const WORKINGS_TITLE = "Workings of Lotwright";
const HEADINGS = ["Where", "Heading", "What it was", "What stands there now", "Its value", "The working", "Constants and their sources"] as const;
export const HEADING_ROW = 5;
export const COLUMNS = { where: "A", was: "C", now: "D", value: "E" } as const;
export const FILLED_BY = "Filled by ";

export function workingsSheet(name: string, cells: readonly SharedCell[], computedBy: string): AddedSheet {
  const withValues = cells.filter(({ now }) => now === null).length;
  return {
    newSheet: name,
    columnWidths: [16, 20, 34, 44, 14, 56, 44],
    cells: [
      { cell: "A1", value: WORKINGS_TITLE, look: "title" },
      { cell: "A2", value: `${cells.length} cells of this copy held formulas of an add-in. ${cells.length - withValues} now hold ordinary formulas, which any spreadsheet computes, and ${withValues} their values.`, look: "note" },
      { cell: "A3", value: `Computed by ${computedBy}. To turn them back into LOT formulas: lotwright unshare, or Put back in the add-in's pane. Columns A, C, D and E of this sheet are needed for that.`, look: "note" },
      ...HEADINGS.map((heading, i): AddedCell => ({ cell: `${letter(i)}${HEADING_ROW}`, value: heading, look: "heading" })),
      ...cells.flatMap((cell, i) => rowOf(cell, HEADING_ROW + 1 + i)),
    ],
  };
}

/** The row in which a cell stands, by its place in the list. */
export const rowOfCell = (index: number): number => HEADING_ROW + 1 + index;

const letter = (index: number): string => String.fromCharCode(65 + index);

function rowOf(shared: SharedCell, row: number): AddedCell[] {
  const { heading, was, now, value, error, numberFormat, working, constants } = shared;
  const text = (column: number, content: string): AddedCell[] => (content === "" ? [] : [{ cell: `${letter(column)}${row}`, value: content, wraps: true, align: "left" }]);
  const held = { value, ...(error ? { error } : {}), ...(numberFormat === undefined ? {} : { numberFormat }) };
  return [
    ...text(0, placeOf(shared)),
    ...text(1, heading ?? ""),
    ...text(2, typeof was === "string" ? was : `${FILLED_BY}${was.filledBy}`),
    ...(now === null ? [{ cell: `D${row}`, ...held, align: "left" } satisfies AddedCell] : text(3, now)),
    // A formula, so that it follows its cell when rows are inserted.
    { cell: `E${row}`, formula: `=${placeOf(shared)}`, ...held },
    ...text(5, working),
    ...text(6, constants),
  ];
}
