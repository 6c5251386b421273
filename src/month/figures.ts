import { find } from "../catalogue/catalogue";
import type { Answer } from "../functions/answer";
import { type MonthBasis, cameInThisMonth } from "./month-basis";
import type { Measurement } from "./month-input";
import type { Opening } from "./opening";
import type { StockTerms } from "./stock-terms";
import type { Term } from "./term";

export interface Side {
  readonly fine: number;
  readonly uncertainty: number;
}

export type Verdict = "within measurement" | "metal missing" | "metal over";

/** The month's balance as it stands now, in troy ounces. */
export interface Figures {
  readonly opening: Side;
  readonly received: Side;
  readonly shipped: Side;
  readonly closing: Side;
  readonly unaccounted: number;
  readonly expanded: number;
  /** A text where nothing went through the shop. */
  readonly share: number | string;
  readonly verdict: Verdict;
  readonly answer: Answer;
}

interface Parts {
  readonly opening: Opening;
  readonly basis: Pick<MonthBasis, "received">;
  readonly counted: readonly StockTerms[];
  readonly shipped: readonly StockTerms[];
  readonly measurement: Measurement;
}

/** Throws a FaultError where LOT.BALANCE refuses the numbers. */
export function figuresOf({ opening: from, basis, counted, shipped: out, measurement: { bias, weighInBias } }: Parts): Figures {
  const opening = { fine: Number(from.fine.value()), uncertainty: Number(from.uncertainty.value()) };
  const [received, shipped, closing] = [sideOf(basis.received), sideOf(out), sideOf(counted)];
  const same = sideOf(counted.filter(({ line }) => cameInThisMonth(line, basis)));
  const without = (u: number): number => Math.sqrt(Math.max(0, u ** 2 - same.uncertainty ** 2));
  const [ownBias, otherBias] = weighInBias === null ? [0, 0] : [weighInBias * (received.fine - same.fine), bias * (opening.fine - shipped.fine - (closing.fine - same.fine))];
  const [uReceived, uClosing] = [Math.hypot(without(received.uncertainty), ownBias), Math.hypot(without(closing.uncertainty), otherBias)];
  const answer = balance.call(opening.fine, received.fine, shipped.fine, closing.fine, opening.uncertainty, uReceived, shipped.uncertainty, uClosing, weighInBias === null ? bias : 0);
  const rows = answer.value();
  const shows = (row: number): unknown => (Array.isArray(rows) ? rows[row]?.[1] : undefined);
  return {
    opening, received, shipped, closing, answer,
    unaccounted: Number(shows(4)),
    expanded: Number(shows(5)),
    share: shows(6) as number | string,
    verdict: shows(7) as Verdict,
  };
}

const balance = find("BALANCE") ?? missing();

function missing(): never {
  throw new Error("There is no function BALANCE");
}

/** Random parts in quadrature. */
function sideOf(terms: readonly { readonly fine: Term; readonly uncertainty: Term }[]): Side {
  const all = terms.map(({ fine, uncertainty }) => [Number(fine.value()), Number(uncertainty.value())] as const);
  return { fine: all.reduce((sum, [fine]) => sum + fine, 0), uncertainty: Math.sqrt(all.reduce((sum, [, u]) => sum + u * u, 0)) };
}
