import type { ShopFieldId } from "../../lots/shop";
import type { BookPort } from "../../workbook/port";
import type { Memory } from "../review";

/** What stands in a field, and the unit beside it. */
export interface Typed {
  readonly text: string;
  readonly unit?: string;
}

/** What was typed and is not kept yet. */
export interface Draft extends Memory {
  readonly typed: Map<ShopFieldId, Typed>;
  /** Titles of the groups that are unfolded; null where nobody has folded any yet. */
  open: ReadonlySet<string> | null;
}

const drafts = new WeakMap<BookPort, Draft>();

/** Kept while the workbook is open and stored nowhere else: a pane that is closed opens again where it was. */
export function draftOf(port: BookPort): Draft {
  const known = drafts.get(port) ?? { typed: new Map(), open: null, written: null };
  drafts.set(port, known);
  return known;
}
