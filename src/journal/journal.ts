import { dayOf, dayText } from "../lots/calendar";
import { listedLots } from "../lots/listed-lot";
import { matchOf } from "../lots/list";
import { usualDecimals } from "../lots/reconcile-agreement";
import { lotName, lots as countOf } from "../lots/reconcile-contradiction";
import { moneyPlaces } from "../lots/reconcile-payout";
import { hasTerms } from "../lots/reconcile-settlement";
import type { Shop } from "../lots/shop";
import type { LotPlace } from "../lots/where";
import { dayOfLot } from "../month/month-lots";
import { type Month, isIn, monthText } from "../month/month-of";
import type { Accounts } from "./accounts";
import { type Posting, entryOf } from "./entry";
import { type Cents, sumOf } from "./money";
import { isSettled } from "../lots/settled";

export interface JournalLine extends Omit<Posting, "account"> {
  /** 2026-03-02 */
  readonly date: string;
  readonly lot: string;
  readonly client: string;
  /** As the shop's books call it. */
  readonly account: string;
}

export interface Journal {
  readonly month: Month;
  /** The lines of one settlement stand together. */
  readonly settlements: readonly (readonly JournalLine[])[];
  readonly debit: Cents;
  readonly credit: Cents;
  /** Sentences for lots that are not in it, or not in all their lines, and why. */
  readonly remarks: readonly string[];
}

/** What the workbook keeps besides its lots. */
export interface Books {
  readonly accounts: Accounts;
  /** With what its cells hold. */
  readonly shop: Shop;
}

/** Told now and then; what it gives back is waited for, so that a page can be drawn. */
type Step = (done: number, of: number) => void | Promise<void>;

const LOTS_A_STEP = 50;

/** A sentence where the list cannot have a journal. */
export function withoutJournal({ matches }: LotPlace, shop: Shop): string | null {
  if (!matchOf(matches, "date")) return "The list of lots has no column for the date, which decides the month: match or add it under Set up a lot, Where lots live";
  return matchOf(matches, "payout") || hasTerms(matches, shop) ? null : "The list of lots has no column for the payout: match or add it under Set up a lot, Where lots live";
}

/** The settlements of a month as balanced lines. */
export async function journalOf(place: LotPlace, month: Month, { accounts, shop }: Books, step: Step = () => undefined): Promise<Journal> {
  const { matches } = place;
  const all = listedLots(place.sheet, place);
  const places = moneyPlaces(usualDecimals(all.map((lot) => lot.value("payout")).filter((value) => typeof value === "number")));
  const remarks: string[] = [];
  const settlements: JournalLine[][] = [];
  let open = 0;
  let plain = 0;
  for (const [i, lot] of all.entries()) {
    if (i % LOTS_A_STEP === 0) await step(i, all.length);
    const day = dayOfLot(lot);
    if (day === null) {
      if (isSettled(lot)) remarks.push(`${lotName(lot)} has no date that can be read, so that it is in the journal of no month`);
      continue;
    }
    if (!isIn(day, month)) continue;
    if (!isSettled(lot)) {
      open++;
      continue;
    }
    const entry = entryOf(lot, matches, shop, places);
    if (typeof entry === "string") {
      remarks.push(entry);
      continue;
    }
    if (entry.remark !== null) remarks.push(entry.remark);
    else if (!entry.isItemised) plain++;
    if (lot.value("lot") === null) remarks.push(`Row ${lot.row} has no lot number: the journal calls it row ${lot.row}`);
    if (lot.value("client") === null) remarks.push(`${lotName(lot)} has no client: its lines do not say to whom the payout is owed`);
    const [date, number, client] = [dayText(dayOf(day)), String(lot.value("lot") ?? `row ${lot.row}`), String(lot.value("client") ?? "")];
    settlements.push(entry.postings.map(({ account, ...rest }) => ({ date, lot: number, client, account: accounts[account], ...rest })));
  }
  if (plain > 0) remarks.push(`The list has no columns for all of the terms, so that ${countOf(plain)} ${plain === 1 ? "stands" : "stand"} as two lines over the payout`);
  if (open > 0) remarks.push(`${countOf(open)} of ${monthText(month)} ${open === 1 ? "is" : "are"} not settled yet and not in the journal`);
  const lines = settlements.flat();
  return { month, settlements, debit: sumOf(lines.map(({ debit }) => debit)), credit: sumOf(lines.map(({ credit }) => credit)), remarks };
}
