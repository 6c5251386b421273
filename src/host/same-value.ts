import type { CellContent } from "../engine/outcome";

/** Two computations of one formula may differ in the last digits that a spreadsheet keeps. */
const LAST_DIGITS = 1e-12;
/** What a difference of much larger numbers leaves of theirs. */
const NOISE = 1e-11;

export function sameValue(a: CellContent, b: CellContent): boolean {
  if (typeof a === "number" && typeof b === "number") return a === b || Math.abs(a - b) <= Math.max(NOISE, LAST_DIGITS * Math.abs(a), LAST_DIGITS * Math.abs(b));
  return a === b || ((a ?? "") === "" && (b ?? "") === "");
}
