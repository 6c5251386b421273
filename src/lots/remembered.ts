import { saying } from "./assign";
import { contentOf, fitOf } from "./content";
import { type LotMatch, chosen } from "./corrections";
import { type FieldId, fieldOf, fields } from "./fields";
import { proposalsOn } from "./find";
import type { ColumnMatch, ColumnUnit, ListColumn, LotList } from "./list";
import type { SheetReading } from "./sheet-reading";
import { plain, readHeading } from "./words";

/** A match as the workbook keeps it: by heading and by place, so that it is found again when columns have moved. */
export interface StoredMatch {
  readonly sheet: string;
  readonly table: string | null;
  readonly columns: readonly StoredColumn[];
}

interface StoredColumn {
  readonly field: FieldId;
  readonly heading: string;
  readonly letter: string;
  /** Which of several columns with this heading, counted from 1. */
  readonly which: number;
  readonly unit: ColumnUnit | null;
}

export interface Remembered extends LotMatch {
  /** Sentences for what moved, was renamed or is gone. */
  readonly changes: readonly string[];
}

export const stored = ({ list, matches }: LotMatch): StoredMatch => ({
  sheet: list.sheet,
  table: list.table,
  columns: matches.map(({ field, column, unit }) => ({ field, heading: column.heading, letter: column.letter, which: sameHeading(list.columns, column.heading).indexOf(column) + 1, unit })),
});

/** What was read from the workbook's settings, or null where it is no match that was stored. */
export function readStored(value: unknown): StoredMatch | null {
  if (!isRecord(value) || typeof value["sheet"] !== "string" || !Array.isArray(value["columns"])) return null;
  const columns = value["columns"].map(readColumn);
  if (columns.some((column) => column === null)) return null;
  return { sheet: value["sheet"], table: typeof value["table"] === "string" ? value["table"] : null, columns: columns.filter((column) => column !== null) };
}

function readColumn(value: unknown): StoredColumn | null {
  if (!isRecord(value)) return null;
  const { field, heading, letter, which, unit } = value;
  const known = fields.find(({ id }) => id === field);
  if (!known || typeof heading !== "string" || typeof letter !== "string" || typeof which !== "number") return null;
  if (!isRecord(unit)) return { field: known.id, heading, letter, which, unit: null };
  const { symbol, from } = unit;
  const source = SOURCES.find((one) => one === from) ?? null;
  return { field: known.id, heading, letter, which, unit: { symbol: typeof symbol === "string" ? symbol : null, from: source } };
}

const SOURCES = ["heading", "unit column", "cells", "told"] as const;
const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> => typeof value === "object" && value !== null && !Array.isArray(value);

const sameHeading = (columns: readonly ListColumn[], heading: string): ListColumn[] => columns.filter((column) => plain(column.heading) === plain(heading));

/** Finds a stored match again in the workbook as it is now, or says why not. */
export function remembered(match: StoredMatch, sheets: readonly SheetReading[]): Remembered | string {
  const places = sheets.flatMap((sheet) => proposalsOn(sheet).map(({ list }) => ({ sheet, list, kept: keptShare(match, list) })));
  const [best] = places
    .filter(({ kept }) => kept >= 0.5)
    .sort((a, b) => closeness(match, b.list) - closeness(match, a.list) || b.kept - a.kept);
  if (!best) return notFound(match, sheets);
  const { list, sheet } = best;
  if (sheet.info.isProtected) return `Sheet ‘${list.sheet}’ is protected now: unprotect it (Review, Unprotect Sheet), then look again`;
  const changes: string[] = [];
  if (list.sheet !== match.sheet) changes.push(`The list of lots is now on sheet ‘${list.sheet}’ (it was on ‘${match.sheet}’)`);
  const claimed = new Set<ListColumn>();
  const found = new Map<FieldId, ColumnMatch>();
  for (const column of match.columns) {
    const same = sameHeading(list.columns, column.heading);
    const at = same[Math.min(column.which, same.length) - 1];
    if (!at) continue;
    claimed.add(at);
    if (at.letter !== column.letter) changes.push(`‘${at.heading}’ moved from column ${column.letter} to ${at.letter}`);
    found.set(column.field, { field: column.field, column: at, unit: column.unit, reason: `as it was set up: heading ‘${at.heading}’`, doubt: at.isHidden ? { degree: 0.2, sentence: `Column ${at.letter} is hidden` } : null });
  }
  for (const column of match.columns.filter(({ field }) => !found.has(field))) {
    const renamed = list.columns.find((one) => one.letter === column.letter && !claimed.has(one) && mayBe(column.field, one, list, sheet));
    if (!renamed) {
      changes.push(`The column ‘${column.heading}’ (${fieldOf(column.field).title.toLowerCase()}) is gone: choose another, or leave it out`);
      continue;
    }
    claimed.add(renamed);
    const sentence = `The heading of column ${renamed.letter} was ‘${column.heading}’ and is now ‘${renamed.heading}’: is it still ${fieldOf(column.field).title.toLowerCase()}?`;
    changes.push(sentence);
    found.set(column.field, { ...chosen(column.field, renamed, list, sheet, found.has("unit")), reason: "the same place as before", doubt: { degree: 0.6, sentence } });
  }
  return { list, matches: fields.flatMap(({ id }) => found.get(id) ?? []), changes };
}

const keptShare = ({ columns }: StoredMatch, list: LotList): number =>
  columns.filter(({ heading }) => sameHeading(list.columns, heading).length > 0).length / Math.max(1, columns.length);

const closeness = ({ sheet, table }: StoredMatch, list: LotList): number => (list.sheet === sheet ? 2 : 0) + (list.table === table ? 1 : 0);

/** A heading that says nothing known can stand over anything that fits; one that says another field cannot. */
function mayBe(field: FieldId, column: ListColumn, list: LotList, sheet: SheetReading): boolean {
  const heading = readHeading(column.heading);
  const { fit } = fitOf(fieldOf(field).kind, contentOf(list.rows.map((row) => sheet.at(row, column.number))), heading.measure);
  const own = saying(fieldOf(field), heading);
  return fit >= 0 && fields.every((other) => other.id === field || saying(other, heading) <= Math.max(own, 0.5));
}

function notFound(match: StoredMatch, sheets: readonly SheetReading[]): string {
  const here = sheets.find(({ info }) => info.name.toLowerCase() === match.sheet.toLowerCase());
  return here
    ? `The list of lots on sheet ‘${match.sheet}’ can no longer be found by its headings (${match.columns.slice(0, 3).map(({ heading }) => `‘${heading}’`).join(", ")}, …): set it up again`
    : `Sheet ‘${match.sheet}’, on which lots were listed, is gone: set up where lots live again`;
}
