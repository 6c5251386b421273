import type { Day } from "./calendar";

/** How the numbers of lots are made up: what counts, and what says the year or the month. */
export interface NumberPattern {
  readonly lots: readonly PatternLot[];
  /** The one of the latest period, and there the highest. */
  readonly latest: PatternLot;
  readonly period: Period;
  /** Whether counting begins anew with each period; null where no list of two periods shows it. */
  readonly beginsAnew: boolean | null;
  readonly firstCounter: number;
  /** True where a part that neither counts nor says a date changes too. */
  readonly isUnclear: boolean;
  write(counter: number, period: number): string;
}

export interface PatternLot {
  readonly text: string;
  readonly counter: number;
  /** Year × 12 + month, year × 12, or 0 where the numbers bear no date. */
  readonly period: number;
}

export interface Period {
  of(day: Day): number | null;
  words(period: number): string;
}

export const groupsOf = (text: string): string[] => parts(text).filter((part) => /^\d/.test(part));

/** What stays when the digits are left out; a joined year (2026014) counts as a part of its own. */
export const shapeOf = (text: string): string => parts(text).map((part) => (/^\d/.test(part) ? "0" : part.toLowerCase())).join("\u0001");

const YEAR = /^(?:19|20)\d\d$/;

function parts(text: string): string[] {
  return (text.match(/\d+|\D+/g) ?? []).flatMap((part) => (/^20\d\d\d{2,4}$/.test(part) ? [part.slice(0, 4), part.slice(4)] : [part]));
}

interface Read {
  readonly text: string;
  readonly day?: Day;
}

/** The pattern of numbers that are all of one shape; at least one. */
export function patternOf(lots: readonly Read[], today: Day): NumberPattern {
  const groups = lots.map(({ text }) => groupsOf(text));
  const many = groups[0]?.length ?? 0;
  const column = (i: number): string[] => groups.map((group) => group[i] ?? "");
  const indexes = Array.from({ length: many }, (_, i) => i);
  const year = many < 2 ? undefined : indexes.find((i) => isYear(column(i), lots, today));
  const month = year === undefined || many < 3 ? undefined : indexes.find((i) => i !== year && i < many - 1 && isMonth(column(i), lots, i === year + 1));
  const others = indexes.filter((i) => i !== year && i !== month);
  const changing = others.filter((i) => new Set(column(i)).size > 1);
  const counterAt = changing.at(-1) ?? others.at(-1) ?? 0;
  const isYearShort = year !== undefined && column(year).every((digits) => digits.length === 2);

  const read = lots.map(({ text }, i): PatternLot => {
    const own = groups[i] ?? [];
    return { text, counter: Number(own[counterAt]), period: year === undefined ? 0 : 12 * fullYear(own[year] ?? "") + (month === undefined ? 0 : Number(own[month]) - 1) };
  });
  const latest = read.reduce((best, lot) => (lot.period > best.period || (lot.period === best.period && lot.counter >= best.counter) ? lot : best));
  const widths = column(counterAt);
  const width = widths.some((digits) => digits.startsWith("0")) || new Set(widths.map(({ length }) => length)).size === 1 ? Math.min(...widths.map(({ length }) => length)) : 1;
  return {
    lots: read,
    latest,
    period: {
      of: ({ year: y, month: m }) => (year === undefined ? null : 12 * y + (month === undefined ? 0 : m - 1)),
      words: (period) => (month === undefined ? String(Math.floor(period / 12)) : `${Math.floor(period / 12)}-${String((period % 12) + 1).padStart(2, "0")}`),
    },
    ...restarting(read),
    isUnclear: changing.length > 1,
    write(counter, period) {
      let at = -1;
      return parts(latest.text)
        .map((part) => {
          if (!/^\d/.test(part)) return part;
          at++;
          if (at === counterAt) return String(counter).padStart(width, "0");
          if (at === year) return String(Math.floor(period / 12)).slice(isYearShort ? -2 : 0);
          return at === month ? String((period % 12) + 1).padStart(part.length, "0") : part;
        })
        .join("");
    },
  };
}

const fullYear = (digits: string): number => (digits.length === 2 ? 2000 + Number(digits) : Number(digits));

/** Most of the dated rows agree; without dates, a year of four digits, or two digits that are this year or the last. */
function isYear(values: readonly string[], lots: readonly Read[], today: Day): boolean {
  if (values.every((digits) => YEAR.test(digits))) return true;
  if (!values.every((digits) => digits.length === 2)) return false;
  const dated = lots.flatMap(({ day }, i) => (day ? [day.year % 100 === Number(values[i])] : []));
  if (dated.length > 0) return mostly(dated);
  return values.every((digits) => Number(digits) <= today.year % 100) && values.some((digits) => today.year % 100 - Number(digits) <= 1) && new Set(values).size < Math.max(2, values.length);
}

function isMonth(values: readonly string[], lots: readonly Read[], followsYear: boolean): boolean {
  if (!values.every((digits) => digits.length <= 2 && Number(digits) >= 1 && Number(digits) <= 12)) return false;
  const dated = lots.flatMap(({ day }, i) => (day ? [day.month === Number(values[i])] : []));
  return dated.length > 0 ? mostly(dated) : followsYear && values.every((digits) => digits.length === 2);
}

const mostly = (agree: readonly boolean[]): boolean => agree.filter(Boolean).length >= 0.8 * agree.length;

function restarting(lots: readonly PatternLot[]): { beginsAnew: boolean | null; firstCounter: number } {
  const periods = [...new Set(lots.map(({ period }) => period))].sort((a, b) => a - b);
  const counters = periods.map((period) => lots.filter((lot) => lot.period === period).map(({ counter }) => counter));
  const lowest = Math.min(...(counters.at(-1) ?? [1]));
  // Some begin each year at 101.
  const firstCounter = lowest % 100 === 1 ? lowest : 1;
  if (periods.length < 2) return { beginsAnew: null, firstCounter };
  const begins = counters.slice(1).filter((later, i) => Math.min(...later) <= Math.max(...(counters[i] ?? []))).length;
  return { beginsAnew: begins * 2 >= counters.length - 1, firstCounter };
}
