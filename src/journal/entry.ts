import { lotNames } from "../formulas/lot-calls";
import type { ListedLot } from "../lots/listed-lot";
import { type ColumnMatch, matchOf } from "../lots/list";
import { lotName } from "../lots/reconcile-contradiction";
import { type MoneyLine, type Terms, hasTerms, possibleTerms, settlementLines, settlementLinesOverFine } from "../lots/reconcile-settlement";
import type { Shop } from "../lots/shop";
import type { AccountId } from "./accounts";
import { type Cents, cents, centsText } from "./money";

/** One side of a settlement; either debit or credit is zero. */
export interface Posting {
  readonly account: AccountId;
  readonly debit: Cents;
  readonly credit: Cents;
  readonly memo: string;
}

/** The postings of a lot, debits equal to credits. */
export interface Entry {
  readonly lot: ListedLot;
  readonly postings: readonly Posting[];
  /** False where it is two lines over the payout. */
  readonly isItemised: boolean;
  /** What must be known of them, as a sentence. */
  readonly remark: string | null;
}

const ACCOUNT_OF: Readonly<Record<string, AccountId>> = {
  "Metal value": "metal",
  "Refining charge": "refining",
  "Treatment charge": "treatment",
  "Lot charges": "lot",
  Rounding: "rounding",
};

/** A settlement as the terms of a lot give it. */
interface Given {
  readonly lines: readonly MoneyLine[];
  readonly terms: Terms;
}

/** The settlement of a lot as postings, or the sentence that says why there is none. */
export function entryOf(lot: ListedLot, matches: readonly ColumnMatch[], shop: Shop, places: number): Entry | string {
  const held = lot.value("payout");
  const paid = typeof held === "number" ? cents(held) : null;
  const possible = possibleTerms(lot, matches, shop);
  const all = typeof possible === "string" ? [] : possible.flatMap((terms) => settlements(lot, terms, places));
  const whole = all.find(({ lines }) => payoutOf(lines) === paid);
  if (whole) return { lot, postings: postings(whole.lines), isItemised: true, remark: null };
  const name = lotName(lot);
  const [given] = all;
  const lacks = typeof possible === "string" ? possible : "no weight and fineness that can be reckoned with";
  if (paid === null) {
    if (matchOf(matches, "payout") && held !== null) return `${name}: ‘${held}’ in ${lot.cell("payout")?.address ?? ""} is no amount, so that the lot is not in the journal: write the payout as a number`;
    if (!given) return `${name} has no payout and ${lacks}, so that it is not in the journal`;
    const sentence = matchOf(matches, "payout") ? `${name} has no payout in its row: the journal has ${givenText(given)}` : null;
    return { lot, postings: postings(given.lines), isItemised: true, remark: sentence };
  }
  if (paid === 0n) return `${name} has a payout of 0.00, and its terms give ${given ? centsText(payoutOf(given.lines)) : "nothing that can be reckoned"}: it is not in the journal`;
  return { lot, postings: overPayout(paid), isItemised: false, remark: whyTwoLines(lot, paid, given ?? lacks, hasTerms(matches, shop)) };
}

/** Over the scale's readings, and over the row's own fine weight, which may be rounded. */
const settlements = (lot: ListedLot, terms: Terms, places: number): Given[] =>
  [settlementLines(lot, terms, places), settlementLinesOverFine(lot, terms, places)].flatMap((lines) => (lines ? [{ lines, terms }] : []));

const payoutOf = (lines: readonly MoneyLine[]): Cents => cents(lines.at(-1)?.amount ?? 0);

const shopText = ({ fromShop }: Terms): string => (fromShop.length === 0 ? "" : `, with the shop’s ${fromShop.join(", ")},`);

const givenText = ({ lines, terms }: Given): string => `${centsText(payoutOf(lines))}, which its terms${shopText(terms)} give`;

/** Null where it is so for the whole list, which is told once. */
function whyTwoLines(lot: ListedLot, paid: Cents, given: Given | string, hasAll: boolean): string | null {
  const [name, twoLines] = [lotName(lot), "so that it stands as two lines over the payout"];
  if (typeof given === "string") return hasAll ? `${name} has ${given}, so that it stands as two lines over its payout` : null;
  const differ = `${name}: its terms${shopText(given.terms)} give ${centsText(payoutOf(given.lines))} and its payout is ${centsText(paid)}`;
  const isOurs = lotNames(lot.cell("payout")?.reading.formula ?? "").length > 0;
  return isOurs ? `${differ} by a formula with terms of its own, ${twoLines}` : `${differ}, ${twoLines}: look at it under Reconcile`;
}

/** Every line of the settlement on its side; a line of nothing is left out. */
function postings(lines: readonly MoneyLine[]): readonly Posting[] {
  const parts = lines.slice(0, -1).flatMap(({ label, amount }): Posting[] => {
    const account = ACCOUNT_OF[label];
    if (!account) throw new Error(`The settlement has a line ‘${label}’ that no account takes: the fault is in Lotwright, please report it`);
    return posting(account, cents(amount), label);
  });
  return [...parts, ...owed(payoutOf(lines), "Payout")];
}

const overPayout = (paid: Cents): readonly Posting[] => [...posting("metal", paid, "Payout as the list has it"), ...owed(paid, "Payout as the list has it")];

/** A payout is credited to the client; one below zero turns sides. */
const owed = (payout: Cents, memo: string): Posting[] => posting("clients", -payout, payout < 0n ? `${memo}, below zero: the client owes it` : memo);

/** Above zero is a debit. */
const posting = (account: AccountId, amount: Cents, memo: string): Posting[] =>
  amount === 0n ? [] : [{ account, debit: amount > 0n ? amount : 0n, credit: amount < 0n ? -amount : 0n, memo }];
