import type { ListedLot } from "../../lots/listed-lot";
import type { SheetReading } from "../../lots/sheet-reading";

export interface Quoted {
  readonly payout: number;
  /** Quote Q-2026-003 */
  readonly quote: string;
}

/** What the latest quote of a lot says at the likely fineness and at the price as quoted; null where there is none. */
export function quotedOf(lot: ListedLot, sheets: readonly SheetReading[]): Quoted | null {
  const number = String(lot.value("lot") ?? "");
  if (number === "") return null;
  const quotes = sheets.filter((sheet) => /^Quote /i.test(sheet.info.name) && valueBeside(sheet, "Lot") === number);
  const sheet = quotes.at(-1);
  const payout = sheet && likelyPayout(sheet);
  return sheet && payout !== null && payout !== undefined ? { payout, quote: sheet.info.name } : null;
}

function valueBeside(sheet: SheetReading, label: string): string | null {
  const row = rowOf(sheet, (text) => text === label);
  return row === null ? null : String(sheet.at(row, 2).value ?? "");
}

/** Under the likely fineness, in the row of the payout. */
function likelyPayout(sheet: SheetReading): number | null {
  const row = rowOf(sheet, (text) => text === "Payout" || text === "What is left, returned as metal");
  const value = row === null ? null : sheet.at(row, 4).value;
  return typeof value === "number" ? value : null;
}

function rowOf(sheet: SheetReading, isIt: (text: string) => boolean): number | null {
  for (let row = sheet.area?.top ?? 1; row <= (sheet.area?.bottom ?? 0); row++) if (isIt(sheet.text(row, 1))) return row;
  return null;
}
