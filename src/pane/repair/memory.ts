import type { BookPort } from "../../workbook/port";
import type { PlaceMemory } from "../place-list";
import type { Memory as Writing } from "../review";

export interface Memory extends Writing {
  readonly places: PlaceMemory;
}

const memories = new WeakMap<BookPort, Memory>();

/** Kept while the workbook is open. */
export function memoryOf(port: BookPort): Memory {
  const known = memories.get(port) ?? { written: null, places: { seen: new Set(), last: null } };
  memories.set(port, known);
  return known;
}
