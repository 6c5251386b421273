import { dayNumber, dayOf, dayText, readDay, type Day } from "./calendar";
import { contentOf } from "./content";
import type { LotMatch } from "./corrections";
import type { ListColumn } from "./list";
import type { ListedCell, ListedLot } from "./listed-lot";
import { plausibility } from "./plausible";
import { type Contradiction, about, isFew, lots as countOf, lotName } from "./reconcile-contradiction";
import type { SheetReading } from "./sheet-reading";

/** The last that a spreadsheet shows as a date. */
const LAST_DAY = dayNumber({ year: 9999, month: 12, day: 31 });

interface Dated {
  readonly lot: ListedLot;
  readonly cell: ListedCell;
  readonly day: number;
}

/** Dates that are none, lie in the future, break the order of the list, or come after what follows them. */
export function dateContradictions(sheet: SheetReading, { list, matches }: LotMatch, all: readonly ListedLot[], today: Day): readonly Contradiction[] {
  const found: Contradiction[] = [];
  const dated: Dated[] = [];
  const unread: Contradiction[] = [];
  for (const lot of all) {
    const cell = lot.cell("date");
    const held = lot.value("date");
    if (!cell || held === null) continue;
    const day = typeof held === "number" ? held : dayNumberOf(held);
    if (day === null) unread.push({ kind: "date", ...about(lot, cell), sentence: `‘${held}’ is a text and no date that can be counted: write the day as a date` });
    else if (day < 61 || day > LAST_DAY) found.push({ kind: "date", ...about(lot, cell), sentence: `${day} is no date: write the day as a date` });
    else if (Math.floor(day) > dayNumber(today)) found.push(...plausibility({ date: day }, { today, lots: [], prices: [] }).map(({ sentence }) => ({ kind: "date" as const, ...about(lot, cell), sentence })));
    else dated.push({ lot, cell, day });
  }
  // A shop that writes all of its dates as such texts knows what they mean.
  if (unread.length <= dated.length) found.push(...unread);
  return [...found, ...outOfOrder(dated), ...laterColumns(sheet, list.columns, matches.map(({ column }) => column.number), dated)];
}

function dayNumberOf(text: string): number | null {
  const day = readDay(text);
  return day && dayNumber(day);
}

/** In a list that goes by date, the few rows that do not. */
function outOfOrder(dated: readonly Dated[]): readonly Contradiction[] {
  const days = dated.map(({ day }) => Math.floor(day));
  const [up, down] = [longestRising(days), longestRising(days.map((day) => -day))];
  const kept = up.size >= down.size ? up : down;
  if (!isFew(dated.length - kept.size, dated.length)) return [];
  return dated.flatMap(({ lot, cell, day }, i) => {
    if (kept.has(i)) return [];
    const [before, after] = [last(i - 1, -1), last(i + 1, 1)];
    const neighbours = [before, after].flatMap((j) => (j === null ? [] : dated[j] ?? [])).map((one) => `${lotName(one.lot).toLowerCase()} (${dayText(dayOf(one.day))})`);
    return [{ kind: "date" as const, ...about(lot, cell), sentence: `The date ${dayText(dayOf(day))} is out of order: it stands beside ${neighbours.join(" and ")}, and the list goes by date` }];
  });
  function last(from: number, step: number): number | null {
    for (let j = from; j >= 0 && j < dated.length; j += step) if (kept.has(j)) return j;
    return null;
  }
}

/** The places of a longest run of numbers that never falls. */
function longestRising(numbers: readonly number[]): ReadonlySet<number> {
  const ends: number[] = [];
  const before: number[] = [];
  numbers.forEach((number, i) => {
    let [low, high] = [0, ends.length];
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((numbers[ends[middle] ?? 0] ?? 0) <= number) low = middle + 1;
      else high = middle;
    }
    before[i] = low === 0 ? -1 : (ends[low - 1] ?? -1);
    ends[low] = i;
  });
  const kept = new Set<number>();
  for (let i = ends.at(-1) ?? -1; i >= 0; i = before[i] ?? -1) kept.add(i);
  return kept;
}

/** A column of dates that come after the lot's own in all rows but a few, such as the day of payment. */
function laterColumns(sheet: SheetReading, columns: readonly ListColumn[], matched: readonly number[], dated: readonly Dated[]): readonly Contradiction[] {
  return columns
    .filter(({ number }) => !matched.includes(number))
    .flatMap((column) => {
      const cells = dated.map(({ lot }) => sheet.at(lot.row, column.number));
      const { dates, filled } = contentOf(cells);
      if (filled === 0 || dates / filled < 0.6) return [];
      const pairs = dated.flatMap((one, i) => {
        const held = cells[i]?.value;
        const day = typeof held === "number" ? held : typeof held === "string" ? dayNumberOf(held) : null;
        return day === null ? [] : [{ ...one, later: day }];
      });
      const earlier = pairs.filter(({ day, later }) => Math.floor(later) < Math.floor(day));
      if (!isFew(earlier.length, pairs.length)) return [];
      return earlier.map(({ lot, cell, day, later }) => ({
        kind: "date" as const,
        ...about(lot, cell),
        cell: `${column.letter}${lot.row}`,
        heading: column.heading,
        sentence: `‘${column.heading}’ (${dayText(dayOf(later))}) lies before ‘${cell.match.column.heading}’ (${dayText(dayOf(day))}); in the other ${countOf(pairs.length - earlier.length)} it does not`,
      }));
    });
}
