import type { LotPlace } from "../lots/where";
import type { ListedLot } from "../lots/listed-lot";
import type { FieldId } from "../lots/fields";
import type { CellContent } from "../workbook/port";
import type { LotMetal } from "./lot-metal";
import { onSheet } from "./month-places";
import { DATE, FINE, MONEY, type Rows, type SheetDraft, UNCERTAINTY, UNCERTAINTY_HEADING, rangeOf } from "./sheet-draft";

export interface LotsBlock {
  readonly count: number;
  /** In B their dates, C clients, D fine in, E its uncertainty, F fine out, G its uncertainty, H payout. */
  readonly rows: Rows;
  /** Their sums; in I the fine weight in of the lots finished, in J its uncertainty. */
  readonly totals: number;
}

export const NO_CLIENT = "no client";

/** The month's lots, each cell a reference into the user's own list. */
export function lotsBlock(draft: SheetDraft, place: LotPlace, received: readonly LotMetal[]): LotsBlock {
  draft.block(
    "Lots of the month",
    ["Lot", "Date", "Client"],
    ["Fine in (ozt)", UNCERTAINTY_HEADING, "Fine out (ozt)", UNCERTAINTY_HEADING, "Payout", "In, of finished", UNCERTAINTY_HEADING],
    "Each cell reads the list: sort the list and other lots stand here.",
  );
  const totals = draft.row;
  const rows: Rows = { first: totals + 1, last: totals + Math.max(received.length, 1) };
  const of = (column: string): string => rangeOf(column, rows);
  draft.text("A", "All", "total");
  draft.put("D", `=SUM(${of("D")})`, { ...FINE, look: "total" });
  draft.put("E", `=SQRT(SUMPRODUCT(${of("E")},${of("E")}))`, { ...UNCERTAINTY, look: "total" });
  draft.put("F", `=SUM(${of("F")})`, { ...FINE, look: "total" });
  draft.put("G", `=SQRT(SUMPRODUCT(${of("G")},${of("G")}))`, { ...UNCERTAINTY, look: "total" });
  draft.put("H", `=SUM(${of("H")})`, { ...MONEY, look: "total" });
  draft.put("I", `=SUMPRODUCT(--(${of("F")}>0),${of("D")})`, { ...FINE, look: "total" });
  draft.put("J", `=SQRT(SUMPRODUCT(--(${of("F")}>0),${of("E")},${of("E")}))`, { ...UNCERTAINTY, look: "total" });
  draft.row = rows.first;
  if (received.length === 0) {
    draft.text("A", "none");
    for (const column of "DEFGH") draft.put(column, 0);
    draft.row += 1;
  }
  for (const { lot, fine, uncertainty, out } of received) {
    draft.put("A", reference(place, lot, "lot", ""));
    draft.put("B", reference(place, lot, "date", ""), DATE);
    draft.put("C", reference(place, lot, "client", NO_CLIENT));
    draft.put("D", `=${fine.text}`, FINE);
    draft.put("E", `=${uncertainty.text}`, UNCERTAINTY);
    // A lot that is not finished yet counts as nothing out, and is counted once the list has its outturn.
    draft.put("F", out ? `=IF(SUM(${out.from.text})>0,${out.fine.text},0)` : 0, FINE);
    draft.put("G", out ? `=IF(SUM(${out.from.text})>0,${out.uncertainty.text},0)` : 0, UNCERTAINTY);
    // Of a cell that holds a text or nothing the sum is 0.
    const payout = lot.cell("payout");
    draft.put("H", payout ? `=SUM(${onSheet(place.list.sheet, payout.address)})` : 0, MONEY);
    draft.row += 1;
  }
  return { count: received.length, rows, totals };
}

/** A cell of the list; what stands for one that is empty. */
export function reference(place: LotPlace, lot: ListedLot, field: FieldId, otherwise: string): CellContent {
  const at = lot.cell(field);
  if (!at) return otherwise === "" ? null : otherwise;
  const text = onSheet(place.list.sheet, at.address);
  return lot.value(field) === null ? `=IF(${text}="","${otherwise}",${text})` : `=${text}`;
}
