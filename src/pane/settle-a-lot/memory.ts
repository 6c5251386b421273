import type { BookPort } from "../../workbook/port";
import type { Memory } from "../review";
import type { SettleKey } from "./settle-keys";

/** What stands in a field, and the unit beside it. */
export interface Entered {
  readonly text: string;
  readonly unit?: string;
}

/** A lot that is being settled. */
export interface Draft extends Memory {
  /** What the user wrote; a field that nobody touched shows what is known. */
  readonly entered: Map<SettleKey, Entered>;
  lot: { readonly number: string; readonly row: number } | null;
}

const drafts = new WeakMap<BookPort, Draft>();

/** Kept while the workbook is open and stored nowhere: a pane that is closed opens again where it was. */
export function draftOf(port: BookPort): Draft {
  const known = drafts.get(port) ?? { entered: new Map(), lot: null, written: null };
  drafts.set(port, known);
  return known;
}

/** What was written about the lot before is not carried over to another. */
export function takeLot(draft: Draft, lot: Draft["lot"]): void {
  draft.lot = lot;
  draft.entered.clear();
}
