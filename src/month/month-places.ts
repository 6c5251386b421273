import type { SheetReading } from "../lots/sheet-reading";
import { addressOn } from "../workbook/cell-range";
import { type Area, readArea } from "../workbook/xlsx/address";
import { type Month, isBefore, monthText, readMonth } from "./month-of";

/** The rows of a month's sheet by which the months after it read it: they never change. Column B holds the figure, C its standard uncertainty. */
export const ROWS = {
  opening: 6,
  received: 7,
  shipped: 8,
  closing: 9,
  unaccounted: 10,
  expanded: 11,
  share: 12,
  verdict: 13,
  meaning: 14,
  lookFirst: 15,
  recovery: 16,
  recoveryExpanded: 17,
  bias: 18,
  scale: 19,
  assay: 20,
  weighInBias: 21,
  receivedTaken: 22,
  closingTaken: 23,
} as const;

const NAME = "Month ";

export const monthSheetName = (month: Month): string => `${NAME}${monthText(month)}`;

export interface MadeMonth {
  readonly month: Month;
  readonly sheet: SheetReading;
}

/** The months that have their sheet, the earliest first. */
export function madeMonths(sheets: readonly SheetReading[]): readonly MadeMonth[] {
  return sheets
    .flatMap((sheet) => {
      const month = sheet.info.name.startsWith(NAME) ? readMonth(sheet.info.name.slice(NAME.length)) : null;
      return month && isOurs(sheet) ? [{ month, sheet }] : [];
    })
    .sort((a, b) => (isBefore(a.month, b.month) ? -1 : 1));
}

/** Someone may have a sheet of that name with something else on it. */
const isOurs = (sheet: SheetReading): boolean => sheet.text(ROWS.opening, 1) === "Opening" && sheet.text(ROWS.closing, 1) === "Closing";

/** A fixed cell of a month's sheet, as a formula on another sheet writes it. */
export const fixedCell = (month: Month, column: "B" | "C", row: number): string => onSheet(monthSheetName(month), `${column}${row}`);

export const onSheet = (sheet: string, range: string): string => addressOn(sheet, areaOf(range), null);

const areaOf = (range: string): Area => readArea(range) ?? { top: 1, left: 1, bottom: 1, right: 1 };
