import type { FieldId } from "./fields";

/** A column of a list, by its place and its heading. */
export interface ListColumn {
  /** Counted from 1. */
  readonly number: number;
  readonly letter: string;
  /** A heading in two rows is given as one. */
  readonly heading: string;
  readonly isHidden: boolean;
}

/** A place in the workbook where lots are listed. */
export interface LotList {
  readonly sheet: string;
  /** The table's name, or null for a plain range. */
  readonly table: string | null;
  readonly headingRow: number;
  /** The upper of two heading rows, else the same. */
  readonly upperHeadingRow: number;
  readonly columns: readonly ListColumn[];
  readonly firstRow: number;
  /** The last row that holds a lot; the row above the first where there is none yet. */
  readonly lastRow: number;
  /** The rows of lots, without blank rows and subtotals between. */
  readonly rows: readonly number[];
  readonly totalRow: number | null;
}

/** How the numbers of a column are to be read. */
export interface ColumnUnit {
  /** A unit of weight or volume, a scale ("ppt", "%", "fraction", "karat"), or null while it is to be asked. */
  readonly symbol: string | null;
  readonly from: "heading" | "unit column" | "cells" | "told" | null;
}

export interface Doubt {
  /** 0 to 1. */
  readonly degree: number;
  readonly sentence: string;
}

export interface ColumnMatch {
  readonly field: FieldId;
  readonly column: ListColumn;
  /** Null where the field has no unit. */
  readonly unit: ColumnUnit | null;
  readonly reason: string;
  readonly doubt: Doubt | null;
}

export interface Proposal {
  readonly list: LotList;
  readonly matches: readonly ColumnMatch[];
  /** What else should be known of the place: hidden columns, a filter, headings that nothing fits. */
  readonly remarks: readonly string[];
  /** Why this place. */
  readonly reason: string;
  /** For ranking only. */
  readonly score: number;
}

export interface Refusal {
  readonly sheet: string | null;
  readonly sentence: string;
}

export const matchOf = (matches: readonly ColumnMatch[], field: FieldId): ColumnMatch | undefined => matches.find((match) => match.field === field);
