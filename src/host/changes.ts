import type { Model } from "@odoo/o-spreadsheet";
import { addresses } from "../engine/addresses";
import { lotCells } from "../engine/lot-cells";
import type { Additions, CellChange } from "../workbook/file";
import { type LookKind, changedLooks, looksOf } from "./looks";
import { addressOf, placeOf } from "./place";
import { sameValue } from "./same-value";
import { type KnownCell, type Snapshot, knownCells } from "./snapshot";
import { contentsOf, writtenAdditions } from "./written";
import { writtenLooks } from "./written-looks";

export interface Changes {
  /** What a patch writes into the file. */
  readonly cells: readonly CellChange[];
  /** Sheets, notes, pictures and larger tables since the file was opened; left out where there are none. */
  readonly additions?: Additions;
  /** Formulas whose stored value stays though it may be out of date, since the grid does not compute them as Excel does. */
  readonly notComputed: readonly string[];
  /** What changed in the grid and no patch writes, in words. */
  readonly leftBehind: readonly string[];
}

/** Everything that differs from the snapshot: every cell is compared, so no way of changing one can be missed. */
export function changesSince(model: Model, then: Snapshot): Changes {
  const now = knownCells(model);
  const ours = new Set(lotCells(model).map(({ sheet, address }) => placeOf(sheet, address)));
  const looks = new Map([...writtenLooks(model)].filter(([place]) => then.sheets.has(addressOf(place).sheet)));
  const cells: CellChange[] = [];
  let isEdited = false;
  for (const place of new Set([...then.cells.keys(), ...now.keys(), ...looks.keys()])) {
    if (!then.sheets.has(addressOf(place).sheet)) continue;
    const after = now.get(place);
    const look = looks.get(place) ?? {};
    if (then.cells.get(place)?.text !== after?.text) {
      cells.push({ ...edited(place, after), ...look });
      isEdited = true;
    } else if (after && isRecomputed(place, after, then, ours)) cells.push({ ...recomputed(place, after, then), ...look });
    else if (looks.has(place)) cells.push({ ...restyled(place, after, then), ...look });
  }
  const notComputed = isEdited ? [...then.differing].filter((place) => now.get(place)?.text === then.cells.get(place)?.text) : [];
  const additions = writtenAdditions(model, now, then.tables);
  const adds = [additions.sheets, additions.notes, additions.pictures, additions.tables].some((list) => list !== undefined && list.length > 0);
  return { cells, ...(adds ? { additions } : {}), notComputed, leftBehind: leftBehind(model, then, looks) };
}

/** True where a formula that nobody edited has another result than the file holds, by our functions or by an edit elsewhere. */
function isRecomputed(place: string, after: KnownCell, then: Snapshot, ours: ReadonlySet<string>): boolean {
  if (!after.text.startsWith("=") || then.differing.has(place)) return false;
  return (ours.has(place) || !sameResults(then.cells.get(place), after)) && !isStored(place, after, then);
}

const sameResults = (before: KnownCell | undefined, after: KnownCell): boolean =>
  before?.fills === after.fills &&
  after.results.every((row, r) => row.every(({ value }, c) => sameValue(before.results[r]?.[c]?.value ?? null, value)));

function isStored(place: string, { fills, results }: KnownCell, { stored }: Snapshot): boolean {
  const { sheet, cell } = addressOf(place);
  const values = results.flat().map(({ value }) => value);
  const inFile = stored.get(place)?.fills ?? cell;
  return inFile === fills && addresses(fills).every((address, i) => sameValue(stored.get(placeOf(sheet, address))?.value ?? null, values[i] ?? null));
}

function edited(place: string, after: KnownCell | undefined): CellChange {
  const at = addressOf(place);
  if (after && !after.isReadable) throw new Error(`Cannot save: ${place} holds ${after.text}, which cannot be read as a formula: correct it or clear it`);
  return { ...at, ...contentsOf(after, at.cell) };
}

/** A cell of which the look alone changes keeps the value that the file has for it. */
function restyled(place: string, after: KnownCell | undefined, { stored }: Snapshot): CellChange {
  const value = stored.get(place)?.value ?? null;
  return { ...addressOf(place), value, ...(after?.results[0]?.[0]?.error ? { error: true } : {}) };
}

function recomputed(place: string, after: KnownCell, then: Snapshot): CellChange {
  const at = addressOf(place);
  const isArray = after.fills !== at.cell || (then.stored.get(place)?.fills ?? null) !== null;
  return { ...at, ...first(after), ...(isArray ? { spill: after.results } : {}) };
}

const first = ({ results }: KnownCell) => results[0]?.[0] ?? { value: null };

const IN_WORDS: Readonly<Record<LookKind, string>> = {
  formats: "number formats, styles and borders",
  sizes: "column widths and row heights",
  figures: "the place of charts and pictures",
  merges: "merged cells",
  rules: "conditional formats, validation, tables and names",
  view: "frozen, grouped and hidden rows and columns",
};

function leftBehind(model: Model, then: Snapshot, looks: ReadonlyMap<string, unknown>): string[] {
  const now = looksOf(model, then.sheets, then.tables);
  return changedLooks(then.looks, now, (sheet, address) => looks.has(placeOf(sheet, address)) || then.written.has(placeOf(sheet, address))).map((kind) => IN_WORDS[kind]);
}
