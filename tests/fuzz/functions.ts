import { catalogue } from "../../src/catalogue/catalogue";
import type { Entry } from "../../src/catalogue/entry";
import { Reference } from "../../src/functions/reference";
import { columnName } from "../../src/workbook/xlsx/address";
import { random } from "../random";
import { argumentList } from "./argument-lists";
import { type Judged, isBroken, judgedCall, judgedExcelCall, judgedReadings } from "./broken";
import { inExcel } from "./cell-error";
import { smallest } from "./smallest";
import type { Tally } from "./tally";

type Way = (entry: Entry, cells: readonly unknown[]) => Judged;

/** Each case is called; every so many is also called as Excel does, worked out, and worked out over references. */
const ways: readonly { readonly every: number; readonly of: Way }[] = [
  { every: 1, of: judgedCall },
  { every: 8, of: judgedExcelCall },
  { every: 16, of: judgedReadings },
  { every: 16, of: (entry, cells) => judgedReadings(entry, cells.map(referenceTo)) },
];

const referenceTo = (cell: unknown, i: number): Reference => {
  const column = columnName(i + 1);
  return new Reference(Array.isArray(cell) ? `${column}1:${column}${Math.max(1, cell.length)}` : `${column}1`, cell);
};

const SLOW_MS = 5000;

/** So many argument lists for every function of the catalogue. */
export async function fuzzFunctions(seed: number, cases: number, tally: Tally): Promise<void> {
  inExcel();
  for (const [n, entry] of catalogue.entries()) {
    const r = random(seed + n);
    for (let i = 0; i < cases; i++) {
      const cells = argumentList(r, entry);
      for (const way of ways) if (i % way.every === 0) await judge(entry, cells, way.of, tally, way.every === 1);
    }
  }
}

function judge(entry: Entry, cells: readonly unknown[], way: Way, tally: Tally, counts: boolean): Promise<void> | undefined {
  const began = performance.now();
  const judged = way(entry, cells);
  const took = performance.now() - began;
  if (isBroken(judged)) return report(entry, cells, way, judged.broken, tally);
  if (took > SLOW_MS) tally.fail({ what: entry.name, input: shown(cells), broken: `took ${Math.round(took / 1000)} s` });
  else if (counts) tally.count(entry.name, judged);
  return undefined;
}

async function report(entry: Entry, cells: readonly unknown[], way: Way, broken: string, tally: Tally): Promise<void> {
  const least = await smallest(cells, smallerLists, (list) => isBroken(way(entry, list)));
  const again = way(entry, least);
  tally.fail({ what: entry.name, input: shown(least), broken: isBroken(again) ? again.broken : broken });
}

/** Without an argument's value, with fewer rows in a range, with a shorter text. */
const smallerLists = (cells: readonly unknown[]): readonly (readonly unknown[])[] => cells.flatMap((cell, i) => smallerCells(cell).map((less) => cells.with(i, less)));

function smallerCells(cell: unknown): readonly unknown[] {
  if (Array.isArray(cell)) return [null, ...(cell.length > 1 ? [cell.slice(0, cell.length / 2), cell.slice(cell.length / 2)] : (cell as unknown[]).flatMap((row) => (Array.isArray(row) && row.length > 1 ? [[row.slice(0, 1)], [row.slice(1)]] : [])))];
  if (typeof cell === "string" && cell.length > 1) return [null, cell.slice(0, cell.length / 2), cell.slice(cell.length / 2)];
  return cell === null ? [] : [null];
}

/** As JSON has it, but for the numbers that it does not know. */
const shown = (cells: readonly unknown[]): string => JSON.stringify(cells, (_, value: unknown) => (typeof value === "number" && (!Number.isFinite(value) || Object.is(value, -0)) ? (Object.is(value, -0) ? "-0" : String(value)) : value)).slice(0, 1000);
