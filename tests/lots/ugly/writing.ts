import type { Workbook} from "@cj-tech-master/excelts";
import { type Worksheet } from "@cj-tech-master/excelts";
import { columnName } from "../../../src/workbook/xlsx/address";

export type Content = string | number | { readonly formula: string; readonly result: string | number } | null;

/** A native formula with the value that it had when the file was saved. */
export const formula = (text: string, result: string | number): Content => ({ formula: text, result });

export interface Layout {
  readonly headings: readonly (string | null)[];
  readonly headingRow: number;
  readonly rows: readonly (readonly Content[])[];
  /** By letter. */
  readonly formats?: Readonly<Record<string, string>>;
}

/** A list as people make one: headings in some row, lots below. */
export function listOn(sheet: Worksheet, { headings, headingRow, rows, formats = {} }: Layout): void {
  headings.forEach((heading, i) => {
    if (heading !== null) sheet.getCell(headingRow, i + 1).value = heading;
  });
  sheet.getRow(headingRow).font = { bold: true };
  rows.forEach((row, r) => row.forEach((content, c) => put(sheet, headingRow + 1 + r, c + 1, content)));
  for (const [letter, numFmt] of Object.entries(formats)) rows.forEach((_, r) => (sheet.getCell(`${letter}${headingRow + 1 + r}`).numFmt = numFmt));
}

export function put(sheet: Worksheet, row: number, column: number, content: Content): void {
  if (content === null) return;
  const cell = sheet.getCell(`${columnName(column)}${row}`);
  cell.value = typeof content === "object" ? { formula: content.formula, result: content.result } : content;
}

export async function bytesOf(book: Workbook): Promise<Uint8Array> {
  return new Uint8Array(await book.xlsx.writeBuffer());
}

/** 1 March 2026, as a spreadsheet counts days. */
const FIRST_OF_MARCH = 46082;
export const march = (day: number): number => FIRST_OF_MARCH + day - 1;
