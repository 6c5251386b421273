import { type Day, dayOf } from "./calendar";
import { type NumberPattern, groupsOf, patternOf, shapeOf } from "./number-pattern";

/** A lot that stands in the list, in the order of its rows. */
export interface NumberedLot {
  readonly number: string | number;
  /** The day's number, where the row has a date. */
  readonly date?: number;
}

export interface NextNumber {
  readonly next: string | number;
  /** False where it is a proposal that should be looked at. */
  readonly isSure: boolean;
  /** How it came about, as a sentence. */
  readonly because: string;
}

/** The number that comes next, by the pattern that the numbers so far show. */
export function nextNumber(lots: readonly NumberedLot[], today: Day): NextNumber {
  const read = inOrder(lots).map(({ number, date }) => ({ text: String(number).trim(), date })).filter(({ text }) => text !== "");
  if (read.length === 0)
    return { next: `${today.year}-001`, isSure: false, because: `No lot has a number yet: ${today.year}-001 begins with the year; write the first one as you like, and the next ones follow it` };
  const counted = withoutSublots(read).filter(({ text }) => groupsOf(text).length > 0 && groupsOf(text).every((digits) => digits.length <= 15));
  const last = read.at(-1)?.text ?? "";
  if (counted.length === 0)
    return { next: `${last}-2`, isSure: false, because: `The numbers so far (such as ${last}) hold no digits to count on: write the next one yourself` };

  const { shape, isMixed } = shapeToFollow(counted.map(({ text }) => shapeOf(text)));
  const followed = counted.filter(({ text }) => shapeOf(text) === shape);
  const pattern = patternOf(followed.map(({ text, date }) => ({ text, ...(date === undefined ? {} : { day: dayOf(date) }) })), today);
  const proposed = following(pattern, today, new Set(lots.map(({ number }) => String(number).trim().toLowerCase())));
  const isNumeric = lots.filter(({ number }) => shapeOf(String(number).trim()) === shape).every(({ number }) => typeof number === "number");
  const asNumber = isNumeric && /^[1-9]\d*$/.test(proposed.next);
  const because = isMixed
    ? `The numbers follow more than one pattern (${examples(counted.map(({ text }) => text))}): this goes on from ${pattern.latest.text}; look at it`
    : proposed.because;
  return { next: asNumber ? Number(proposed.next) : proposed.next, isSure: proposed.isSure && !isMixed, because };
}

/** Oldest first: a list with its newest lots on top is read from below. */
function inOrder(lots: readonly NumberedLot[]): readonly NumberedLot[] {
  const dates = lots.flatMap(({ date }) => date ?? []);
  const falls = dates.length >= 2 && dates.every((date, i) => i === 0 || date <= (dates[i - 1] ?? date)) && (dates[0] ?? 0) > (dates.at(-1) ?? 0);
  return falls ? [...lots].reverse() : lots;
}

/** 2026-014A and 2026-014B are parts of 2026-014, unless every number ends so. */
function withoutSublots<T extends { readonly text: string }>(lots: readonly T[]): readonly T[] {
  const endings = new Set(lots.map(({ text }) => /\d([a-z])$/i.exec(text)?.[1]?.toUpperCase() ?? ""));
  return endings.size === 1 ? lots : lots.map((lot) => ({ ...lot, text: lot.text.replace(/(?<=\d)[a-z]$/i, "") }));
}

const RECENT = 10;

/** The shape of the last number if those before it have it too, else the commonest. */
function shapeToFollow(shapes: readonly string[]): { shape: string; isMixed: boolean } {
  const last = shapes.at(-1) ?? "";
  const count = (shape: string): number => shapes.filter((one) => one === shape).length;
  const commonest = shapes.reduce((best, shape) => (count(shape) >= count(best) ? shape : best), last);
  const shape = shapes.slice(-3).filter((one) => one === last).length >= Math.min(2, shapes.length) ? last : commonest;
  return { shape, isMixed: shapes.slice(-RECENT).some((one) => one !== shape) };
}

interface Proposed {
  readonly next: string;
  readonly isSure: boolean;
  readonly because: string;
}

function following(pattern: NumberPattern, today: Day, taken: ReadonlySet<string>): Proposed {
  const { latest, lots, write, period, beginsAnew } = pattern;
  const now = period.of(today);
  const isNewPeriod = now !== null && now > latest.period;
  const current = isNewPeriod ? now : latest.period;
  const inPeriod = lots.filter((lot) => lot.period === current).map(({ counter }) => counter);
  const all = lots.map(({ counter }) => counter);
  const restarts = isNewPeriod && beginsAnew !== false;
  const { top, outlier } = highest(restarts ? [] : beginsAnew === false ? all : inPeriod);
  let counter = restarts ? pattern.firstCounter : top + 1;
  while (taken.has(write(counter, current).toLowerCase())) counter++;
  const next = write(counter, current);
  if (outlier !== null) return { next, isSure: false, because: `${write(outlier, current)} stands far above the others and was passed over: look at it` };
  if (pattern.isUnclear) return { next, isSure: false, because: `More than one part of the numbers changes (${examples(lots.map(({ text }) => text))}): this counts the last part on; look at it` };
  if (restarts)
    return {
      next,
      isSure: beginsAnew === true,
      because: `The first of ${period.words(now)}: ${beginsAnew ? "the numbers begin anew, as they did before" : "the numbers are taken to begin anew, which the list cannot show yet; look at it"}`,
    };
  const missing = beginsAnew === false ? [] : gaps(inPeriod).map((gap) => write(gap, current));
  return { next, isSure: true, because: `Follows ${lots.find((lot) => lot.counter === top)?.text ?? write(top, current)}${missing.length > 0 ? `; ${missing.join(", ")} ${missing.length === 1 ? "is" : "are"} not in the list and stay${missing.length === 1 ? "s" : ""} free` : ""}` };
}

/** The highest counter; one that was mistyped far beyond the others does not count. */
function highest(counters: readonly number[]): { top: number; outlier: number | null } {
  const sorted = [...new Set(counters)].sort((a, b) => b - a);
  const [first = 0, second] = sorted;
  const isFarOff = second !== undefined && sorted.length >= 4 && first > 5 * second && first - second > 100;
  return isFarOff ? { top: second, outlier: first } : { top: first, outlier: null };
}

const MOST_GAPS = 3;

function gaps(counters: readonly number[]): number[] {
  const sorted = [...new Set(counters)].sort((a, b) => a - b);
  const missing: number[] = [];
  for (let i = 1; i < sorted.length; i++)
    for (let n = (sorted[i - 1] ?? 0) + 1; n < (sorted[i] ?? 0); n++) {
      missing.push(n);
      if (missing.length > MOST_GAPS) return [];
    }
  return missing;
}

const examples = (texts: readonly string[]): string => [...new Map(texts.map((text) => [shapeOf(text), text])).values()].slice(-3).join(", ") || (texts.at(-1) ?? "");
