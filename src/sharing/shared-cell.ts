import type { CellContent } from "../workbook/port";

/** A cell whose LOT formula, or part of one that spilled, is another content in the shared copy. */
export interface SharedCell {
  readonly sheet: string;
  /** K5 */
  readonly cell: string;
  readonly heading: string | null;
  /** The formula with LOT.NAME(…); for a cell that a formula elsewhere fills, where that one stands. */
  readonly was: string | { readonly filledBy: string };
  /** The ordinary formula that stands there now; null where it is the value. */
  readonly now: string | null;
  readonly value: CellContent;
  readonly error: boolean;
  readonly numberFormat: string | undefined;
  /** In words; of a filled cell, nothing. */
  readonly working: string;
  readonly constants: string;
}

export const placeOf = ({ sheet, cell }: Pick<SharedCell, "sheet" | "cell">): string =>
  /^[\p{L}_][\p{L}\p{N}_]*$/u.test(sheet) && !/^(?:[a-z]{1,3}\d+|r\d*c?\d*|c\d*)$/i.test(sheet) ? `${sheet}!${cell}` : `'${sheet.replaceAll("'", "''")}'!${cell}`;
