import type { ListedLot } from "./listed-lot";

/** In the order in which they are listed: what makes later ones wrong comes before them. */
export const KINDS = ["number", "date", "unit", "weight", "outturn", "recovery", "payout", "overtyped", "stale"] as const;
export type ContradictionKind = (typeof KINDS)[number];

export const KIND_TITLES: Readonly<Record<ContradictionKind, string>> = {
  number: "Lot numbers",
  date: "Dates",
  unit: "Units and scales",
  weight: "Weights",
  outturn: "Outturn",
  recovery: "Recovery",
  payout: "Payout",
  overtyped: "Overtyped formulas",
  stale: "Out-of-date values",
};

/** A cell of a lot's row that does not go together with the rest of it. */
export interface Contradiction {
  readonly kind: ContradictionKind;
  /** How the lot is called. */
  readonly lot: string;
  readonly row: number;
  /** Such as F7. */
  readonly cell: string;
  readonly heading: string;
  readonly sentence: string;
}

/** What was looked at, so that silence can be trusted. */
export interface LookedAt {
  readonly kind: ContradictionKind;
  /** How many lots, or cells, could be judged. */
  readonly count: number;
  /** Why none could; null where some were. */
  readonly without: string | null;
}

export interface Findings {
  readonly contradictions: readonly Contradiction[];
  /** Sentences for what could not be judged. */
  readonly remarks: readonly string[];
}

export function lotName(lot: ListedLot): string {
  const number = lot.value("lot");
  return number === null ? `Row ${lot.row}` : `Lot ${number}`;
}

/** Where a field's cell of a lot stands, for a contradiction that is about it. */
export function about(lot: ListedLot, cell: { readonly address: string; readonly match: { readonly column: { readonly heading: string } } }): Pick<Contradiction, "lot" | "row" | "cell" | "heading"> {
  return { lot: lotName(lot), row: lot.row, cell: cell.address, heading: cell.match.column.heading };
}

/** A number as a sentence shows it. */
export const short = (value: number): string => String(Number(value.toPrecision(8)));

export const lots = (count: number): string => `${count} ${count === 1 ? "lot" : "lots"}`;

/** Few enough to be exceptions to what the others do. */
export const isFew = (some: number, all: number): boolean => all >= 6 && some <= Math.max(1, Math.floor(all / 10));
