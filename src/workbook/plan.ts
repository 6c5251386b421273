import { refuseBySheets, sheetKey, sortedChanges } from "./changes";
import type { BookPort, CellReading, CellWrite, Change, NewSheet, Note, Picture, TableGrowth, Undo } from "./port";
import { restsOn } from "./rests-on";
import { grownTables } from "./table-growth";
import { addressOf, areaText, cellCount, readAddress, readArea, type Area, type Spot } from "./xlsx/address";

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
  /** Other cells that what is shown rests on, as they were, by their places. */
  readonly rests: ReadonlyMap<string, CellReading>;
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
  const written = sorted.cells.filter(({ sheet }) => !onNew(sheet));
  const others = await restsOn(sorted, sheets, () => port.names());
  const read = await readCells(port, [...written, ...others]);
  const notes: PlannedNote[] = [];
  for (const note of sorted.notes) {
    const there = onNew(note.sheet) ? null : await port.note(note);
    notes.push({ note, before: there, overwrites: there !== null });
  }
  return {
    cells: sorted.cells.map((write) => {
      const cell = (onNew(write.sheet) ? null : read.get(at(write))) ?? EMPTY;
      return { write, before: cell, overwrites: isFilled(cell) };
    }),
    notes,
    sheets: sorted.sheets,
    pictures: changes.filter((change): change is Picture => "png" in change),
    tables: sorted.tables,
    rests: new Map(others.map((place) => [at(place), read.get(at(place)) ?? EMPTY])),
  };
}

/**
 * Applies a plan whole. Refuses when a filled cell or note was not allowed to be overwritten, or when one, or a cell
 * that the plan rests on, changed between the planning and now; nothing is written then. The undoing is refused when a
 * cell has changed since.
 */
export async function apply(port: BookPort, plan: Plan, allowOverwrite: (planned: PlannedCell | PlannedNote) => boolean): Promise<Undo> {
  for (const planned of [...plan.cells, ...plan.notes])
    if (planned.overwrites && !allowOverwrite(planned))
      throw new Error(`${"write" in planned ? at(planned.write) : `The note beside ${at(planned.note)}`} is filled: tick it to overwrite it, or choose another cell`);

  const writes = plan.cells.map(({ write }) => write);
  const before = new Map([...plan.rests, ...plan.cells.filter(({ write }) => !isOnNew(plan, write)).map(({ write, before }) => [at(write), before] as const)]);
  const now = await readCells(port, [...before.keys()].map(placeAt));
  for (const [place, reading] of before)
    if (!holdsTheSame(now.get(place) ?? EMPTY, reading)) throw new Error(`${place} changed since the review: look at it again before writing`);
  for (const { note, before: there } of plan.notes)
    if (!isOnNew(plan, note) && (await port.note(note)) !== there) throw new Error(`The note beside ${at(note)} changed since the review: look at it again before writing`);

  const { undo } = await port.write([...plan.sheets, ...plan.tables, ...writes, ...plan.notes.map(({ note }) => note), ...plan.pictures]);
  const written = await readCells(port, writes).catch(async (fault: unknown) => {
    // Without it nobody could tell later whether the user has changed what was written.
    await undo();
    throw fault;
  });
  return {
    async undo() {
      const found = await readCells(port, writes);
      const changed = plan.cells.find(({ write, before: old }) => ![old, written.get(at(write)) ?? EMPTY].some((one) => holdsTheSame(found.get(at(write)) ?? EMPTY, one)));
      if (changed) throw new Error(`${at(changed.write)} has changed since: change it back in the sheet, then undo again`);
      await undo();
    },
  };
}

const isOnNew = ({ sheets }: Plan, { sheet }: { readonly sheet: string }): boolean => sheets.some(({ newSheet }) => sheetKey(newSheet) === sheetKey(sheet));

const EMPTY: CellReading = { value: null, formula: null, error: false };

/** A formula's value may have moved for reasons of its own. */
const holdsTheSame = (a: CellReading, b: CellReading): boolean =>
  a.formula === b.formula && (a.formula !== null || a.value === b.value || (!isFilled(a) && !isFilled(b)));

const MOST_AT_ONCE = 20_000;

interface CellPlace {
  readonly sheet: string;
  readonly cell: string;
}

/** Each cell's reading by its place; neighbours are asked for together, a band of rows at a time. */
async function readCells(port: BookPort, places: readonly CellPlace[]): Promise<Map<string, CellReading>> {
  const found = new Map<string, CellReading>();
  for (const [sheet, spots] of bySheet(places))
    for (const { area, cells } of bandsOf(spots)) {
      const rows = await port.read({ sheet, range: areaText(area) });
      for (const [cell, { row, column }] of cells) {
        const reading = rows[row - area.top]?.[column - area.left];
        if (reading) found.set(at({ sheet, cell }), reading);
      }
    }
  return found;
}

type Spots = [cell: string, spot: Spot][];

function bySheet(places: readonly CellPlace[]): Map<string, Spots> {
  const sheets = new Map<string, Spots>();
  for (const { sheet, cell } of places) {
    const spots = sheets.get(sheet) ?? [];
    const spot = readAddress(cell);
    if (spot) spots.push([cell, spot]);
    sheets.set(sheet, spots);
  }
  return sheets;
}

function bandsOf(spots: Spots): { area: Area; cells: Spots }[] {
  const bands: { area: Area; cells: Spots }[] = [];
  for (const one of spots.sort(([, a], [, b]) => a.row - b.row || a.column - b.column)) {
    const last = bands.at(-1);
    const area = including(last?.area, one[1]);
    if (last && cellCount(area) <= MOST_AT_ONCE) {
      last.area = area;
      last.cells.push(one);
    } else bands.push({ area: including(undefined, one[1]), cells: [one] });
  }
  return bands;
}

function including(area: Area | undefined, spot: Spot): Area {
  const own = readArea(addressOf(spot)) as Area;
  if (!area) return own;
  return { top: Math.min(area.top, own.top), left: Math.min(area.left, own.left), bottom: Math.max(area.bottom, own.bottom), right: Math.max(area.right, own.right) };
}

const at = ({ sheet, cell }: CellPlace): string => `${sheet}!${cell}`;
/** A cell has no exclamation mark, a sheet's name may. */
const placeAt = (place: string): CellPlace => ({ sheet: place.slice(0, place.lastIndexOf("!")), cell: place.slice(place.lastIndexOf("!") + 1) });
