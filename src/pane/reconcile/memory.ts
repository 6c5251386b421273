import type { Contradiction } from "../../lots/reconcile";
import type { BookPort } from "../../workbook/port";

export interface Memory {
  /** Cells that were gone to, each with what was said of it: what is said anew is new again. */
  readonly seen: Set<string>;
  /** The last of them. */
  last: string | null;
}

const memories = new WeakMap<BookPort, Memory>();

/** Kept while the workbook is open, so that a pane that is closed opens again where it was. */
export function memoryOf(port: BookPort): Memory {
  const known = memories.get(port) ?? { seen: new Set(), last: null };
  memories.set(port, known);
  return known;
}

export const keyOf = ({ kind, cell, sentence }: Contradiction): string => `${kind} ${cell} ${sentence}`;
