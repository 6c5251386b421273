import { blamed } from "../catalogue/blamed";
import { find } from "../catalogue/catalogue";
import type { Entry } from "../catalogue/entry";
import { FaultError } from "../core/fault";
import type { Answer } from "../functions/answer";
import type { Weight } from "./plausible";
import type { Offer, OfferField, Written } from "./quote";
import { OfferFault, type ReadTerms, readTerms } from "./quote-figures";
import type { Assays, Found, SettleField, Settling } from "./settlement";

/** A line of the statement: what it is, how much, and in what. */
export type StatementLine = readonly [label: string, amount: number, unit: string];

/** Where a part of the fine metal is; all parts add up to the charge. */
export interface FlowPart {
  readonly label: string;
  readonly ozt: number;
  /** Of the charge. */
  readonly share: number;
}

export interface SettlementFigures {
  /** In parts per thousand. */
  readonly fineness: number;
  readonly terms: ReadTerms;
  readonly lines: readonly StatementLine[];
  readonly fine: number;
  readonly payable: number;
  readonly payout: number;
  /** In the unit asked for; null where the payment is in money, or the charges leave none. */
  readonly metal: number | null;
  /** Null before the outturn is known. */
  readonly flow: readonly FlowPart[] | null;
  readonly recovery: number | null;
  /** Expanded, k = 2. */
  readonly recoveryUncertainty: number | null;
  readonly answers: { readonly fineness: Answer; readonly settlement: Answer };
}

/** Says what of a settlement cannot be reckoned with; an umpire's assay that is still to come is no mistake. */
export class SettleFault extends Error {
  constructor(
    sentence: string,
    readonly fields: readonly SettleField[],
    readonly isAwaited = false,
  ) {
    super(sentence);
    this.name = "SettleFault";
  }
}

/** Every figure of a settlement, by the functions that its sheet computes with; throws a SettleFault. */
export function settlementFigures(settling: Settling): SettlementFigures {
  const { weight, assays, found } = settling;
  const finenessOf = agreedFineness(assays);
  const fineness = Number(valueOf(finenessOf));
  const terms = termsOf(settling, fineness);
  const settlementOf = called("SETTLEMENT", { net: "weight", unit: "weight", fineness: assays.ours === undefined ? "theirs" : "ours" }, weight.value, weight.unit, fineness, terms.price, terms.payable, terms.refiningCharge, terms.treatmentCharge, terms.lotCharges, terms.deduction);
  const lines = valueOf(settlementOf) as readonly StatementLine[];
  const amount = (name: string): number => lines.find(([label]) => label === name)?.[1] ?? 0;
  const [fine, payable, payout] = [amount("Fine weight"), amount("Payable fine weight"), amount("Payout")];
  const out = found.outturn && ounces("outturn", found.outturn);
  return {
    fineness,
    terms,
    lines,
    fine,
    payable,
    payout,
    metal: settling.payment === "metal" ? metalOf(settling, terms, payable, amount("Metal value"), payout) : null,
    flow: out === undefined ? null : flowOf(fine, out, found),
    recovery: out === undefined ? null : Number(valueOf(called("RECOVERY", { fineOut: "outturn" }, out, fine))),
    recoveryUncertainty: out === undefined ? null : uncertaintyOf(settling, fineness, fine, out),
    answers: { fineness: finenessOf, settlement: settlementOf },
  };
}

/** By exchange where there are two assays; else the one that there is. */
export function agreedFineness({ ours, theirs, limit, umpire }: Assays): Answer {
  if (ours !== undefined && theirs !== undefined) {
    if (limit === undefined) throw new SettleFault("Write the splitting limit that was agreed: the difference up to which the mean of both assays is taken", ["limit"]);
    return called("AGREEDASSAY", { ours: "ours", theirs: "theirs", limit: "limit", umpire: "umpire" }, ours, theirs, limit, umpire ?? null);
  }
  const one = ours ?? theirs;
  if (one === undefined) throw new SettleFault("Write our assay, the client's, or both", ["ours"]);
  return called("FINENESS", { value: ours === undefined ? "theirs" : "ours" }, one);
}

function termsOf({ weight, terms }: Settling, fineness: number): ReadTerms {
  const offer: Offer = { weight, low: fineness, likely: fineness, high: fineness, terms, payment: "money", metalUnit: "ozt" };
  try {
    return readTerms(offer);
  } catch (thrown) {
    if (!(thrown instanceof OfferFault)) throw thrown;
    throw new SettleFault(thrown.message, thrown.fields.flatMap(asSettleField));
  }
}

const asSettleField = (field: OfferField): SettleField[] => (field === "low" || field === "likely" || field === "high" ? ["ours"] : field === "swing" ? [] : [field]);

function metalOf({ metalUnit }: Settling, { price }: ReadTerms, payable: number, value: number, payout: number): number | null {
  const charges = Math.round((value - payout) * 100) / 100;
  if (Math.round((payable * price - charges) * 100) <= 0) return null;
  return Number(valueOf(called("METALRETURN", {}, payable, "ozt", 1, charges, price, metalUnit)));
}

/** What is in process counts as nothing where all that was dropped was worked up. */
function flowOf(fine: number, out: number, found: Found): FlowPart[] {
  const of = (field: keyof Found): number => (found[field] ? ounces(field, found[field]) : 0);
  const [liquor, stubs, residues] = [of("liquor"), of("stubs"), of("residues")];
  const dropped = found.dropped ? of("dropped") : out + stubs + residues;
  const rows = valueOf(called("HELDBACK", { dropped: "dropped", liquor: "liquor", stubs: "stubs", residues: "residues", crystal: "outturn" }, fine, dropped, liquor, stubs, residues, out)) as readonly (readonly [string, number, number])[];
  return rows.map(([label, ozt, share]) => (Math.abs(ozt) < NO_METAL ? { label, ozt: 0, share: 0 } : { label, ozt, share }));
}

/** Less than this is what adding numbers leaves, and no metal. */
const NO_METAL = 1e-9;

function uncertaintyOf({ weight, uncertainty }: Settling, fineness: Written, fine: number, out: number): number | null {
  if (!uncertainty) return null;
  const { scale, assay } = uncertainty;
  const ofScale = (unit: string): number => Number(valueOf(called("WEIGHT", {}, scale.value, scale.unit, unit)));
  const ofFine = Number(valueOf(called("FINEU", {}, weight.value, ofScale(weight.unit), weight.unit, fineness, assay, 1, "ozt")));
  return Number(valueOf(called("RECOVERYU", { fineOut: "outturn" }, out, ofScale("ozt"), fine, ofFine)));
}

export const ounces = (field: SettleField, { value, unit }: Weight): number => (value === 0 ? 0 : Number(valueOf(called("WEIGHT", { value: field, from: field }, value, unit, "ozt"))));

const answered = new WeakMap<Answer, { readonly entry: Entry; readonly fields: Readonly<Record<string, SettleField>> }>();

/** `fields` says what of the settlement the arguments are. */
function called(id: string, fields: Readonly<Record<string, SettleField>>, ...cells: readonly unknown[]): Answer {
  const entry = find(id) as Entry;
  const answer = entry.call(...cells);
  answered.set(answer, { entry, fields });
  return answer;
}

function valueOf(answer: Answer): unknown {
  try {
    return answer.value();
  } catch (thrown) {
    if (!(thrown instanceof FaultError)) throw thrown;
    const { entry, fields } = answered.get(answer) ?? {};
    const names = entry ? blamed(thrown.fault, entry.parameters) : [];
    throw new SettleFault(thrown.message, names.flatMap((name) => fields?.[name] ?? (isTerm(name) ? [name] : [])), thrown.fault.kind === "awaited");
  }
}

const isTerm = (name: string): name is keyof Settling["terms"] => ["price", "payable", "refiningCharge", "treatmentCharge", "lotCharges", "deduction"].includes(name);
