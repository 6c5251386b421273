import { workbookOf } from "../engine/book";
import { isCellError, type Outcome, type OutcomeCell } from "../engine/outcome";
import { isBeyondGrid } from "../engine/wording";
import type { Cell, CellChange, CellValue, XlsxFile } from "../workbook/file";
import type { CellContent } from "../workbook/port";
import { addressOf, readAddress, type Spot } from "../workbook/xlsx/address";

/** A cell with its stored and its fresh value. */
export interface FreshCell {
  readonly place: string;
  readonly formula: string | null;
  readonly stored: CellContent;
  readonly fresh: CellContent;
  readonly differs: boolean;
}

export interface Fresh {
  readonly cells: readonly FreshCell[];
  /** What to patch into the file so that no stored value differs. */
  readonly changes: readonly CellChange[];
  /** Formulas that this program does not know or does not manage; their stored values stand. */
  readonly left: readonly { readonly place: string; readonly formula: string }[];
}

type Stored = ReadonlyMap<string, Cell>;
type Step = (what: string, done: number, of: number) => void;

/** Computes every cell with a function of ours, and what depends on one. */
export function freshCells(file: XlsxFile, step: Step): Fresh {
  const stored = readStored(file, step);
  const workbook = workbookOf(
    [...stored].map(([name, cells]) => ({ name, cells: cells.values() })),
    rangeNames(file),
  );
  step("computing", 1, 2);
  const touched = workbook.lotCells();
  const cells: FreshCell[] = [];
  const changes: CellChange[] = [];
  const left: { place: string; formula: string }[] = [];
  touched.forEach(({ sheet, address, reading }, i) => {
    step(`comparing ${sheet}`, i, touched.length);
    const found = stored.get(sheet) ?? new Map<string, Cell>();
    const formula = reading.formula ?? "";
    if ((reading.value === "#NAME?" || isBeyondGrid(reading.message)) && !found.get(address)?.error) {
      left.push({ place: `${sheet}!${address}`, formula });
      return;
    }
    const one = compared(sheet, address, formula, workbook.outcome(sheet, address), found);
    for (const cell of one.cells) cells.push(cell);
    if (one.cells.some(({ differs }) => differs)) changes.push(one.change);
  });
  return { cells, changes, left };
}

function readStored(file: XlsxFile, step: Step): ReadonlyMap<string, Stored> {
  const sheets = file.sheets.filter(({ kind }) => kind === "worksheet");
  return new Map(
    sheets.map(({ name }, i) => {
      step(`reading ${name}`, i, sheets.length);
      return [name, new Map([...file.cells(name)].map((cell) => [cell.address, cell]))];
    }),
  );
}

/** Names for plain ranges; a name for anything else is left to those that can compute it. */
function rangeNames(file: XlsxFile): { name: string; range: string }[] {
  return file.definedNames
    .filter(({ formula, sheet }) => sheet === null && /^=(?:'[^']+'|[\p{L}\d_.]+)!\$?[A-Z]+\$?\d+(?::\$?[A-Z]+\$?\d+)?$/u.test(formula))
    .map(({ name, formula }) => ({ name, range: formula.slice(1) }));
}

/** The cells that a formula fills, and the one change that puts them all right. */
function compared(sheet: string, address: string, formula: string, outcome: Outcome, stored: Stored): { cells: FreshCell[]; change: CellChange } {
  const rows = (isRows(outcome) ? outcome : [[outcome]]).map((row) => row.map(value));
  const anchor = toSpot(address);
  const cells = rows.flatMap((row, r) =>
    row.map((fresh, c): FreshCell => {
      const at = addressOf({ row: anchor.row + r, column: anchor.column + c });
      const was = stored.get(at)?.value ?? null;
      return {
        place: `${sheet}!${at}`,
        formula: at === address ? formula : null,
        stored: was,
        fresh: fresh.value,
        differs: !isSame(was, fresh.value),
      };
    }),
  );
  const first = rows[0]?.[0] ?? { value: null };
  return { cells, change: { sheet, cell: address, ...first, ...(cells.length > 1 ? { spill: rows } : {}) } };
}

function toSpot(address: string): Spot {
  const spot = readAddress(address);
  if (!spot) throw new Error(`${address} is no cell`);
  return spot;
}

const isRows = (outcome: Outcome): outcome is readonly (readonly OutcomeCell[])[] => Array.isArray(outcome);

const value = (cell: OutcomeCell): CellValue => (isCellError(cell) ? { value: cell.error, error: true } : { value: cell });

const CLOSE = 1e-12;

/** Another program's last digit is not a difference; a cent always is. An empty text and nothing look alike. */
function isSame(a: CellContent, b: CellContent): boolean {
  if (typeof a === "number" && typeof b === "number") return Math.abs(a - b) <= CLOSE * Math.max(Math.abs(a), Math.abs(b));
  return a === b || ((a === null || a === "") && (b === null || b === ""));
}
