import { refuseBySheets, sortedChanges } from "./changes";
import type { BookPort, CellReading, CellWrite, Change, NewSheet, Note, Picture, TableGrowth, Undo } from "./port";
import { grownTables } from "./table-growth";
import { addressOf, areaText, readAddress, readArea, type Area, type Spot } from "./xlsx/address";

export type { Undo } from "./port";

/** A change that is shown before it happens: each cell with its before and after. */
export interface PlannedCell {
  readonly write: CellWrite;
  readonly before: CellReading;
  /** A filled cell is written only when its overwriting was asked for. */
  readonly overwrites: boolean;
}

export interface PlannedNote {
  readonly note: Note;
  readonly before: string | null;
  readonly overwrites: boolean;
}

export interface Plan {
  readonly cells: readonly PlannedCell[];
  readonly notes: readonly PlannedNote[];
  readonly sheets: readonly NewSheet[];
  /** Those of the new sheets are with their sheets. */
  readonly pictures: readonly Picture[];
  readonly tables: readonly TableGrowth[];
}

const isFilled = (cell: CellReading): boolean =>
  cell.formula !== null || (cell.value !== null && cell.value !== "");

/** Looks at everything that the changes would touch; refuses what the workbook would not take. Nothing is written. */
export async function plan(port: BookPort, changes: readonly Change[]): Promise<Plan> {
  const sorted = sortedChanges(changes);
  const sheets = await port.sheets();
  refuseBySheets(sorted, sheets);
  await grownTables(sorted, sheets, (place) => port.read(place));
  const made = new Set(sorted.sheets.map(({ newSheet }) => newSheet));
  const onNew = (sheet: string): boolean => made.has(sheet);
  const before = await readCells(port, sorted.cells.filter(({ sheet }) => !onNew(sheet)));
  const notes: PlannedNote[] = [];
  for (const note of sorted.notes) {
    const there = onNew(note.sheet) ? null : await port.note(note);
    notes.push({ note, before: there, overwrites: there !== null });
  }
  return {
    cells: sorted.cells.map((write) => {
      const cell = before.get(at(write)) ?? EMPTY;
      return { write, before: cell, overwrites: isFilled(cell) };
    }),
    notes,
    sheets: sorted.sheets,
    pictures: changes.filter((change): change is Picture => "png" in change),
    tables: sorted.tables,
  };
}

/**
 * Applies a plan whole. Refuses when a filled cell or note was not allowed to be overwritten, or when one changed
 * between the planning and now; nothing is written then. The undoing is refused when a cell has changed since.
 */
export async function apply(port: BookPort, plan: Plan, allowOverwrite: (planned: PlannedCell | PlannedNote) => boolean): Promise<Undo> {
  for (const planned of [...plan.cells, ...plan.notes])
    if (planned.overwrites && !allowOverwrite(planned))
      throw new Error(`${"write" in planned ? at(planned.write) : `The note beside ${at(planned.note)}`} is filled: tick it to overwrite it, or choose another cell`);

  const writes = plan.cells.map(({ write }) => write);
  const there = writes.filter(({ sheet }) => !plan.sheets.some(({ newSheet }) => newSheet === sheet));
  const now = await readCells(port, there);
  for (const { write, before } of plan.cells)
    if (!holdsTheSame(now.get(at(write)) ?? EMPTY, before)) throw new Error(`${at(write)} changed since the review: look at it again before writing`);
  for (const { note, before } of plan.notes)
    if (before !== null && (await port.note(note)) !== before) throw new Error(`The note beside ${at(note)} changed since the review: look at it again before writing`);

  const { undo } = await port.write([...plan.sheets, ...plan.tables, ...writes, ...plan.notes.map(({ note }) => note), ...plan.pictures]);
  const written = await readCells(port, writes);
  return {
    async undo() {
      const found = await readCells(port, writes);
      const changed = writes.find((write) => !holdsTheSame(found.get(at(write)) ?? EMPTY, written.get(at(write)) ?? EMPTY));
      if (changed) throw new Error(`${changed.cell} has changed since: change it back in the sheet`);
      await undo();
    },
  };
}

const EMPTY: CellReading = { value: null, formula: null, error: false };

/** A formula's value may have moved for reasons of its own. */
const holdsTheSame = (a: CellReading, b: CellReading): boolean =>
  a.formula === b.formula && (a.formula !== null || a.value === b.value || (!isFilled(a) && !isFilled(b)));

const MOST_AT_ONCE = 20_000;

/** Each cell's reading by its place; neighbours are asked for together. */
async function readCells(port: BookPort, writes: readonly CellWrite[]): Promise<Map<string, CellReading>> {
  const found = new Map<string, CellReading>();
  for (const [sheet, spots] of bySheet(writes)) {
    const around = [...spots.values()].reduce(including, undefined);
    const size = around ? (around.bottom - around.top + 1) * (around.right - around.left + 1) : 0;
    const areas = size <= MOST_AT_ONCE && around ? [around] : [...spots.values()].map((spot) => including(undefined, spot));
    for (const area of areas) {
      const rows = await port.read({ sheet, range: areaText(area) });
      for (const [cell, { row, column }] of spots) {
        const reading = rows[row - area.top]?.[column - area.left];
        if (reading) found.set(`${sheet}!${cell}`, reading);
      }
    }
  }
  return found;
}

function bySheet(writes: readonly CellWrite[]): Map<string, Map<string, Spot>> {
  const sheets = new Map<string, Map<string, Spot>>();
  for (const { sheet, cell } of writes) {
    const spots = sheets.get(sheet) ?? new Map<string, Spot>();
    const spot = readAddress(cell);
    if (spot) spots.set(cell, spot);
    sheets.set(sheet, spots);
  }
  return sheets;
}

function including(area: Area | undefined, spot: Spot): Area {
  const own = readArea(addressOf(spot)) as Area;
  if (!area) return own;
  return { top: Math.min(area.top, own.top), left: Math.min(area.left, own.left), bottom: Math.max(area.bottom, own.bottom), right: Math.max(area.right, own.right) };
}

const at = ({ sheet, cell }: { readonly sheet: string; readonly cell: string }): string => `${sheet}!${cell}`;
