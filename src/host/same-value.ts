import type { CellContent } from "../engine/outcome";

/** Two computations of one formula may differ in the last digits that a spreadsheet keeps. */
const LAST_DIGITS = 1e-12;

export function sameValue(a: CellContent, b: CellContent): boolean {
  if (typeof a === "number" && typeof b === "number") return a === b || Math.abs(a - b) <= LAST_DIGITS * Math.max(Math.abs(a), Math.abs(b));
  return a === b || ((a ?? "") === "" && (b ?? "") === "");
}
