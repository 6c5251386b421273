import type { NamedPlace } from "../workbook/port";
import type { Day } from "./calendar";
import type { FieldId } from "./fields";
import { type ListedLot, listedLots } from "./listed-lot";
import { type ColumnMatch, matchOf } from "./list";
import { type Compared, judged, usualDecimals } from "./reconcile-agreement";
import { overtyped, repeatedNumbers } from "./reconcile-columns";
import { type Contradiction, type ContradictionKind, KINDS, type LookedAt, lots as countOf } from "./reconcile-contradiction";
import { dateContradictions } from "./reconcile-dates";
import { type Fresh, staleCells } from "./reconcile-fresh";
import { comparedPayout, moneyPlaces, payoutAboveMetal } from "./reconcile-payout";
import { SheetsReading } from "./reconcile-reading";
import { fineOf, hasTerms } from "./reconcile-settlement";
import { unitContradictions } from "./reconcile-units";
import { comparedFine, comparedNet, comparedRecovery, impossibleWeights } from "./reconcile-weights";
import type { SheetReading } from "./sheet-reading";
import type { Shop } from "./shop";
import type { LotPlace } from "./where";

export { KIND_TITLES, type Contradiction, type ContradictionKind, type LookedAt } from "./reconcile-contradiction";
export type { Fresh } from "./reconcile-fresh";

export interface Reconciled {
  /** How many lots were looked at, and how many there are: fewer where it was stopped. */
  readonly lots: number;
  readonly of: number;
  /** By kind, and within it by row. */
  readonly contradictions: readonly Contradiction[];
  readonly looked: readonly LookedAt[];
  /** Sentences for what no single lot can be blamed for. */
  readonly remarks: readonly string[];
}

export interface ReconcileOptions {
  readonly today: Day;
  /** With what its cells hold. */
  readonly shop: Shop;
  readonly fresh: Fresh;
  readonly names: readonly NamedPlace[];
  /** Told after every few lots; false stops, and what was found so far is given back. */
  readonly step?: (done: number, of: number) => boolean | Promise<boolean>;
}

const LOTS_A_STEP = 50;

/** Lots whose rows contradict themselves. */
export async function reconcile({ sheets, place }: { readonly sheets: readonly SheetReading[]; readonly place: LotPlace }, { today, shop, fresh, names, step = () => true }: ReconcileOptions): Promise<Reconciled> {
  const { sheet, list, matches } = place;
  const all = listedLots(sheet, place);
  const book = new SheetsReading(sheets, names);
  const places = decimalsOf(all);
  const money = moneyPlaces(places("payout"));
  const found: Contradiction[] = [];
  const compared = { net: [] as Compared[], fine: [] as Compared[], recovery: [] as Compared[], payout: [] as Compared[] };
  const counts = new Map<ContradictionKind, number>();
  const count = (kind: ContradictionKind, by: number): void => void counts.set(kind, (counts.get(kind) ?? 0) + by);
  let done = 0;
  for (const lot of all) {
    if (done > 0 && done % LOTS_A_STEP === 0 && !(await step(done, all.length))) break;
    done++;
    found.push(...impossibleWeights(lot));
    take(compared.net, comparedNet(lot, places));
    take(compared.fine, comparedFine(lot, places));
    take(compared.recovery, comparedRecovery(lot, places));
    const payout = comparedPayout(lot, matches, shop, money);
    take(compared.payout, payout);
    if (!payout) found.push(...[payoutAboveMetal(lot)].flatMap((one) => one ?? []));
    if (lot.weight("outturn") && fineOf(lot)) count("outturn", 1);
    if (["gross", "tare", "net", "fineWeight"].some((field) => lot.weight(field as FieldId))) count("weight", 1);
    const stale = await staleCells(sheet, list.columns, lot, fresh, book);
    found.push(...stale.contradictions);
    count("stale", stale.computed);
  }
  const seen = done === all.length ? all : all.slice(0, done);
  const numbers = repeatedNumbers(seen);
  const typed = overtyped(sheet, place, seen);
  const judgements = [numbers, ...Object.values(compared).map(judged)];
  const contradictions = [...found, ...dateContradictions(sheet, place, seen, today), ...unitContradictions(matches, seen), ...typed.contradictions, ...judgements.flatMap(({ contradictions: some }) => some)];
  count("number", seen.filter((lot) => lot.value("lot") !== null).length);
  count("date", seen.filter((lot) => lot.value("date") !== null).length);
  count("unit", matches.some(({ unit }) => unit !== null) ? seen.length : 0);
  count("overtyped", typed.columns);
  count("recovery", compared.recovery.length);
  count("payout", compared.payout.length);
  return {
    lots: done,
    of: all.length,
    contradictions: contradictions.sort((a, b) => KINDS.indexOf(a.kind) - KINDS.indexOf(b.kind) || a.row - b.row),
    looked: KINDS.map((kind) => ({ kind, count: counts.get(kind) ?? 0, without: (counts.get(kind) ?? 0) > 0 ? null : without(kind, matches, shop) })),
    remarks: judgements.flatMap(({ remarks }) => remarks),
  };
}

const take = (into: Compared[], one: Compared | null): void => void (one && into.push(one));

/** Of each column, once. */
function decimalsOf(all: readonly ListedLot[]): (field: FieldId) => number {
  const known = new Map<FieldId, number>();
  return (field) => {
    const before = known.get(field);
    if (before !== undefined) return before;
    const usual = usualDecimals(all.map((lot) => lot.value(field)).filter((value) => typeof value === "number"));
    known.set(field, usual);
    return usual;
  };
}

/** Why nothing of a kind could be judged. */
function without(kind: ContradictionKind, matches: readonly ColumnMatch[], shop: Shop): string {
  const needs = (...fields: readonly FieldId[]): boolean => fields.every((field) => matchOf(matches, field));
  switch (kind) {
    case "number":
      return needs("lot") ? "no lot has a number" : "the list has no column for it";
    case "date":
      return needs("date") ? "no lot has a date" : "the list has no column for it";
    case "unit":
      return "no column has a unit";
    case "weight":
      return "no weight has a number and a known unit";
    case "outturn":
      return needs("outturn") ? "no lot has an outturn and a fine weight whose units are known" : "the list has no column for it";
    case "recovery":
      return needs("recovery") ? "no lot has a recovery, an outturn and a fine weight" : "the list has no column for it";
    case "payout":
      return needs("payout") && hasTerms(matches, shop) ? "no lot has a payout that was typed, with its price, share and weight" : "the list has no columns for payout, price and fine weight";
    case "overtyped":
      return "no column consists of formulas";
    case "stale":
      return "no cell of the list holds a formula of Lotwright that can be computed here";
  }
}

/** What was found, in one sentence. */
export function reconciledSentence({ lots, of, contradictions }: Reconciled): string {
  const all = lots < of ? `the first ${lots} of ${countOf(of)}` : countOf(of);
  const rows = new Set(contradictions.map(({ row }) => row)).size;
  if (of === 0) return "There is no lot in the list yet";
  if (rows === 0) return `Nothing contradicts itself in ${all}`;
  return `${contradictions.length} ${contradictions.length === 1 ? "contradiction" : "contradictions"} in ${countOf(rows)} of ${lots < of ? all : of}`;
}
