import { ExactSum } from "./expression/exact-sum";
import type { Ratio } from "./expression/ratio";

export interface MonthRow {
  /** The day number of the month's first day. */
  readonly month: number;
  readonly group: string;
  readonly fineIn: Ratio;
  readonly fineOut: Ratio;
  readonly lots: number;
}

/** Lots as they come, added up month by month, and group by group within a month. */
export class Months {
  private readonly months = new Map<number, Map<string, MonthSum>>();
  /** A year of lots has many of each day: what month a day is in is asked once. */
  private readonly days = new Map<number, Map<string, MonthSum>>();

  /** The date is the spreadsheet's day number. */
  add(date: number, fineIn: number, fineOut: number, group: string): void {
    const day = Math.floor(date);
    const groups = this.days.get(day) ?? this.newDay(day);
    let row = groups.get(group);
    if (!row) groups.set(group, (row = new MonthSum()));
    row.fineIn.add(fineIn);
    row.fineOut.add(fineOut);
    row.lots++;
  }

  /** In the order of the calendar and of the alphabet. */
  rows(): readonly MonthRow[] {
    const rows = [...this.months].flatMap(([month, groups]) =>
      [...groups].map(([group, { fineIn, fineOut, lots }]) => ({ month, group, fineIn: fineIn.sum, fineOut: fineOut.sum, lots })),
    );
    return rows.sort((a, b) => a.month - b.month || (a.group < b.group ? -1 : a.group > b.group ? 1 : 0));
  }

  private newDay(day: number): Map<string, MonthSum> {
    const month = firstOfMonth(day);
    const groups = this.months.get(month) ?? new Map<string, MonthSum>();
    this.months.set(month, groups);
    this.days.set(day, groups);
    return groups;
  }
}

class MonthSum {
  readonly fineIn = new ExactSum();
  readonly fineOut = new ExactSum();
  lots = 0;
}

const DAY = 86_400_000;
/** Day 0 of the spreadsheet's calendar, as it counts from March 1900 on. */
const DAY_ZERO = Date.UTC(1899, 11, 30);

function firstOfMonth(day: number): number {
  const date = new Date(DAY_ZERO + day * DAY);
  return (Date.UTC(date.getUTCFullYear(), date.getUTCMonth(), 1) - DAY_ZERO) / DAY;
}
