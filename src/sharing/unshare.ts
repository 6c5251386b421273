import type { Cell, CellChange, CellValue, XlsxFile } from "../workbook/file";
import { FileFault, openXlsx } from "../workbook/file";
import type { CellContent } from "../workbook/port";
import { readAddress } from "../workbook/xlsx/address";
import { shiftFormula } from "../workbook/xlsx/shift";
import { isSameFormula } from "./same-formula";
import { placeOf } from "./shared-cell";
import { COLUMNS, FILLED_BY, HEADING_ROW, WORKINGS_TITLE } from "./workings-sheet";

/** A cell that was not put back, and why. */
export interface KeptCell {
  readonly place: string;
  /** The LOT formula that it held. */
  readonly was: string;
  readonly now: CellContent;
  readonly sentence: string;
}

export interface PutBack {
  readonly bytes: Uint8Array;
  /** Formulas of ours that stand again. */
  readonly restored: readonly string[];
  readonly kept: readonly KeptCell[];
}

/** Turns a shared copy that came back into LOT formulas again. What was changed in it meanwhile stays. */
export function unshare(file: XlsxFile): PutBack {
  const workings = file.sheets.find(({ name, kind }) => kind === "worksheet" && contents(file, name).get("A1")?.value === WORKINGS_TITLE);
  if (!workings) throw new FileFault("Cannot put anything back: this workbook has no sheet of workings as a shared copy has: open the copy that was made by sharing");
  const read = readWorkings(file, workings.name);
  const changes: CellChange[] = [];
  const freed: CellChange[] = [];
  const restored: string[] = [];
  const kept: KeptCell[] = [];
  for (const group of groups(read)) {
    const outcome = putBack(group, file);
    if ("formula" in outcome) {
      changes.push(outcome);
      for (const { at } of group.filled) if (at) freed.push({ ...at, formula: null, value: null });
      restored.push(group.anchor.at ? placeOf(group.anchor.at) : group.anchor.place);
    } else kept.push(outcome);
  }
  const links = read.flatMap(({ at, row }) => (at ? [{ ...at, to: placeOf({ sheet: workings.name, cell: `${COLUMNS.where}${row}` }), isTakenAway: true }] : []));
  // A formula fills only cells that hold nothing.
  const emptied = file.patch(freed);
  return { bytes: openXlsx(emptied).patch(changes, { links, withoutSheets: [workings.name] }), restored, kept };
}

interface Row {
  readonly row: number;
  /** Where the cell stood when the copy was made. */
  readonly place: string;
  /** Where it stands now; null where it was deleted. */
  readonly at: { readonly sheet: string; readonly cell: string } | null;
  readonly was: string;
  readonly now: CellContent;
}

interface Group {
  readonly anchor: Row;
  /** The cells that its formula filled. */
  readonly filled: readonly Row[];
}

const sheetContents = new WeakMap<XlsxFile, Map<string, ReadonlyMap<string, Cell>>>();

function contents(file: XlsxFile, sheet: string): ReadonlyMap<string, Cell> {
  const known = sheetContents.get(file) ?? new Map<string, ReadonlyMap<string, Cell>>();
  sheetContents.set(file, known);
  const cells = known.get(sheet) ?? new Map([...file.cells(sheet)].map((cell) => [cell.address, cell]));
  known.set(sheet, cells);
  return cells;
}

function readWorkings(file: XlsxFile, sheet: string): Row[] {
  const cells = contents(file, sheet);
  const last = Math.max(HEADING_ROW, ...[...cells.values()].map(({ row }) => row));
  const rows: Row[] = [];
  for (let row = HEADING_ROW + 1; row <= last; row++) {
    const place = cells.get(`${COLUMNS.where}${row}`)?.value;
    const was = cells.get(`${COLUMNS.was}${row}`)?.value;
    if (typeof place !== "string" || typeof was !== "string") continue;
    rows.push({ row, place, was, now: cells.get(`${COLUMNS.now}${row}`)?.value ?? null, at: readPlace(cells.get(`${COLUMNS.value}${row}`)?.formula ?? "") });
  }
  return rows;
}

function readPlace(formula: string): { sheet: string; cell: string } | null {
  const [, quoted, bare, cell = ""] = /^=(?:'((?:[^']|'')+)'|([^'!]+))!\$?([A-Z]{1,3}\$?\d+)$/i.exec(formula.trim()) ?? [];
  const sheet = quoted?.replaceAll("''", "'") ?? bare;
  return sheet === undefined ? null : { sheet, cell: cell.replace("$", "").toUpperCase() };
}

function groups(rows: readonly Row[]): Group[] {
  const found = new Map<string, { anchor: Row; filled: Row[] }>();
  for (const row of rows)
    if (row.was.startsWith(FILLED_BY)) found.get(row.was.slice(FILLED_BY.length))?.filled.push(row);
    else found.set(row.place, { anchor: row, filled: [] });
  return [...found.values()];
}

function putBack({ anchor, filled }: Group, file: XlsxFile): (CellChange & { readonly formula: string }) | KeptCell {
  const { at, was, place } = anchor;
  const stays = (sentence: string, now: CellContent): KeptCell => ({ place: at ? placeOf(at) : place, was, now, sentence });
  if (!at) return stays("the cell was deleted", null);
  let formula = was;
  for (const row of [anchor, ...filled]) {
    const held = heldBy(row, file);
    const shows = held?.formula ?? held?.value ?? null;
    if (!row.at) return stays(`${row.place}, which it filled, was deleted`, shows);
    const moved = standsAsShared(row, held);
    if (!moved) return stays(row === anchor ? "what stands there was changed" : `${placeOf(row.at)}, which it filled, was changed`, shows);
    if (row === anchor) formula = shiftFormula(was, moved.rows, moved.columns);
  }
  return { ...at, formula, ...valueOf(anchor, file), ...(filled.length > 0 ? { spill: spillOf([anchor, ...filled], at.cell, file) } : {}) };
}

const heldBy = ({ at }: Row, file: XlsxFile): Cell | undefined => (at ? contents(file, at.sheet).get(at.cell) : undefined);

interface Shift {
  readonly rows: number;
  readonly columns: number;
}
const NONE: Shift = { rows: 0, columns: 0 };

/** By how much the references of what the copy put there have moved, since rows were inserted; null where something else stands there. */
function standsAsShared({ now, place, at }: Row, held: Cell | undefined): Shift | null {
  const value = held?.value ?? null;
  const moved = movedBy(place, at?.cell ?? "");
  if (typeof now === "string" && now.startsWith("=")) {
    const formula = held?.formula ?? "";
    return [NONE, moved].find(({ rows, columns }) => isSameFormula(formula, shiftFormula(now, rows, columns))) ?? null;
  }
  // A typed error comes back from some programs as a formula.
  if (held?.formula && !(held.error && held.formula === `=${String(value)}`)) return null;
  const isSame = typeof now === "number" && typeof value === "number" ? Math.abs(now - value) <= 1e-13 * Math.abs(now) : (now ?? "") === (value ?? "");
  return isSame ? moved : null;
}

function movedBy(place: string, cell: string): Shift {
  const [from, to] = [readAddress(place.slice(place.lastIndexOf("!") + 1)), readAddress(cell)];
  return from && to ? { rows: to.row - from.row, columns: to.column - from.column } : NONE;
}

function valueOf(row: Row, file: XlsxFile): CellValue {
  const held = heldBy(row, file);
  return { value: held?.value ?? null, ...(held?.error ? { error: true } : {}) };
}

function spillOf(filled: readonly Row[], first: string, file: XlsxFile): CellValue[][] {
  const rows: CellValue[][] = [];
  for (const row of filled) {
    const by = movedBy(first, row.at?.cell ?? "");
    (rows[by.rows] ??= [])[by.columns] = valueOf(row, file);
  }
  return rows;
}
