import { plain } from "./words";
import { type SheetReading, isFilled, isTyped } from "./sheet-reading";

export interface ListRows {
  readonly rows: readonly number[];
  readonly totalRow: number | null;
}

/** After so many rows that are no lots, a list has ended. */
const LONGEST_GAP = 4;
/** Not a client called Total Plating. */
const TOTAL = /^(?:grand |sub-? ?|sous-? ?)?(?:total|totals|totaux|sum|sums|somme|sommes|all lots|tous les lots)(?: (?:of|for|in|du|de|des|pour)\b.*)? ?[:=]?$/;
const SUMS = /\b(?:SUM|SUBTOTAL|AGGREGATE|SUMIFS?|SUMPRODUCT)\s*\(/i;

/** The rows of lots below the headings, as far as the list goes, and the total under them. */
export function listRows(sheet: SheetReading, columns: readonly number[], from: number, to: number): ListRows {
  const rows: number[] = [];
  let gap = 0;
  let totalRow: number | null = null;
  for (let row = from; row <= to && gap <= LONGEST_GAP; row++) {
    if (isTotal(sheet, columns, row)) {
      totalRow ??= row;
      gap++;
      continue;
    }
    // Text and a number in a row that follows a gap can be a note or another table: a lot has more.
    const typed = columns.filter((column) => isTyped(sheet.at(row, column))).length;
    if (typed < (gap > 0 ? Math.min(4, columns.length) : 2) || isNote(sheet, columns, row)) {
      gap++;
      continue;
    }
    rows.push(row);
    gap = 0;
    totalRow = null;
  }
  return { rows, totalRow };
}

export function isTotal(sheet: SheetReading, columns: readonly number[], row: number): boolean {
  const cells = columns.map((column) => sheet.at(row, column));
  if (cells.some(({ value }) => typeof value === "string" && TOTAL.test(plain(value)))) return true;
  const sums = cells.filter(({ formula }) => formula !== null && SUMS.test(formula) && spansRows(formula)).length;
  return sums > 0 && cells.filter(isTyped).length <= 1;
}

const spansRows = (formula: string): boolean =>
  [...formula.matchAll(/\$?[A-Z]{1,3}\$?(\d+):\$?[A-Z]{1,3}\$?(\d+)/gi)].some(([, first, last]) => first !== last) || /\[[^\]]+\]/.test(formula);

/** One long text and nothing else. */
function isNote(sheet: SheetReading, columns: readonly number[], row: number): boolean {
  const filled = columns.map((column) => sheet.at(row, column)).filter(isFilled);
  return filled.length === 1 && typeof filled[0]?.value === "string" && filled[0].value.length > 24;
}
