export interface Day {
  readonly year: number;
  /** 1 to 12. */
  readonly month: number;
  readonly day: number;
}

const DAY = 86_400_000;
const START = Date.UTC(1899, 11, 30);

/** A spreadsheet's number for a day, from March 1900 on. */
export const dayNumber = ({ year, month, day }: Day): number => (Date.UTC(year, month - 1, day) - START) / DAY;

export function dayOf(number: number): Day {
  const date = new Date(START + Math.floor(number) * DAY);
  return { year: date.getUTCFullYear(), month: date.getUTCMonth() + 1, day: date.getUTCDate() };
}

/** A day written as 2026-03-02, or null. */
export function readDay(text: string): Day | null {
  const [, year, month, day] = /^(\d{4})-(\d{1,2})-(\d{1,2})$/.exec(text.trim()) ?? [];
  if (year === undefined) return null;
  const read = { year: Number(year), month: Number(month), day: Number(day) };
  const again = dayOf(dayNumber(read));
  return again.month === read.month && again.day === read.day ? read : null;
}

export const dayText = ({ year, month, day }: Day): string => `${year}-${String(month).padStart(2, "0")}-${String(day).padStart(2, "0")}`;
