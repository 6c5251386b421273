import { Workbook } from "@cj-tech-master/excelts";
import { freshValues } from "../../src/journal/fresh-values";
import { type ReconcileOptions, type Reconciled, reconcile } from "../../src/lots/reconcile";
import { FilePort } from "../../src/workbook/file-port";
import { openXlsx } from "../../src/workbook/file";
import { columnName } from "../../src/workbook/xlsx/address";
import { type OpenPlace, lotsIn, placed } from "../month/books";
import { type Content, bytesOf, formula, listOn, march } from "./ugly/writing";

export const TODAY = { year: 2026, month: 6, day: 30 } as const;

export const lookAt = async (book: OpenPlace, more: Partial<ReconcileOptions> = {}): Promise<Reconciled> => reconcile(book, { today: TODAY, shop: {}, fresh: freshValues, names: [], ...more });

export const look = async (bytes: Uint8Array, more: Partial<ReconcileOptions> = {}): Promise<Reconciled> => lookAt(await lotsIn(await placed(bytes)), more);

/** What was found, short: "payout N7". */
export const shortly = ({ contradictions }: Reconciled): string[] => contradictions.map(({ kind, cell }) => `${kind} ${cell}`);

export const HEADINGS = ["Lot", "Date", "Client", "Gross (g)", "Tare (g)", "Net (g)", "Fineness (‰)", "Fine weight (ozt)", "Price (per ozt)", "Payable", "Refining charge (per ozt)", "Treatment charge (per lb)", "Lot charges", "Payout", "Outturn (ozt)", "Recovery", "Status", "Paid on"];
const GRAMS_PER_OZT = 31.1034768;

/** A tidy list of an invented shop, as a person with a calculator would have made it. Lots stand from row 2 on. */
export function goodRows(count: number): Content[][] {
  return Array.from({ length: count }, (_, i): Content[] => {
    const r = i + 2;
    const gross = 500 + ((i * 377) % 4000) + 0.5;
    const tare = 10 + (i % 7);
    const net = gross - tare;
    const fineness = [925, 900, 800, 835][i % 4] ?? 925;
    const fine = (net * fineness) / 1000 / GRAMS_PER_OZT;
    const pay = Math.round((fine * 0.96 * (25 - 0.5) - (net / 453.59237) * 2 - 15) * 100) / 100;
    const outturn = Math.round(fine * 0.985 * 1000) / 1000;
    const isPaid = i % 5 !== 4;
    return [
      `26-${String(i + 1).padStart(3, "0")}`, march(1 + Math.floor((i * 90) / count)), `C-${String((i % 9) + 1).padStart(2, "0")}`, gross, tare,
      formula(`D${r}-E${r}`, net), fineness, formula(`F${r}*G${r}/1000/31.1034768`, fine), 25, 0.96, 0.5, 2, 15, pay,
      isPaid ? outturn : null, isPaid ? formula(`O${r}/H${r}`, outturn / fine) : null, isPaid ? "paid" : "open", isPaid ? march(12 + Math.floor((i * 90) / count)) : null,
    ];
  });
}

export async function bookOf(rows: readonly (readonly Content[])[], headings: readonly string[] = HEADINGS): Promise<Uint8Array> {
  const book = new Workbook();
  listOn(book.addWorksheet("Lots"), { headings, headingRow: 1, rows, formats: { B: "yyyy-mm-dd", J: "0.0%", P: "0.0%", R: "yyyy-mm-dd" } });
  return bytesOf(book);
}

/** The good book with some of its cells, by their addresses, changed. */
export function seeded(cells: Readonly<Record<string, Content>>, count = 20): Promise<Uint8Array> {
  const rows = goodRows(count);
  for (const [address, content] of Object.entries(cells)) {
    const [, letters = "", row = ""] = /^([A-Z]+)(\d+)$/.exec(address) ?? [];
    const column = Array.from({ length: HEADINGS.length }, (_, i) => columnName(i + 1)).indexOf(letters);
    const cellsOfRow = rows[Number(row) - 2];
    if (!cellsOfRow || column === -1) throw new Error(`${address} is not in the book`);
    cellsOfRow[column] = content;
  }
  return bookOf(rows);
}

/** The good book with formulas of ours, computed; then some stored values changed in the file alone. */
export async function withOurs(stale: Readonly<Record<string, number>>, count = 20): Promise<OpenPlace> {
  const port = await placed(await bookOf(goodRows(count)));
  await port.write(
    Array.from({ length: count }, (_, i) => i + 2).flatMap((r) => [
      { sheet: "Lots", cell: `H${r}`, content: `=LOT.FINEWEIGHT(F${r},"g",G${r})` },
      { sheet: "Lots", cell: `P${r}`, content: `=IF(O${r}="","",LOT.RECOVERY(O${r},H${r}))` },
    ]),
  );
  const bytes = port.file.patch(Object.entries(stale).map(([cell, value]) => ({ sheet: "Lots", cell, value })));
  return lotsIn(new FilePort(openXlsx(bytes)));
}
