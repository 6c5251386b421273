import { CellErrorType, type CellPosition, type Model, helpers } from "@odoo/o-spreadsheet";
import type { CellContent } from "../engine/outcome";
import { lotCells } from "../engine/lot-cells";
import { readCell } from "../engine/read-cell";
import type { CellValue, XlsxFile } from "../workbook/file";
import type { TableInfo } from "../workbook/port";
import { type Looks, looksOf } from "./looks";
import { placeOf } from "./place";
import { sameValue } from "./same-value";
import { writtenLooks } from "./written-looks";

export interface KnownCell {
  /** What is typed into it, as the grid writes it. */
  readonly text: string;
  /** False for a formula that the grid cannot even read, whose result says nothing. */
  readonly isReadable: boolean;
  /** The cells that its result fills: its own address, or a range. */
  readonly fills: string;
  /** What stands in them, [row][column]. */
  readonly results: readonly (readonly CellValue[])[];
}

export interface StoredValue {
  readonly value: CellContent;
  /** The range that the file's formula fills from here, or null. */
  readonly fills: string | null;
}

/** A workbook as it was when it was opened or last saved: what the file holds, and what the grid makes of it. */
export interface Snapshot {
  readonly cells: ReadonlyMap<string, KnownCell>;
  readonly stored: ReadonlyMap<string, StoredValue>;
  /** Formulas of the file that the grid computes otherwise than the program that stored them, or cannot compute. */
  readonly differing: ReadonlySet<string>;
  readonly looks: Looks;
  /** Cells whose look the port had set by then: saved, whatever became of it since. */
  readonly written: ReadonlySet<string>;
  /** The sheets of the file that was opened; those that were added since are saved whole. */
  readonly sheets: ReadonlySet<string>;
  /** The tables of that file, by their sheets. */
  readonly tables: ReadonlyMap<string, readonly TableInfo[]>;
}

/** After a saving, of the new file beside what was opened. */
export function snapshot(model: Model, file: XlsxFile, opened: Pick<Snapshot, "sheets" | "tables"> = sheetsOf(file)): Snapshot {
  const { sheets, tables } = opened;
  const cells = knownCells(model);
  const stored = new Map<string, StoredValue>();
  const differing = new Set<string>();
  const ours = new Set(lotCells(model).map(({ sheet, address }) => placeOf(sheet, address)));
  for (const { name, kind } of file.sheets) {
    if (kind !== "worksheet") continue;
    for (const { address, formula, value, fills } of file.cells(name)) {
      const place = placeOf(name, address);
      stored.set(place, { value, fills });
      const known = cells.get(place);
      if (formula === null || value === null || !known || ours.has(place)) continue;
      if (!sameValue(known.results[0]?.[0]?.value ?? null, value) || (fills === null && known.fills !== address)) differing.add(place);
    }
  }
  return { cells, stored, differing, looks: looksOf(model, sheets, tables), written: new Set(writtenLooks(model).keys()), sheets, tables };
}

const sheetsOf = (file: XlsxFile): Pick<Snapshot, "sheets" | "tables"> => ({
  sheets: new Set(file.sheets.map(({ name }) => name)),
  tables: new Map(file.sheets.filter(({ kind }) => kind === "worksheet").map(({ name }) => [name, file.tables(name)])),
});

/** Every cell of the grid that holds something. */
export function knownCells(model: Model): Map<string, KnownCell> {
  const { getters } = model;
  const known = new Map<string, KnownCell>();
  for (const sheetId of getters.getSheetIds()) {
    const name = getters.getSheetName(sheetId);
    for (const { id } of getters.getCells(sheetId)) {
      const position = getters.getCellPosition(id);
      const cell = knownCell(model, position);
      if (cell.text !== "") known.set(placeOf(name, helpers.toXC(position.col, position.row)), cell);
    }
  }
  return known;
}

function knownCell(model: Model, position: CellPosition): KnownCell {
  const { getters } = model;
  const cell = getters.getCell(position);
  const isFormula = cell?.isFormula === true;
  const { sheetId } = position;
  const zone = (isFormula ? getters.getSpreadZone(position) : undefined) ?? helpers.positionToZone(position);
  const first = helpers.toXC(zone.left, zone.top);
  const last = helpers.toXC(zone.right, zone.bottom);
  return {
    text: !cell ? "" : cell.isFormula ? cell.compiledFormula.toFormulaString(getters) : cell.content,
    isReadable: !(isFormula && getters.getEvaluatedCell(position).value === UNREADABLE && cell.compiledFormula.isBadExpression),
    fills: first === last ? first : `${first}:${last}`,
    results: range(zone.top, zone.bottom).map((row) => range(zone.left, zone.right).map((col) => result(model, { sheetId, col, row }))),
  };
}

const UNREADABLE: string = CellErrorType.BadExpression;

const range = (first: number, last: number): number[] => Array.from({ length: last - first + 1 }, (_, i) => first + i);

function result(model: Model, position: CellPosition): CellValue {
  const { value, error } = readCell(model, position);
  return error ? { value, error } : { value };
}
