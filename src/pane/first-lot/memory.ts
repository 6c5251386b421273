import type { BookPort } from "../../workbook/port";
import type { Memory as Writing } from "../review";

/** As it is typed; the example, which is invented, until then. */
export interface Memory extends Writing {
  weight: string;
  unit: string;
  fineness: string;
  price: string;
}

/** Sterling flatware of an invented client, at an invented price. */
export const EXAMPLE = { weight: 1250, unit: "g", fineness: 925, price: 24.5 } as const;

const memories = new WeakMap<BookPort, Memory>();

/** Kept while the workbook is open. */
export function memoryOf(port: BookPort, written: (value: number) => string): Memory {
  const known = memories.get(port) ?? { written: null, weight: written(EXAMPLE.weight), unit: EXAMPLE.unit, fineness: written(EXAMPLE.fineness), price: written(EXAMPLE.price) };
  memories.set(port, known);
  return known;
}
