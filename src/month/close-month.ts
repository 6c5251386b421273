import type { SheetReading } from "../lots/sheet-reading";
import type { LotPlace } from "../lots/where";
import type { NewSheet } from "../workbook/port";
import { balanceBlock } from "./balance-block";
import { clientBlock, clientHeadings, clientsOf } from "./client-block";
import type { LotMetal } from "./lot-metal";
import { lotsBlock } from "./lots-block";
import { measuredIn } from "./measured";
import { type MonthBasis, cameInThisMonth, lotInProcess } from "./month-basis";
import type { MonthInput } from "./month-input";
import { missingColumns } from "./month-lots";
import { type Month, isBefore, monthText } from "./month-of";
import { ROWS, madeMonths, monthSheetName } from "./month-places";
import { monthCharts } from "./month-charts";
import { monthsBlock } from "./months-block";
import { openingOf } from "./opening";
import { processBlock } from "./process-block";
import { SheetDraft } from "./sheet-draft";
import { stockBlock } from "./stock-block";
import { stockTerms, whatOf } from "./stock-terms";

export interface ClosedMonth {
  readonly change: NewSheet;
}

interface Book {
  readonly sheets: readonly SheetReading[];
  readonly place: LotPlace;
}

/** Why a month cannot be closed with these numbers, each with what to do; none where it can. */
export function refusals({ sheets, place }: Book, input: MonthInput, basis: MonthBasis): readonly string[] {
  const columns = missingColumns(place);
  const opening = openingOf(input, sheets);
  const lotOf = (number: string): LotMetal | string => lotInProcess(basis, number);
  const lines = [...input.counted, ...input.shipped].flatMap((line) => {
    const terms = stockTerms(line, 1, measuredIn(input), lotOf);
    return typeof terms === "string" ? [`${whatOf(line) || "A line without a name"}: ${terms}`] : [];
  });
  const asCame = input.counted.flatMap((line) => (line.kind === "lot" ? [line.lot] : []));
  const twice = [...new Set(asCame.filter((lot, i) => asCame.indexOf(lot) !== i))].map((lot) => `Lot ${lot} is counted twice: take one of its lines out`);
  return [...(columns === null ? [] : [columns]), ...takenSheet(sheets, input.month), ...(typeof opening === "string" ? [opening] : []), ...lines, ...twice];
}

/** That the month has its sheet already, and what to do then. */
export function takenSheet(sheets: readonly SheetReading[], month: Month): readonly string[] {
  const name = monthSheetName(month);
  const isTaken = sheets.some(({ info }) => info.name.toLowerCase() === name.toLowerCase());
  return isTaken ? [`${monthText(month)} is closed already, on sheet ‘${name}’: change what was entered there, since its cells are live, or delete that sheet and close the month again`] : [];
}

/** The month's sheet, to be written into the workbook. Throws where there is a refusal. */
export function closedMonth({ sheets, place }: Book, input: MonthInput, basis: MonthBasis): ClosedMonth {
  const opening = openingOf(input, sheets);
  if (typeof opening === "string") throw new Error(opening);
  const lotOf = (number: string): LotMetal | string => lotInProcess(basis, number);
  const measured = measuredIn(input);
  const name = monthSheetName(input.month);
  const draft = new SheetDraft();
  draft.text("A", `Metal balance of ${monthText(input.month)}`, "title");
  draft.row = 2;
  draft.text("A", `Fine troy ounces. The lots are those of sheet ‘${place.list.sheet}’. Cells with a ground of their own were entered; all others are computed from them and from the list.`, "note");
  if (basis.remarks.length > 0) draft.text("A", notCounted(basis.remarks), "caution", 3);

  draft.row = Math.max(...Object.values(ROWS)) + 1;
  const earlier = madeMonths(sheets).map(({ month }) => month).filter((month) => isBefore(month, input.month));
  const charts = monthsBlock(draft, earlier, input.month);
  const countedRows = stockBlock(draft, "Counted at the end of the month", input.counted, measured, place, lotOf);
  const shippedRows = stockBlock(draft, "Shipped in the month", input.shipped, measured, place, lotOf);
  const clients = clientsOf(basis.received);
  const clientRows = clientHeadings(draft, clients);
  processBlock(draft, place, input.month, basis.inProcess);
  const printed = draft.row - 1;
  const lots = lotsBlock(draft, place, basis.received);
  clientBlock(draft, clientRows, clients, lots);
  const stillAsCame = input.counted.flatMap((line, i) => (cameInThisMonth(line, basis) ? [countedRows.first + i] : []));
  balanceBlock(draft, input, opening, { list: place.list.sheet, lots, countedRows, shippedRows, stillAsCame });
  return {
    change: { newSheet: name, columnWidths: WIDTHS, cells: draft.cells, print: { area: `A1:J${printed}`, orientation: "landscape", fitsOnePage: true }, charts: monthCharts(charts) },
  };
}

const WIDTHS = [36, 21, 21, 21, 21, 21, 21, 21, 23, 21];

function notCounted(remarks: readonly string[]): string {
  const rows = remarks.flatMap((remark) => /^Row (\d+)/.exec(remark)?.[1] ?? []);
  const named = rows.slice(0, 12).join(", ");
  return `Not counted, for want of a date, a weight or a fineness: ${rows.length === 1 ? "row" : "rows"} ${named}${rows.length > 12 ? " and more" : ""} of the list`;
}
