import type { AccountId } from "../../journal/accounts";
import type { BookPort } from "../../workbook/port";
import type { Memory, Written } from "../review";

/** What was chosen and typed, and is kept nowhere yet. */
export interface Draft extends Memory {
  /** As 2026-03. */
  month: string | null;
  readonly names: Map<AccountId, string>;
  isNaming: boolean;
  /** The account names that were kept last, so that they can be taken back. */
  readonly kept: Memory;
}

const drafts = new WeakMap<BookPort, Draft>();

/** Kept while the workbook is open: a pane that is closed opens again where it was. */
export function draftOf(port: BookPort): Draft {
  const nothing: Written | null = null;
  const known = drafts.get(port) ?? { month: null, names: new Map(), isNaming: false, written: nothing, kept: { written: nothing } };
  drafts.set(port, known);
  return known;
}
