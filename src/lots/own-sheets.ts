import type { SheetReading } from "./sheet-reading";

/** Sheets that Lotwright itself makes from the lots: none of them is a place where lots are listed. */
export const isOwnSheet = (sheet: SheetReading): boolean =>
  sheet.text(1, 5) === "Quote" || sheet.text(1, 5) === "Statement" || /^(?:Metal balance of \d{4}-\d{2}|Workings of Lotwright)$/.test(sheet.text(1, 1));
