import { type Day, dayNumber, dayText } from "../lots/calendar";

/** A month of the calendar. */
export interface Month {
  readonly year: number;
  /** 1 to 12. */
  readonly month: number;
}

export const monthText = ({ year, month }: Month): string => `${year}-${String(month).padStart(2, "0")}`;

/** A month written as 2026-03, or null. */
export function readMonth(text: string): Month | null {
  const [, year, month] = /^(\d{4})-(\d{1,2})$/.exec(text.trim()) ?? [];
  const read = { year: Number(year), month: Number(month) };
  return year !== undefined && read.month >= 1 && read.month <= 12 ? read : null;
}

export const following = ({ year, month }: Month): Month => (month === 12 ? { year: year + 1, month: 1 } : { year, month: month + 1 });
export const preceding = ({ year, month }: Month): Month => (month === 1 ? { year: year - 1, month: 12 } : { year, month: month - 1 });

export const firstDay = ({ year, month }: Month): Day => ({ year, month, day: 1 });
export const lastDay = (month: Month): string => dayText(dayBefore(firstDay(following(month))));

export const isBefore = (a: Month, b: Month): boolean => a.year < b.year || (a.year === b.year && a.month < b.month);

/** Whether a day's number lies in the month. */
export const isIn = (day: number, month: Month): boolean => day >= dayNumber(firstDay(month)) && day < dayNumber(firstDay(following(month)));

function dayBefore(day: Day): Day {
  const before = new Date(Date.UTC(day.year, day.month - 1, day.day - 1));
  return { year: before.getUTCFullYear(), month: before.getUTCMonth() + 1, day: before.getUTCDate() };
}
