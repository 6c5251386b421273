import type { Correction } from "../../lots/corrections";
import type { BookPort } from "../../workbook/port";
import type { Memory } from "../review";

export type PlaceChoice =
  /** The place that the workbook keeps. */
  | { readonly kind: "kept" }
  | { readonly kind: "found"; readonly sheet: string; readonly headingRow: number }
  | { readonly kind: "new" };

/** What was typed into one field, and the unit chosen beside it; absent where nobody has touched it. */
export interface Typed {
  texts: readonly string[];
  unit?: string;
}

/** A lot that is being set up. */
export interface Draft extends Memory {
  step: number;
  place: PlaceChoice | null;
  corrections: readonly Correction[];
  newSheet: { name?: string; unit?: string };
  typed: Map<string, Typed>;
  /** What the row of the lot shows that was written last. */
  done: { readonly shows: readonly { readonly heading: string; readonly text: string }[] } | null;
}

const drafts = new WeakMap<BookPort, Draft>();

/** Kept while the workbook is open and stored nowhere: a pane that is closed opens again where it was. */
export function draftOf(port: BookPort): Draft {
  const known = drafts.get(port);
  if (known) return known;
  const fresh: Draft = { step: 0, place: null, corrections: [], newSheet: {}, typed: new Map(), written: null, done: null };
  drafts.set(port, fresh);
  return fresh;
}

/** Makes the draft ready for another lot in the same place. */
export function beginAnew(draft: Draft): void {
  Object.assign(draft, { step: 0, place: null, corrections: [], newSheet: {}, typed: new Map(), written: null, done: null });
}
