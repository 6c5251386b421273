import type { BookPort } from "../../workbook/port";
import type { PlaceMemory } from "../place-list";

const memories = new WeakMap<BookPort, PlaceMemory>();

/** Kept while the workbook is open. */
export function memoryOf(port: BookPort): PlaceMemory {
  const known = memories.get(port) ?? { seen: new Set(), last: null };
  memories.set(port, known);
  return known;
}
