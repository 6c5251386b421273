import type { Model } from "@odoo/o-spreadsheet";
import { catalogue } from "../catalogue/catalogue";
import type { AddedCell, AddedSheet, Additions } from "../workbook/file";
import { tablesLarger } from "../workbook/grid-tables";
import { keptChanges } from "../workbook/grid-kept";
import type { NewSheet, TableInfo } from "../workbook/port";
import { placeOf } from "./place";
import type { KnownCell } from "./snapshot";
import { type WrittenLook, writtenLooks } from "./written-looks";

/** What the grid has and the file that was opened has not: sheets with their cells as they are now, notes, pictures, larger tables. */
export function writtenAdditions(model: Model, cells: ReadonlyMap<string, KnownCell>, tablesOf: ReadonlyMap<string, readonly TableInfo[]>): Additions {
  const kept = keptChanges(model);
  const names = new Set(model.getters.getSheetIds().map((id) => model.getters.getSheetName(id)));
  const looks = writtenLooks(model);
  const sheets = kept.flatMap((one) => one.sheets).filter(({ newSheet }) => names.has(newSheet)).map((sheet) => addedSheet(sheet, cells, looks));
  const notes = new Map(kept.flatMap((one) => one.notes).map((note) => [placeOf(note.sheet, note.cell), note]));
  const tables = [...tablesOf].flatMap(([sheet, known]) => tablesLarger(model, model.getters.getSheetIdByName(sheet) ?? "", known));
  return { sheets, notes: [...notes.values()], pictures: kept.flatMap((one) => one.pictures), tables };
}

function addedSheet({ newSheet, cells, pictures: _pictures, ...rest }: NewSheet, known: ReadonlyMap<string, KnownCell>, looks: ReadonlyMap<string, WrittenLook>): AddedSheet {
  const planned = new Map(cells.map((cell) => [cell.cell.replaceAll("$", "").toUpperCase(), cell]));
  const filled = [...known.keys()].filter((place) => place.startsWith(`${newSheet}!`)).map((place) => place.slice(newSheet.length + 1));
  return {
    newSheet,
    ...rest,
    cells: [...new Set([...planned.keys(), ...filled])].map((address): AddedCell => {
      const { content: _content, asText: _asText, cell: _cell, ...look } = planned.get(address) ?? { content: null, cell: address };
      const numberFormat = looks.get(placeOf(newSheet, address))?.numberFormat;
      return { cell: address, ...contentsOf(known.get(placeOf(newSheet, address)), address), ...look, ...(numberFormat === undefined ? {} : { numberFormat }) };
    }),
  };
}

/** A cell's formula and what it gives. */
export function contentsOf(cell: KnownCell | undefined, address: string): Pick<AddedCell, "formula" | "value" | "error" | "spill"> {
  if (!cell) return { formula: null, value: null };
  const first = cell.results[0]?.[0] ?? { value: null };
  const isArray = cell.fills !== address || maySpill(cell.text);
  return { formula: cell.text.startsWith("=") ? cell.text : null, ...first, ...(isArray ? { spill: cell.results } : {}) };
}

/** One that shows an error now must be stored as what fills cells, or Excel would never let it fill more than its own. */
const maySpill = (text: string): boolean => catalogue.some(({ name, spills }) => spills && text.startsWith(`=${name}(`));
