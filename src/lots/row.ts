import { massUnits } from "../core/measure/mass";
import type { CellWrite, Note } from "../workbook/port";
import { columnFormula } from "./column-formula";
import { dayOf, dayText } from "./calendar";
import type { LotMatch } from "./corrections";
import { type FieldId, fieldOf } from "./fields";
import { freeRow } from "./free-row";
import { type Given, type LotInput, converted, isCellGiven } from "./given";
import { type ColumnMatch, type ListColumn, matchOf } from "./list";
import { type ShopTerms, lotFormula } from "./lot-formula";
import { Operands, cellText } from "./operands";
import { type SheetReading, isFilled, isTyped } from "./sheet-reading";
import { unitIn } from "./words";

export interface RowCell {
  /** Null for a column of the user's own that no field fits. */
  readonly field: FieldId | null;
  readonly heading: string;
  readonly write: CellWrite;
  /** Where its content comes from, as a sentence. */
  readonly why: string;
  readonly overwrites: boolean;
}

/** Where most of a row comes from. */
export const WHY = { given: "what you gave", above: "the formula of the cells above it", ours: "a formula of Lotwright over the row's own cells" } as const;

export interface NewRow {
  readonly row: number;
  readonly cells: readonly RowCell[];
  readonly notes: readonly Note[];
  /** The range that the table must take up so that it holds the row; null where there is none, or it holds it already. */
  readonly tableRange: string | null;
  /** Sums below the list that can take the row in; each overwrites a formula, so that it needs its own tick. */
  readonly widened: readonly CellWrite[];
  readonly remarks: readonly string[];
}

export interface RowOptions {
  readonly shop?: ShopTerms;
  /** Names of columns instead of cells, for a table in a host that knows them. */
  readonly tableReferences?: boolean;
  /** The host can have a table take up one more row; else the user is told to do it. */
  readonly canGrowTables?: boolean;
  /** Fields whose filled cell may be written over. */
  readonly overwrite?: ReadonlySet<FieldId>;
}

/** What a new lot writes into the list, or sentences that say what is in the way. */
export function newRow(sheet: SheetReading, { list, matches }: LotMatch, given: LotInput, options: RowOptions = {}): NewRow | readonly string[] {
  if (sheet.info.isProtected) return [`Sheet ‘${list.sheet}’ is protected: unprotect it (Review, Unprotect Sheet), then look again`];
  const place = freeRow(sheet, list, matchOf(matches, "lot")?.column.number ?? null, options.canGrowTables === true);
  if (typeof place === "string") return [place];
  const { row } = place;
  const rowUnit = unitOfRow(given, matchOf(matches, "unit"));
  const present = presentFields(sheet, matches, given, row, (match) => columnFormula(sheet, list, match.column.number, row) !== null);
  const table = options.tableReferences === true && list.table !== null ? list.table : null;
  const operands = new Operands({ sheet: list.sheet, row, matches, given, rowUnit, present, table });
  const cells: RowCell[] = [];
  const notes: Note[] = [];
  const refusals: string[] = [];
  const remarks: string[] = [...place.remarks];

  const put = (column: ListColumn, field: FieldId | null, content: CellWrite["content"], why: string, more: Pick<CellWrite, "asText" | "numberFormat"> = {}): void => {
    const before = sheet.at(row, column.number);
    if (before.formula === content || (before.formula === null && before.value === content)) return;
    const overwrites = isFilled(before);
    if (overwrites && (field === null || !options.overwrite?.has(field))) {
      if (field !== null && given[field] !== undefined) remarks.push(`${column.letter}${row} (${column.heading}) is filled and stays as it is: tick it to write over it`);
      return;
    }
    const like = list.rows.length > 0 ? { like: `${column.letter}${list.lastRow}` } : {};
    // A column that is still empty has no number format to follow.
    const above = sheet.at(list.lastRow, column.number);
    const isFirst = list.rows.length === 0 || (!isFilled(above) && above.numberFormat === undefined);
    const format = isFirst && more.numberFormat !== undefined ? { numberFormat: more.numberFormat } : {};
    cells.push({ field, heading: column.heading, why, overwrites, write: { sheet: list.sheet, cell: `${column.letter}${row}`, content, ...(more.asText ? { asText: true } : {}), ...like, ...format } });
  };

  for (const column of list.columns) {
    const match = matches.find((one) => one.column.number === column.number);
    const shared = columnFormula(sheet, list, column.number, row);
    if (!match) {
      if (shared !== null) put(column, null, shared, WHY.above);
      continue;
    }
    const { field } = match;
    const input = field === "unit" ? (given.unit ?? (rowUnit === null ? undefined : { value: rowUnit })) : given[field];
    if (input !== undefined && isCellGiven(input)) {
      const own = operandOfCell(match, input, list.sheet);
      put(column, field, own, `the cell ${input.sheet}!${input.cell}`);
    } else if (input !== undefined) {
      const written = typed(sheet, match, input, rowUnit, list.rows);
      if (typeof written === "string") {
        refusals.push(written);
        continue;
      }
      put(column, field, written.content, WHY.given, { asText: typeof written.content === "string", ...formatOf(match) });
      if (written.note !== null) notes.push({ sheet: list.sheet, cell: `${column.letter}${row}`, note: written.note });
      if (shared !== null) remarks.push(`${column.letter}${row} (${column.heading}) gets what you gave; the cells above it hold a formula`);
    } else if (shared !== null) put(column, field, shared, WHY.above);
    else if (fieldOf(field).from.length > 0 || field === "recovery") {
      const { formula, needs } = lotFormula(field, match.unit, operands, options.shop ?? {});
      if (match.unit?.symbol === null && match.unit.from === null && fieldOf(field).kind === "mass") refusals.push(`Say the unit of column ${column.letter} ‘${column.heading}’ before a formula is written there`);
      else if (formula === null) remarks.push(`${column.letter}${row} (${column.heading}) stays empty: it needs ${needs ?? "more"}`);
      else put(column, field, formula, WHY.ours, formatOf(match));
    }
  }
  for (const [id, input] of Object.entries(given)) {
    const field = fieldOf(id as FieldId);
    if (matchOf(matches, field.id) || isCellGiven(input)) continue;
    const fault = withoutColumn(field.id, input);
    if (fault !== null) refusals.push(fault);
    else if (!TERMS.has(field.id)) remarks.push(`${field.title} has no column in the list and is not written`);
  }
  if (refusals.length > 0) return refusals;
  return { row, cells, notes, tableRange: place.tableRange, widened: place.widened, remarks };
}

/** What is given without a column goes into the formulas that need it. */
const TERMS: ReadonlySet<FieldId> = new Set(["tare", "fineness", "price", "payable", "refiningCharge", "treatmentCharge", "lotCharges", "deduction", "unit"]);

function withoutColumn(field: FieldId, given: Given): string | null {
  const { kind } = fieldOf(field);
  const symbol = kind === "fineness" ? "as written" : kind === "per mass" ? (given.unit ?? "ozt") : (given.unit ?? null);
  const read = converted(field, given, symbol);
  return typeof read === "string" ? read : null;
}

/** Fields whose cell in the row will hold something. */
function presentFields(sheet: SheetReading, matches: readonly ColumnMatch[], given: LotInput, row: number, hasFormula: (match: ColumnMatch) => boolean): ReadonlySet<FieldId> {
  const present = new Set<FieldId>();
  for (const match of matches) if (given[match.field] !== undefined || hasFormula(match) || isTyped(sheet.at(row, match.column.number))) present.add(match.field);
  if (matchOf(matches, "unit") && unitOfRow(given, matchOf(matches, "unit")) !== null) present.add("unit");
  // Computed fields come after what they are computed from, whatever the order of the columns.
  for (let before = -1; before !== present.size; ) {
    before = present.size;
    for (const { field } of matches) {
      const { from } = fieldOf(field);
      if (from.length > 0 && from.every((id) => present.has(id) || (id === "tare" && present.has("gross")) || (given[id] !== undefined && !matchOf(matches, id)))) present.add(field);
    }
  }
  return present;
}

function unitOfRow(given: LotInput, unitColumn: ColumnMatch | undefined): string | null {
  if (!unitColumn) return null;
  const told = given.unit;
  if (told && !isCellGiven(told) && typeof told.value === "string") return told.value;
  return given.gross?.unit ?? given.net?.unit ?? given.tare?.unit ?? null;
}

interface Written {
  readonly content: CellWrite["content"];
  readonly note: string | null;
}

function typed(sheet: SheetReading, match: ColumnMatch, given: Given, rowUnit: string | null, rows: readonly number[]): Written | string {
  const { field, column, unit } = match;
  const kept = unit?.from === "unit column" ? rowUnit : (unit?.symbol ?? null);
  const written = converted(field, given, kept);
  if (typeof written === "string") return written;
  const last = rows.map((row) => sheet.at(row, column.number)).filter(isTyped).at(-1)?.value;
  if (field === "unit" && typeof written.content === "string") return { ...written, content: spelledAsAbove(sheet, column, rows, written.content) };
  // A column whose dates are texts goes on with texts.
  if (field === "date" && typeof last === "string" && /^\d{4}-\d{2}-\d{2}$/.test(last) && typeof written.content === "number") return { ...written, content: dayText(dayOf(written.content)) };
  return written;
}

/** "lbs" where the column says lbs. */
function spelledAsAbove(sheet: SheetReading, { number }: ListColumn, rows: readonly number[], unit: string): string {
  const wanted = massUnits.lookUp(unit)?.symbol;
  const same = rows.map((row) => sheet.text(row, number)).filter((text) => unitIn(text)?.unit === wanted && wanted !== undefined && massUnits.lookUp(text) !== undefined);
  return same.at(-1) ?? unit;
}

/** Of a column that has none yet. */
function formatOf({ field, unit }: ColumnMatch): Pick<CellWrite, "numberFormat"> {
  const { kind } = fieldOf(field);
  if (kind === "date") return { numberFormat: "yyyy-mm-dd" };
  if (kind === "share" && unit?.symbol === "fraction") return { numberFormat: "0.0%" };
  if (field === "payout") return { numberFormat: "#,##0.00" };
  return ["fineWeight", "copper", "acid"].includes(field) ? { numberFormat: "#,##0.000" } : {};
}

/** A formula that takes over the cell's number, told in the unit of the column. */
function operandOfCell({ unit, field }: ColumnMatch, input: { readonly sheet: string; readonly cell: string; readonly unit?: string }, sheet: string): string {
  const text = cellText(input, sheet);
  const { kind } = fieldOf(field);
  if (input.unit === undefined || unit?.symbol === null || unit === null || unit.symbol === input.unit) return `=${text}`;
  if (kind === "per mass") return `=LOT.PRICE(${text},"${input.unit}","${unit.symbol}")`;
  return kind === "mass" ? `=LOT.WEIGHT(${text},"${input.unit}","${unit.symbol}")` : `=${text}`;
}
