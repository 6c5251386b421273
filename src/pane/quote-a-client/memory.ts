import type { BookPort } from "../../workbook/port";
import type { Memory } from "../review";
import { OF_THE_LOT, type QuoteKey } from "./quote-keys";

/** What stands in a field, and the unit beside it. */
export interface Entered {
  readonly text: string;
  readonly unit?: string;
}

/** A quote that is being made. */
export interface Draft extends Memory {
  /** What the user wrote; a field that nobody touched shows what is known. */
  readonly entered: Map<QuoteKey, Entered>;
  lot: { readonly number: string; readonly row: number } | null;
}

const drafts = new WeakMap<BookPort, Draft>();

/** Kept while the workbook is open and stored nowhere: a pane that is closed opens again where it was. */
export function draftOf(port: BookPort): Draft {
  const known = drafts.get(port);
  if (known) return known;
  const fresh: Draft = { entered: new Map(), lot: null, written: null };
  drafts.set(port, fresh);
  return fresh;
}

/** Another lot, or none: what was written about the one before is not carried over to it. */
export function takeLot(draft: Draft, lot: Draft["lot"]): void {
  draft.lot = lot;
  for (const key of OF_THE_LOT) draft.entered.delete(key);
}
