import type { CellWrite } from "../workbook/port";
import { columnFormula } from "./column-formula";
import type { LotMatch } from "./corrections";
import { type FieldId, fieldOf } from "./fields";
import { type LotInput, converted } from "./given";
import { type ColumnMatch, matchOf } from "./list";
import type { ListedLot } from "./listed-lot";
import { lotFormula } from "./lot-formula";
import { Operands, cellText } from "./operands";
import { type SheetReading, isFilled } from "./sheet-reading";

/** A cell of the lot's row that settling writes. */
export interface SettledCell {
  readonly write: CellWrite;
  readonly heading: string;
  readonly why: string;
}

export interface SettledRow {
  readonly cells: readonly SettledCell[];
  /** The statement's payout in place of the row's own formula, for where the two differ. */
  readonly payoutInstead: SettledCell | null;
  /** Sentences for what the list has no place for, and for what stays as it is. */
  readonly remarks: readonly string[];
}

/** What settling writes into the lot's row: typed values where the column is typed, formulas where it computes. */
export function settledRow(sheet: SheetReading, { list, matches }: LotMatch, lot: ListedLot, told: LotInput, statement: { readonly sheet: string; readonly payout: string }): SettledRow {
  const { row } = lot;
  const cells: SettledCell[] = [];
  const remarks: string[] = [];
  const typed = new Set<FieldId>(["outturn", "fineness", "finenessBasis", "status"]);
  const will = new Set<FieldId>([...(Object.keys(told) as FieldId[]), ...matches.flatMap(({ field, column }) => (isFilled(sheet.at(row, column.number)) ? [field] : []))]);
  const unit = lot.value("unit");
  const operands = new Operands({ sheet: list.sheet, row, matches, given: told, rowUnit: unit === null ? null : String(unit), present: will, table: null });
  const like = (number: number): Pick<CellWrite, "like"> => {
    const other = list.rows.filter((one) => one !== row && isFilled(sheet.at(one, number))).at(-1);
    const match = list.columns.find((column) => column.number === number);
    return other === undefined || !match || sheet.at(row, number).numberFormat !== undefined ? {} : { like: `${match.letter}${other}` };
  };
  const planned = ({ column }: ColumnMatch, content: CellWrite["content"], why: string, asText = false): SettledCell => ({ heading: column.heading, why, write: { sheet: list.sheet, cell: `${column.letter}${row}`, content, ...(asText ? { asText } : {}), ...like(column.number) } });
  const put = (match: ColumnMatch, content: CellWrite["content"], why: string, asText = false): void => {
    if (sheet.at(row, match.column.number).value !== content) cells.push(planned(match, content, why, asText));
  };
  const ofStatement = `=${cellText({ sheet: statement.sheet, cell: statement.payout.replaceAll("$", "") }, list.sheet)}`;
  let payoutInstead: SettledCell | null = null;

  for (const field of typed) {
    const input = told[field];
    if (input === undefined || "cell" in input) continue;
    const match = matchOf(matches, field);
    if (!match) {
      if (field !== "finenessBasis" && field !== "status") remarks.push(`${fieldOf(field).title} has no column in the list: it stands on the statement alone`);
      continue;
    }
    const held = sheet.at(row, match.column.number);
    if (held.formula !== null) {
      remarks.push(`${match.column.letter}${row} (${match.column.heading}) holds a formula and stays as it is`);
      continue;
    }
    const symbol = match.unit?.from === "unit column" ? (unit === null ? null : String(unit)) : (match.unit?.symbol ?? null);
    const written = converted(field, input, symbol);
    if (typeof written === "string") remarks.push(`${match.column.letter}${row} (${match.column.heading}) is not written: ${written}`);
    else put(match, written.content, "what you gave", typeof written.content === "string");
  }
  for (const field of ["fineWeight", "recovery", "payout"] as const) {
    const match = matchOf(matches, field);
    if (!match) continue;
    // A formula that stands there follows by itself.
    if (sheet.at(row, match.column.number).formula !== null) {
      if (field === "payout") payoutInstead = planned(match, ofStatement, "the payout of the statement, in place of the formula");
      continue;
    }
    const shared = columnFormula(sheet, { ...list, rows: list.rows.filter((one) => one !== row) }, match.column.number, row);
    const own = shared === null ? lotFormula(field, match.unit, operands, {}).formula : null;
    if (shared !== null) put(match, shared, "the formula of the cells above it");
    else if (field === "payout") put(match, ofStatement, "the payout of the statement");
    else if (own !== null) put(match, own, "a formula of Lotwright over the row's own cells");
  }
  return { cells, payoutInstead, remarks };
}

/** The word by which the list says that a lot is settled: the one that most lots with an outturn have. */
export function settledWord(lots: readonly ListedLot[]): string {
  const counts = new Map<string, number>();
  for (const lot of lots) {
    const status = lot.value("status");
    if (typeof status === "string" && lot.value("outturn") !== null) counts.set(status, (counts.get(status) ?? 0) + 1);
  }
  const [best] = [...counts].sort(([, a], [, b]) => b - a);
  return best?.[0] ?? "settled";
}
