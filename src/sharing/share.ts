import { find } from "../catalogue/catalogue";
import type { WorkingLine } from "../core/expression/working";
import { type Explanation, explain } from "../explaining/explain";
import { explanationText } from "../explaining/explanation-text";
import { nameOf } from "../explaining/headings";
import { lotNames } from "../formulas/lot-calls";
import { type Cell, type CellChange, FileFault, type XlsxFile, openXlsx } from "../workbook/file";
import { FileReading } from "../workbook/file-reading";
import { addressOf, cellCount, readArea } from "../workbook/xlsx/address";
import { leftovers } from "./leftovers";
import { type SharedCell, placeOf } from "./shared-cell";
import { rowOfCell, workingsSheet } from "./workings-sheet";

export interface Shared {
  readonly bytes: Uint8Array;
  readonly cells: readonly SharedCell[];
  /** Sentences for what of the add-in is still in the copy, and what to do about it. */
  readonly left: readonly string[];
}

export interface ShareOptions {
  /** Every formula of ours becomes its value. */
  readonly valuesOnly?: boolean;
  /** Told before each cell; what it gives back is waited for, so that a page can be drawn. */
  readonly step?: (what: string, done: number, of: number) => void | Promise<void>;
}

/** A copy in which no cell needs the add-in, with a sheet that tells what each of them was. The file itself is not changed. */
export async function share(file: XlsxFile, { valuesOnly = false, step = () => undefined }: ShareOptions = {}): Promise<Shared> {
  const cells: SharedCell[] = [];
  const reading = new FileReading(file);
  const found = lotCells(file);
  for (const [i, { sheet, cell, held }] of found.entries()) {
    await step(`working out ${sheet}!${cell.address}`, i, found.length);
    const on = { sheet, spot: { row: cell.row, column: cell.column } };
    const place = placeOf({ sheet, cell: cell.address });
    const explanation = await explain(on, { value: cell.value, formula: cell.formula, error: cell.error }, reading).catch((fault: unknown) => {
      throw fault instanceof FileFault ? fault : new FileFault(`Cannot share ${place}: ${fault instanceof Error ? fault.message : String(fault)}`);
    });
    const heading = await nameOf({ sheet, area: { top: cell.row, bottom: cell.row, left: cell.column, right: cell.column } }, on, reading);
    const filled = readArea(cell.fills ?? cell.address);
    if (filled && cellCount(filled) > MOST_FILLED) throw new FileFault(`Cannot share ${place}: its formula fills more than 100,000 cells, each of which would need a line on the sheet of workings: let it fill fewer`);
    for (const shared of sharedCells(explanation, heading, cell, held, valuesOnly, file)) cells.push(shared);
  }
  const name = freeName(file);
  const workings = workingsSheet(name, cells, String(find("LOT.VERSION")?.call().value() ?? ""));
  const bytes = file.patch(cells.map(change), {
    withoutAddIn: isOurs,
    ...(cells.length === 0 ? {} : { sheets: [workings], links: cells.flatMap((cell, i) => linksOf(cell, rowOfCell(i), name)) }),
  });
  return { bytes, cells, left: leftovers(openXlsx(bytes)) };
}

const MOST_FILLED = 100_000;

/** As the manifest has it. */
export const ADD_IN_ID = "93021240-466b-4817-ad91-62deb85ed67f";

/** The add-in's part in a file names our functions, or our own id. */
const isOurs = (extension: string): boolean => extension.includes("_xldudf_LOT_") || extension.toLowerCase().includes(ADD_IN_ID);

interface LotCell {
  readonly sheet: string;
  readonly cell: Cell;
  readonly held: ReadonlyMap<string, Cell>;
}

function lotCells(file: XlsxFile): LotCell[] {
  return file.sheets
    .filter(({ kind }) => kind === "worksheet")
    .flatMap(({ name }) => {
      const held = new Map([...file.cells(name)].map((cell) => [cell.address, cell]));
      return [...held.values()].flatMap((cell) => (cell.formula !== null && lotNames(cell.formula).length > 0 ? [{ sheet: name, cell, held }] : []));
    });
}

function sharedCells(explanation: Explanation, heading: string | null, cell: Cell, held: ReadonlyMap<string, Cell>, valuesOnly: boolean, file: XlsxFile): SharedCell[] {
  const area = readArea(cell.fills ?? cell.address);
  if (!area) return [];
  const twin = valuesOnly ? null : explanation.twin;
  const rows = typeof twin === "string" ? [[twin]] : (twin ?? []);
  const { sheet } = explanation.on;
  const cells: SharedCell[] = [];
  for (let row = area.top; row <= area.bottom; row++)
    for (let column = area.left; column <= area.right; column++) {
      const address = addressOf({ row, column });
      const isAnchor = address === cell.address;
      const there = held.get(address);
      cells.push({
        sheet,
        cell: address,
        heading: isAnchor ? heading : null,
        was: isAnchor ? explanation.formula : { filledBy: placeOf({ sheet, cell: cell.address }) },
        now: rows[row - area.top]?.[column - area.left] ?? null,
        value: there?.value ?? null,
        error: there?.error ?? false,
        numberFormat: there === undefined ? undefined : file.numberFormat(there.style),
        working: isAnchor ? explanationText(explanation) : "",
        constants: isAnchor ? constantsOf(explanation) : "",
      });
    }
  return cells;
}

function constantsOf({ calls }: Explanation): string {
  const lines = calls.flatMap(({ outcome }): readonly WorkingLine[] => (outcome.kind === "worked" ? outcome.working.lines : []));
  return [...new Set(lines.flatMap(({ part, text }) => (part === "constant" || part === "source" ? [text] : [])))].join("\n");
}

const change = ({ sheet, cell, now, value, error }: SharedCell): CellChange => ({ sheet, cell, formula: now, value, ...(error ? { error } : {}) });

const linksOf = ({ sheet, cell, was }: SharedCell, row: number, workings: string) => [
  { sheet: workings, cell: `A${row}`, to: placeOf({ sheet, cell }), tip: "Go to the cell" },
  ...(typeof was === "string" ? [{ sheet, cell, to: placeOf({ sheet: workings, cell: `A${row}` }), tip: "How this was computed" }] : []),
];

function freeName(file: XlsxFile): string {
  const taken = new Set(file.sheets.map(({ name }) => name.toLowerCase()));
  for (let n = 1; ; n++) {
    const name = n === 1 ? "Workings" : `Workings ${n}`;
    if (!taken.has(name.toLowerCase())) return name;
  }
}

