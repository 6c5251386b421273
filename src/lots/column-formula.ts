import { shiftFormula } from "../workbook/xlsx/shift";
import type { LotList } from "./list";
import type { SheetReading } from "./sheet-reading";

/** As many rows above the new one show how a column is written. */
const LOOKED_AT = 6;

/** The formula that the column's cells above share, as it reads in another row; null where they are typed, or each its own. */
export function columnFormula(sheet: SheetReading, { rows }: LotList, column: number, row: number): string | null {
  const above = rows.slice(-LOOKED_AT);
  const formulas = above.map((from) => {
    const { formula } = sheet.at(from, column);
    return formula === null ? null : shiftFormula(formula, row - from, 0);
  });
  const counts = new Map<string, number>();
  for (const formula of formulas) if (formula !== null && !formula.includes("#REF!")) counts.set(formula, (counts.get(formula) ?? 0) + 1);
  const [best] = [...counts].sort(([a, n], [b, m]) => m - n || formulas.lastIndexOf(b) - formulas.lastIndexOf(a));
  if (!best) return null;
  const [formula, times] = best;
  // One formula among typed numbers is an exception, not the column's way; so is each row's own.
  return times * 2 > above.length || (times * 2 === above.length && formulas.at(-1) === formula) ? formula : null;
}
