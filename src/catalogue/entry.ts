import type { Answer } from "../functions/answer";
import type { Group } from "./groups";

export interface Parameter {
  readonly name: string;
  readonly description: string;
  /** Its range, in the words of its reader. */
  readonly wants: string;
  /** What stands for it when it is left out. */
  readonly otherwise: string | null;
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
  readonly group: Group;
  /** Words of the trade that find it. */
  readonly words: readonly string[];
  readonly caution: string | null;
  readonly source: string | null;
  /** How many arguments it declares: a host may pass more. */
  readonly arity: number;
  /** Cells as the host gives them: omitted and empty as null, a range as rows of cells; or References. Throws a FaultError. */
  readonly call: (...cells: unknown[]) => Answer;
}

/** What a host needs to compute: no words. */
export type Call = Pick<Entry, "call" | "arity">;

/** What is told about a function, without the function. */
export type Texts = Omit<Entry, keyof Call>;
