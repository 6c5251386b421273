import { type Month, monthText } from "./month-of";
import { ROWS, fixedCell } from "./month-places";
import { FINE, type Rows, SHARE, type SheetDraft } from "./sheet-draft";

/** Where the figures stand that charts draw, each with its heading in the row above the first. */
export interface ChartRanges {
  readonly rows: Rows;
  readonly month: "A";
  readonly throughput: "B";
  readonly recovery: "C";
  readonly recoveryLow: "D";
  readonly recoveryHigh: "E";
  readonly running: "G";
}

const HEADINGS = ["Throughput (ozt)", "Recovery", "Recovery, low", "Recovery, high", "Unaccounted", "Running", "Expanded uncert.", "Verdict"];

/** The months that have their sheet and this one, each read from its fixed cells. */
export function monthsBlock(draft: SheetDraft, earlier: readonly Month[], own: Month): ChartRanges {
  draft.block("The months so far", ["Month"], HEADINGS);
  const rows: Rows = { first: draft.row, last: draft.row + earlier.length };
  for (const month of [...earlier, own]) {
    const at = (row: number): string => (month === own ? `B${row}` : fixedCell(month, "B", row));
    const [recovery, limit] = [at(ROWS.recovery), at(ROWS.recoveryExpanded)];
    draft.text("A", monthText(month));
    draft.put("B", `=MAX(${at(ROWS.received)},${at(ROWS.shipped)})`, FINE);
    draft.put("C", `=IF(ISNUMBER(${recovery}),${recovery},"")`, SHARE);
    draft.put("D", `=IF(ISNUMBER(${recovery}),${recovery}-${limit},"")`, SHARE);
    draft.put("E", `=IF(ISNUMBER(${recovery}),${recovery}+${limit},"")`, SHARE);
    draft.put("F", `=${at(ROWS.unaccounted)}`, FINE);
    draft.put("G", draft.row === rows.first ? `=F${draft.row}` : `=G${draft.row - 1}+F${draft.row}`, FINE);
    draft.put("H", `=${at(ROWS.expanded)}`, FINE);
    draft.put("I", `=${at(ROWS.verdict)}`, { align: "right" });
    draft.row += 1;
  }
  return { rows, month: "A", throughput: "B", recovery: "C", recoveryLow: "D", recoveryHigh: "E", running: "G" };
}
