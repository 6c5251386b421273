import { Workbook } from "@cj-tech-master/excelts";
import type { ListedLot } from "../../src/lots/listed-lot";
import { type LotPlace, placeChanges, readWorkbook } from "../../src/lots/where";
import { type ClosedMonth, closedMonth, refusals } from "../../src/month/close-month";
import { type MonthBasis, monthBasis } from "../../src/month/month-basis";
import type { MonthInput } from "../../src/month/month-input";
import { monthSheetName } from "../../src/month/month-places";
import { FilePort } from "../../src/workbook/file-port";
import { openXlsx } from "../../src/workbook/file";
import type { SheetReading } from "../../src/lots/sheet-reading";
import { type Content, bytesOf, listOn, march } from "../lots/ugly/writing";
import { firstPlace, open } from "../lots/readings";
import { random } from "../random";

/** A workbook in which it is set up where lots live. */
export async function placed(bytes: Uint8Array): Promise<FilePort> {
  const opened = await open(bytes);
  const { proposal } = firstPlace(opened);
  await opened.port.write(await placeChanges(opened.port, proposal));
  return new FilePort(openXlsx(opened.port.file.bytes));
}

export interface OpenPlace {
  readonly sheets: readonly SheetReading[];
  readonly place: LotPlace;
}

export async function lotsIn(port: FilePort): Promise<OpenPlace> {
  const { sheets, place } = await readWorkbook(port);
  if (place === null || typeof place === "string") throw new Error(place ?? "No place of lots");
  return { sheets, place };
}

export interface Closed extends ClosedMonth {
  readonly basis: MonthBasis;
  readonly place: LotPlace;
  readonly name: string;
  value(cell: string): Promise<number | string | boolean | null>;
  number(cell: string): Promise<number>;
}

/** Closes a month and writes its sheet into the book. */
export async function close(port: FilePort, input: MonthInput): Promise<Closed> {
  const book = await lotsIn(port);
  const basis = await monthBasis(book.place, input.month, input);
  const [refusal] = refusals(book, input, basis);
  if (refusal !== undefined) throw new Error(refusal);
  const closed = closedMonth(book, input, basis);
  await port.write([closed.change]);
  const name = monthSheetName(input.month);
  const value = async (cell: string): Promise<number | string | boolean | null> => {
    const [[found] = []] = await port.read({ sheet: name, range: cell });
    return found?.value ?? null;
  };
  return {
    ...closed, basis, place: book.place, name, value,
    async number(cell) {
      const found = await value(cell);
      if (typeof found !== "number") throw new Error(`${name}!${cell} shows ${String(found)}`);
      return found;
    },
  };
}

export const MARCH = { year: 2026, month: 3 } as const;
export const APRIL = { year: 2026, month: 4 } as const;

/** How an invented shop measures. */
export const SHOP = { scale: { value: 0.5, unit: "g" }, assay: 1, bias: 0, weighInBias: null } as const;

export const metal = (what: string, weight: number, unit: string, fineness: number | string, uncertainty: number | null = null): MonthInput["counted"][number] => ({ kind: "metal", what, weight, unit, fineness, uncertainty });
export const liquor = (what: string, litres: number, gramsPerLitre: number, uncertainty: number): MonthInput["counted"][number] => ({ kind: "liquor", what, litres, gramsPerLitre, uncertainty });

export const GRAMS = 31.1034768;

/** The fine weights of lots as a plain loop adds them up, in troy ounces. */
export const fineOf = (lots: readonly ListedLot[]): number => lots.reduce((sum, lot) => sum + (Number(lot.value("net")) * Number(lot.value("fineness"))) / 1000 / GRAMS, 0);

/** Some lots in March and April; the last of each month has no outturn. */
export async function twoMonths(perMonth = 12, seed = 20260331): Promise<Uint8Array> {
  const { between, whole } = random(seed);
  const book = new Workbook();
  const sheet = book.addWorksheet("Lots");
  const rows = Array.from({ length: 2 * perMonth }, (_, i): Content[] => {
    const r = i + 2;
    const gross = Math.round(between(500, 9000) * 10) / 10;
    const tare = Math.round(between(0, 50) * 10) / 10;
    const fineness = [925, 900, 800, 835][whole(0, 3)] ?? 925;
    const fine = ((gross - tare) * fineness) / 1000 / GRAMS;
    const isLast = (i + 1) % perMonth === 0;
    const day = march(1 + Math.floor(((i % perMonth) * 28) / perMonth) + (i < perMonth ? 0 : 31));
    return [
      `26-${String(i + 1).padStart(3, "0")}`, day, `C-${String(whole(1, 5)).padStart(2, "0")}`, gross, tare,
      { formula: `D${r}-E${r}`, result: gross - tare }, fineness, { formula: `F${r}*G${r}/1000/31.1034768`, result: fine },
      isLast ? null : Math.round(fine * between(0.96, 0.99) * 1000) / 1000, Math.round(fine * 2000) / 100,
    ];
  });
  listOn(sheet, { headings: ["Lot", "Date", "Client", "Gross (g)", "Tare (g)", "Net (g)", "Fineness (‰)", "Fine weight (ozt)", "Outturn (ozt)", "Payout"], headingRow: 1, rows, formats: { B: "yyyy-mm-dd" } });
  return bytesOf(book);
}
