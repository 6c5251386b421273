import { dayNumber } from "../lots/calendar";
import { matchOf } from "../lots/list";
import type { LotPlace } from "../lots/where";
import type { LotMetal } from "./lot-metal";
import { reference } from "./lots-block";
import { dayOfLot } from "./month-lots";
import { type Month, firstDay, following } from "./month-of";
import { DATE, FINE, type SheetDraft, rangeOf } from "./sheet-draft";

/** Lots that had come in by the month's end and have no outturn, with the days that they have been there. */
export function processBlock(draft: SheetDraft, place: LotPlace, month: Month, inProcess: readonly LotMetal[]): void {
  draft.block(
    "Lots still in process",
    ["Lot", "Date", "Client"],
    ["Fine in (ozt)", "Days"],
    "Received by the month's end, and without an outturn in the list. Their metal is in the closing only as far as it was counted.",
  );
  const end = dayNumber(firstDay(following(month))) - 1;
  if (inProcess.length === 0) {
    draft.text("A", matchOf(place.matches, "outturn") ? "none" : "The list has no column for the outturn, so that none can be told");
    draft.row += 1;
    return;
  }
  const rows = { first: draft.row, last: draft.row + inProcess.length - 1 };
  for (const { lot, fine } of inProcess) {
    draft.put("A", reference(place, lot, "lot", ""));
    draft.put("B", reference(place, lot, "date", ""), DATE);
    draft.put("C", reference(place, lot, "client", ""));
    draft.put("D", `=${fine.text}`, FINE);
    draft.put("E", end - Math.floor(dayOfLot(lot) ?? end));
    draft.row += 1;
  }
  draft.text("A", "All", "total");
  draft.put("D", `=SUM(${rangeOf("D", rows)})`, { ...FINE, look: "total" });
  draft.row += 1;
}
