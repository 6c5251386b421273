/** What a cell holds: a number, a text, a truth value, an error code such as "#VALUE!", or nothing. */
export type CellContent = number | string | boolean | null;

export interface CellReading {
  readonly value: CellContent;
  /** With its equals sign, or null where the cell holds a plain value. */
  readonly formula: string | null;
  /** True where `value` is an error; `message` then says why when the grid knows. */
  readonly error: boolean;
  readonly message?: string;
}

/** Why a cell shows an error: its code, such as "#VALUE!", and what to do about it. */
export interface CellError {
  readonly error: string;
  readonly message: string;
}

/** A cell of a spill may have an error of its own. */
export type OutcomeCell = CellContent | CellError;

/** What a formula gives: one value, an error, or the rows of a spill. */
export type Outcome = OutcomeCell | readonly (readonly OutcomeCell[])[];

export const isCellError = (outcome: Outcome): outcome is CellError =>
  typeof outcome === "object" && outcome !== null && "error" in outcome;
