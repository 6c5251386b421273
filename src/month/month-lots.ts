import type { LotPlace } from "../lots/where";
import { type ListedLot, listedLots } from "../lots/listed-lot";
import type { FieldId } from "../lots/fields";
import { matchOf } from "../lots/list";
import { type Month, firstDay, following, isIn } from "./month-of";
import { dayNumber, dayOf, readDay } from "../lots/calendar";

/** Lots of a month, and what is open at its end. */
export interface MonthLots {
  readonly received: readonly ListedLot[];
  /** Received by the month's end, with no outturn yet. */
  readonly inProcess: readonly ListedLot[];
  /** Sentences for lots that cannot be counted. */
  readonly remarks: readonly string[];
}

const NEEDED: readonly FieldId[] = ["lot", "date", "client"];

/** What the place of the lots must have before a month can be closed; a sentence where it has not. */
export function missingColumns({ matches }: LotPlace): string | null {
  const missing = NEEDED.filter((field) => !matchOf(matches, field));
  const hasWeight = matchOf(matches, "fineWeight") ?? (matchOf(matches, "net") && matchOf(matches, "fineness"));
  const words = [...missing, ...(hasWeight ? [] : ["fine weight, or net weight and fineness"])];
  return words.length === 0 ? null : `The list of lots has no column for ${words.join(" and ")}: match or add it under Set up a lot, Where lots live`;
}

export function monthLots(place: LotPlace, month: Month): MonthLots {
  const end = dayNumber(firstDay(following(month)));
  const remarks: string[] = [];
  const dated = listedLots(place.sheet, place).flatMap((lot) => {
    const day = dayOfLot(lot);
    if (day === null) {
      remarks.push(`Row ${lot.row} (${lot.value("lot") ?? "no number"}) has no date that can be read and is counted in no month`);
      return [];
    }
    return [{ lot, day }];
  });
  const received = dated.filter(({ day }) => isIn(day, month)).map(({ lot }) => lot);
  const hasOutturn = matchOf(place.matches, "outturn") !== undefined;
  const inProcess = hasOutturn ? dated.filter(({ lot, day }) => day < end && typeof lot.value("outturn") !== "number").map(({ lot }) => lot) : [];
  return { received, inProcess, remarks };
}

/** The number of a lot's day, written as a date or as a text such as 2026-03-02. */
export function dayOfLot(lot: ListedLot): number | null {
  const date = lot.value("date");
  if (typeof date !== "string") return date;
  const day = readDay(date);
  return day && dayNumber(day);
}

/** Months in which lots came in, the latest last. */
export function monthsOf(place: LotPlace): readonly Month[] {
  const seen = new Map<string, Month>();
  for (const lot of listedLots(place.sheet, place)) {
    const day = dayOfLot(lot);
    if (day === null) continue;
    const { year, month } = dayOf(day);
    seen.set(`${year}-${month}`, { year, month });
  }
  return [...seen.values()].sort((a, b) => a.year - b.year || a.month - b.month);
}
