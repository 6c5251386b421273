import { type Ratio, zero } from "./expression/ratio";

/** A lot as the month sees it. The date is the spreadsheet's day number. */
export interface MonthLot {
  readonly date: number;
  readonly fineIn: Ratio;
  readonly fineOut: Ratio;
  readonly group: string;
}

export interface MonthRow {
  /** The day number of the month's first day. */
  readonly month: number;
  readonly group: string;
  readonly fineIn: Ratio;
  readonly fineOut: Ratio;
  readonly lots: number;
}

/** Month by month, and group by group within a month, in the order of the calendar and of the alphabet. */
export function months(lots: readonly MonthLot[]): readonly MonthRow[] {
  const rows = new Map<string, MonthRow>();
  for (const { date, fineIn, fineOut, group } of lots) {
    const month = firstOfMonth(date);
    const key = `${month} ${group}`;
    const row = rows.get(key) ?? { month, group, fineIn: zero, fineOut: zero, lots: 0 };
    rows.set(key, { ...row, fineIn: row.fineIn.plus(fineIn), fineOut: row.fineOut.plus(fineOut), lots: row.lots + 1 });
  }
  return [...rows.values()].sort((a, b) => a.month - b.month || (a.group < b.group ? -1 : a.group > b.group ? 1 : 0));
}

const DAY = 86_400_000;
/** Day 0 of the spreadsheet's calendar, as it counts from March 1900 on. */
const DAY_ZERO = Date.UTC(1899, 11, 30);

function firstOfMonth(day: number): number {
  const date = new Date(DAY_ZERO + Math.floor(day) * DAY);
  return (Date.UTC(date.getUTCFullYear(), date.getUTCMonth(), 1) - DAY_ZERO) / DAY;
}
