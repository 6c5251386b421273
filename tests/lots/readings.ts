import { findLots } from "../../src/lots/find";
import type { Proposal } from "../../src/lots/list";
import { SheetReading, readSheets } from "../../src/lots/sheet-reading";
import type { CellReading } from "../../src/workbook/port";
import { columnName } from "../../src/workbook/xlsx/address";
import { FilePort } from "../../src/workbook/file-port";
import { openXlsx } from "../../src/workbook/file";
import { type UglyBook, uglyBooks } from "./ugly/books";

export interface Opened {
  readonly bytes: Uint8Array;
  readonly port: FilePort;
  readonly sheets: readonly SheetReading[];
}

export async function open(bytes: Uint8Array): Promise<Opened> {
  const port = new FilePort(openXlsx(bytes));
  return { bytes, port, sheets: await readSheets(port) };
}

export const openUgly = async (name: UglyBook): Promise<Opened> => open(await uglyBooks[name]());

export interface Place {
  readonly proposal: Proposal;
  readonly sheet: SheetReading;
}

/** The place that is proposed first. */
export function firstPlace({ sheets }: Opened): Place {
  const [proposal] = findLots(sheets).proposals;
  const sheet = sheets.find(({ info }) => info.name === proposal?.list.sheet);
  if (!proposal || !sheet) throw new Error("No place was proposed");
  return { proposal, sheet };
}

/** What was matched, short: "gross E lb", with a ? where something is to be asked. */
export const shortly = ({ matches }: Pick<Proposal, "matches">): string[] =>
  matches.map(({ field, column, unit }) => [field, column.letter, unit === null ? null : (unit.symbol ?? (unit.from === "unit column" ? "by unit column" : "?"))].filter((part) => part !== null).join(" "));

/** Below its heading, cells; a text that begins with = is a formula, here without a value. */
export type Column = readonly [heading: string, ...cells: (string | number)[]];

/** A sheet with these columns from B3 on. */
export function sheetOf(all: readonly Column[], name = "Lots"): SheetReading {
  const cell = (content: string | number | undefined): CellReading =>
    typeof content === "string" && content.startsWith("=") ? { value: "", formula: content, error: false } : { value: content ?? null, formula: null, error: false };
  const height = Math.max(...all.map(({ length }) => length));
  const rows = Array.from({ length: height }, (_, r) => all.map((column) => cell(column[r])));
  const used = `B3:${columnName(all.length + 1)}${height + 2}`;
  return new SheetReading({ name, isVisible: true, isProtected: false, used, tables: [], hiddenColumns: [], hasHiddenRows: false, merged: [] }, rows);
}
