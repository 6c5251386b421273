import { lotNames } from "../formulas/lot-calls";
import { tokens } from "../formulas/tokens";
import type { WorkbookReading } from "../workbook/file-reading";
import type { CellReading } from "../workbook/port";
import type { Spot } from "../workbook/xlsx/address";
import type { ListedLot } from "./listed-lot";
import { type Contradiction, lotName } from "./reconcile-contradiction";
import type { ListColumn } from "./list";
import type { SheetReading } from "./sheet-reading";

interface Standing {
  readonly sheet: string;
  readonly spot: Spot;
}

/** What a formula comes to: it is known, or an error, or the spreadsheet alone can compute it. */
type Outcome = { readonly kind: "known"; readonly holds: unknown } | { readonly kind: "error" } | { readonly kind: "foreign" };

/** How formulas are computed afresh; whoever asks for the reconciling brings it, since it takes more than lots to explain one. */
export interface Fresh {
  whole(on: Standing, formula: string, book: WorkbookReading): Promise<Outcome>;
  /** What must be said where a cell and its numbers do not go together. */
  remark(on: Standing, shows: CellReading, book: WorkbookReading): Promise<string | null>;
}

/** The out-of-date values of a lot's row, and how many of its cells could be computed. */
export async function staleCells(sheet: SheetReading, columns: readonly ListColumn[], lot: ListedLot, fresh: Fresh, book: WorkbookReading): Promise<{ readonly contradictions: readonly Contradiction[]; readonly computed: number }> {
  const contradictions: Contradiction[] = [];
  let computed = 0;
  for (const { number, letter, heading } of columns) {
    const reading = sheet.at(lot.row, number);
    if (reading.formula === null || lotNames(reading.formula).length === 0) continue;
    const [on, formula] = [{ sheet: sheet.info.name, spot: { row: lot.row, column: number } }, unguarded(reading)];
    const whole = await fresh.whole(on, formula, book);
    if (whole.kind === "foreign") continue;
    computed++;
    // Explaining takes its time, and nearly all cells show what they give.
    if (whole.kind === "known" && firstOf(whole.holds) === reading.value) continue;
    const sentence = await fresh.remark(on, { ...reading, formula }, book);
    if (sentence !== null) contradictions.push({ kind: "stale", lot: lotName(lot), row: lot.row, cell: `${letter}${lot.row}`, heading, sentence });
  }
  return { contradictions, computed };
}

const firstOf = (holds: unknown): unknown => (Array.isArray(holds) ? (holds as unknown[][])[0]?.[0] : holds);

/** A formula of ours that shows nothing while a cell is empty, without that condition, where it shows something. */
function unguarded({ formula, value }: CellReading): string {
  const whole = formula ?? "";
  if (value === "" || !/^=\s*IF\s*\(/i.test(whole)) return whole;
  const all = tokens(whole);
  let depth = 0;
  const cuts: number[] = [];
  for (const { kind, start } of all) {
    if (kind === "open") depth++;
    if (kind === "separator" && depth === 1) cuts.push(start);
    if (kind === "close" && --depth === 0) cuts.push(start);
  }
  const [first, second, end] = cuts;
  if (cuts.length !== 3 || first === undefined || second === undefined || end !== whole.trimEnd().length - 1) return whole;
  return whole.slice(first + 1, second).trim() === '""' ? `=${whole.slice(second + 1, end).trim()}` : whole;
}
