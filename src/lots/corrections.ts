import type { CellWrite } from "../workbook/port";
import { columnName } from "../workbook/xlsx/address";
import { unitOf } from "./column-unit";
import { contentOf, fitOf } from "./content";
import { type FieldId, fieldOf, fields } from "./fields";
import type { ColumnMatch, ListColumn, LotList, Proposal } from "./list";
import { type SheetReading, isFilled } from "./sheet-reading";
import { readHeading } from "./words";

/** What the user changes of a proposal. */
export type Correction =
  /** This column holds the field; whatever else it was taken for it no longer is. */
  | { readonly kind: "column"; readonly field: FieldId; readonly column: string }
  | { readonly kind: "unit"; readonly field: FieldId; readonly symbol: string }
  | { readonly kind: "leave out"; readonly field: FieldId }
  /** A column for it is added at the right of the list. */
  | { readonly kind: "add"; readonly field: FieldId; readonly unit?: string };

export interface LotMatch {
  readonly list: LotList;
  readonly matches: readonly ColumnMatch[];
}

export interface Corrected extends LotMatch {
  /** The headings of columns that are added. */
  readonly writes: readonly CellWrite[];
  /** The range that the table must take up so that it holds the added columns; null where it stays. */
  readonly tableRange: string | null;
  /** Sentences for what could not be done. */
  readonly refusals: readonly string[];
}

/** Where the host cannot have a table take up a column, the user is told to add it. */
export function corrected(proposal: Proposal | LotMatch, corrections: readonly Correction[], sheet: SheetReading, canGrowTables = false): Corrected {
  const refusals: string[] = [];
  const writes: CellWrite[] = [];
  let { list } = proposal;
  let matches = proposal.matches;
  const take = (match: ColumnMatch): void => {
    matches = inFieldOrder([...matches.filter(({ field, column }) => field !== match.field && column.number !== match.column.number), match]);
  };
  for (const correction of corrections) {
    const { field } = correction;
    if (correction.kind === "leave out") matches = matches.filter((match) => match.field !== field);
    else if (correction.kind === "unit") matches = matches.map((match) => (match.field === field ? withUnit(match, correction.symbol) : match));
    else if (correction.kind === "column") {
      const column = list.columns.find(({ letter }) => letter === correction.column.toUpperCase());
      if (column) take(chosen(field, column, list, sheet, matches.some((match) => match.field === "unit")));
      else refusals.push(`Column ${correction.column} is not one of the list's (${list.columns[0]?.letter ?? ""} to ${list.columns.at(-1)?.letter ?? ""}): choose one of those, or have a column added`);
    } else {
      const added = addedColumn(field, correction.unit, list, sheet);
      if (typeof added === "string") refusals.push(added);
      else if (list.table !== null && !canGrowTables)
        refusals.push(`Table ‘${list.table}’ must take the column up: type ‘${added.column.heading}’ into ${added.column.letter}${list.headingRow} right beside its headings, so that the table grows, then look again`);
      else {
        writes.push({ sheet: list.sheet, cell: `${added.column.letter}${list.headingRow}`, content: added.column.heading, asText: true, like: `${list.columns.at(-1)?.letter ?? "A"}${list.headingRow}` });
        list = { ...list, columns: [...list.columns, added.column] };
        take(added);
      }
    }
  }
  return { list, matches, writes, tableRange: list.table !== null && writes.length > 0 ? tableRange(list, list.totalRow ?? list.lastRow) : null, refusals };
}

/** The range of a list's table when it reaches down to this row. */
export const tableRange = ({ columns, headingRow, firstRow }: LotList, lastRow: number): string =>
  `${columns[0]?.letter ?? "A"}${headingRow}:${columns.at(-1)?.letter ?? "A"}${Math.max(lastRow, firstRow)}`;

const inFieldOrder = (matches: readonly ColumnMatch[]): ColumnMatch[] => fields.flatMap(({ id }) => matches.find((match) => match.field === id) ?? []);

const withUnit = (match: ColumnMatch, symbol: string): ColumnMatch => ({ ...match, unit: { symbol, from: "told" }, doubt: null, reason: `${match.reason}; you said ${symbol}` });

/** A column that the user chose: its unit is still read from its heading, and what its cells speak against is said. */
export function chosen(field: FieldId, column: ListColumn, list: LotList, sheet: SheetReading, hasUnitColumn: boolean): ColumnMatch {
  const { kind, ...rest } = fieldOf(field);
  const { measure } = readHeading(column.heading);
  const content = contentOf(list.rows.map((row) => sheet.at(row, column.number)));
  const { unit, doubt } = unitOf({ kind, ...rest }, measure, content, hasUnitColumn);
  const fit = fitOf(kind, content, measure);
  const sentences = [doubt?.sentence, fit.asks, fit.fit < 0 ? `Its ${fit.says}` : undefined].filter((sentence) => sentence !== undefined);
  return {
    field,
    column,
    unit,
    reason: `you chose column ${column.letter}${column.heading === "" ? "" : ` ‘${column.heading}’`}; ${fit.says}`,
    doubt: sentences.length === 0 ? null : { degree: doubt?.degree ?? 0.5, sentence: sentences.join(". ") },
  };
}

function addedColumn(field: FieldId, unit: string | undefined, list: LotList, sheet: SheetReading): ColumnMatch | string {
  const number = (list.columns.at(-1)?.number ?? 0) + 1;
  const letter = columnName(number);
  const bottom = Math.max(list.lastRow + 1, list.totalRow ?? 0);
  for (let row = list.upperHeadingRow; row <= bottom; row++)
    if (isFilled(sheet.at(row, number)))
      return `Column ${letter} beside the list is not free (${letter}${row} holds something): insert a column there (right-click the letter ${letter}, Insert), then look again`;
  const symbol = unit ?? usualUnit(field);
  return { field, column: { number, letter, heading: ownHeading(field, symbol), isHidden: false }, unit: symbol === null ? null : { symbol, from: "told" }, reason: "a new column at the right of the list", doubt: null };
}

/** The heading that we give a column of ours. */
export function ownHeading(field: FieldId, symbol = usualUnit(field)): string {
  const { title, kind } = fieldOf(field);
  if (symbol === null || kind === "fineness" || kind === "share" || kind === "per thousand") return title;
  return kind === "per mass" ? `${title} (per ${symbol})` : `${title} (${symbol})`;
}

export function usualUnit(field: FieldId): string | null {
  switch (fieldOf(field).kind) {
    case "mass":
      return field === "fineWeight" || field === "outturn" ? "ozt" : "g";
    case "volume":
      return "L";
    case "per mass":
      return "ozt";
    case "fineness":
      return "as written";
    case "share":
      return "fraction";
    case "per thousand":
      return "ppt";
    default:
      return null;
  }
}
