import type { Answer } from "../functions/answer";

export interface Parameter {
  readonly name: string;
  /** What it is, and its range in the words of its reader. */
  readonly description: string;
  readonly optional: boolean;
  /** A single cell, or a range (rows of cells). */
  readonly shape: "value" | "range";
}

export interface Example {
  /** With its equals sign: =LOT.COPPER(10,"lb"). */
  readonly formula: string;
  /** What it shows, as text; an error begins with its code. */
  readonly shows: string;
}

export interface Entry {
  /** COPPER: what functions.json calls id and name. */
  readonly id: string;
  /** LOT.COPPER: what stands in a cell. */
  readonly name: string;
  readonly description: string;
  readonly parameters: readonly Parameter[];
  readonly returns: string;
  /** True where the result spills over several cells. */
  readonly spills: boolean;
  readonly examples: readonly Example[];
  /** The room it stands in: weights, drop, cost, recovery, payout, about. */
  readonly group: string;
  /** Words of the trade that find it. */
  readonly words: readonly string[];
  readonly caution: string | null;
  readonly source: string | null;
  /** Cells as the host gives them: omitted and empty as null, a range as rows of cells; or References. Throws a FaultError. */
  readonly call: (...cells: unknown[]) => Answer;
}
