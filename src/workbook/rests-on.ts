import { tokens } from "../formulas/tokens";
import { readCellRange } from "./cell-range";
import { type SortedChanges, sheetKey } from "./changes";
import type { NamedPlace, SheetInfo } from "./port";
import { type Area, addressOf, readAddress, readArea, spotsOf } from "./xlsx/address";

interface CellPlace {
  readonly sheet: string;
  readonly cell: string;
}

/**
 * The cells that a review rests on, besides those that are written: the rest of their rows and of the rows whose look
 * they take, since a row that moves belongs to another lot; what the written formulas name; and the cells beside notes.
 */
export async function restsOn(changes: SortedChanges, sheets: readonly SheetInfo[], names: () => Promise<readonly NamedPlace[]>): Promise<readonly CellPlace[]> {
  const there = new Map(sheets.map((info) => [sheetKey(info.name), { name: info.name, used: info.used === null ? null : readArea(info.used) }]));
  const found = new Map<string, CellPlace>();
  const add = (sheet: string, area: Area | null): void => {
    const known = there.get(sheetKey(sheet));
    const filled = known?.used && area ? common(area, known.used) : null;
    if (known && filled) for (const spot of spotsOf(filled)) found.set(`${known.name}!${addressOf(spot)}`, { sheet: known.name, cell: addressOf(spot) });
  };
  const addRow = (sheet: string, cell: string): void => {
    const spot = readAddress(cell);
    if (spot) add(sheet, { top: spot.row, bottom: spot.row, left: 1, right: Number.MAX_SAFE_INTEGER });
  };
  for (const { sheet, cell, like } of changes.cells) {
    addRow(sheet, cell);
    if (like !== undefined) addRow(sheet, like);
  }
  for (const { sheet, cell } of changes.notes) add(sheet, readArea(cell));

  const written = [...changes.cells, ...changes.sheets.flatMap(({ newSheet, cells }) => cells.map((cell) => ({ sheet: newSheet, ...cell })))];
  const formulas = written.flatMap(({ sheet, content, asText }) => (typeof content === "string" && content.startsWith("=") && !asText ? [{ sheet, pieces: tokens(content) }] : []));
  const named = formulas.some(({ pieces }) => pieces.some(({ kind }) => kind === "name")) ? new Map((await names()).map(({ name, place }) => [name.toLowerCase(), place])) : new Map<string, never>();
  for (const { sheet, pieces } of formulas)
    for (const { kind, text } of pieces) {
      const range = kind === "reference" ? readCellRange(text) : null;
      if (range) add(range.sheet ?? sheet, range.area);
      const place = kind === "name" ? named.get(text.toLowerCase()) : undefined;
      if (place) add(place.sheet, readArea(place.range));
    }
  return [...found.values()];
}

function common(a: Area, b: Area): Area | null {
  const both = { top: Math.max(a.top, b.top), left: Math.max(a.left, b.left), bottom: Math.min(a.bottom, b.bottom), right: Math.min(a.right, b.right) };
  return both.top <= both.bottom && both.left <= both.right ? both : null;
}
