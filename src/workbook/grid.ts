import { type Model, type UID, type Zone, helpers } from "@odoo/o-spreadsheet";
import { readCell } from "../engine/read-cell";
import { takeSteps } from "../engine/steps";
import { refuseBySheets, sheetKey, sortedChanges } from "./changes";
import { keptChanges } from "./grid-kept";
import { gridSteps } from "./grid-steps";
import type { CellReading, Place, SheetInfo, BookPort } from "./port";

/** What the file that is open in the grid knows and the grid does not. */
export interface GridFile {
  facts(sheet: string): SheetInfo | null;
  notes(sheet: string): ReadonlyMap<string, string>;
}

const NO_FILE: GridFile = { facts: () => null, notes: () => new Map() };

/** The port over the embedded grid. */
export function gridPort(model: Model, file: GridFile = NO_FILE): BookPort {
  const { getters } = model;

  const sheetId = (name: string): UID => {
    const id = getters.getSheetIds().find((one) => sheetKey(getters.getSheetName(one)) === sheetKey(name));
    if (id === undefined) throw new Error(`Cannot find the sheet "${name}" in this workbook`);
    return id;
  };

  const selected = (): Place => {
    const zone = getters.getSelectedZone();
    return { sheet: getters.getSheetName(getters.getActiveSheetId()), range: zoneText(zone) };
  };

  const info = (id: UID): SheetInfo => {
    const name = getters.getSheetName(id);
    const facts = file.facts(name);
    const cells = getters.getCells(id).filter((cell) => cell.isFormula || cell.content !== "").map((cell) => helpers.positionToZone(getters.getCellPosition(cell.id)));
    const columns = Array.from({ length: getters.getNumberCols(id) }, (_, col) => col);
    const rows = Array.from({ length: getters.getNumberRows(id) }, (_, row) => row);
    return {
      name,
      isVisible: getters.isSheetVisible(id),
      isProtected: getters.isSheetLocked(id),
      used: cells.length === 0 ? null : zoneText(helpers.union(...cells)),
      // The grid keeps no names of tables, and hides rows only where it knows the filter.
      tables: facts?.tables ?? [],
      hiddenColumns: columns.filter((col) => getters.isColHidden(id, col)).map((col) => helpers.numberToLetters(col)),
      hasHiddenRows: facts?.hasHiddenRows === true || rows.some((row) => getters.isRowHidden(id, row)),
      merged: getters.getMerges(id).map(zoneText),
    };
  };

  const reading = (id: UID, col: number, row: number): CellReading => {
    const format = getters.getCell({ sheetId: id, col, row })?.format;
    return { ...readCell(model, { sheetId: id, col, row }), ...(format ? { numberFormat: format } : {}) };
  };

  const sheets = async (): Promise<SheetInfo[]> => getters.getSheetIds().map(info);

  return {
    selection: async () => selected(),

    onSelection(listener) {
      const owner = {};
      let last = textOf(selected());
      model.on("update", owner, () => {
        const place = selected();
        if (textOf(place) === last) return;
        last = textOf(place);
        listener(place);
      });
      return () => model.off("update", owner);
    },

    sheets,

    async read({ sheet, range }) {
      const id = sheetId(sheet);
      return rowsOf(zoneOf(range), (col, row) => reading(id, col, row));
    },

    names: async () =>
      getters.getNamedRanges().map(({ name, range: { sheetId: id, zone } }) => ({ name, place: { sheet: getters.getSheetName(id), range: zoneText(zone) } })),

    async note({ sheet, cell }) {
      const name = getters.getSheetName(sheetId(sheet));
      const address = cell.replaceAll("$", "").toUpperCase();
      const written = keptChanges(model).flatMap(({ notes }) => notes).findLast((note) => note.sheet === name && note.cell === address);
      return written ? written.note : (file.notes(name).get(address) ?? null);
    },

    async write(changes) {
      const sorted = sortedChanges(changes);
      refuseBySheets(sorted, await sheets());
      const { id, steps, backwards } = gridSteps(model, sorted, sheetId);
      takeSteps(model, steps);
      return {
        async undo() {
          // The grid's own undo may have taken it back before.
          if (keptChanges(model).some((kept) => kept.id === id)) takeSteps(model, backwards);
        },
      };
    },

    async select({ sheet, range }) {
      const sheetIdTo = sheetId(sheet);
      const zone = zoneOf(range);
      const sheetIdFrom = getters.getActiveSheetId();
      if (sheetIdFrom !== sheetIdTo) model.dispatch("ACTIVATE_SHEET", { sheetIdFrom, sheetIdTo });
      model.selection.selectZone({ cell: { col: zone.left, row: zone.top }, zone }, { scrollIntoView: true });
    },
  };
}

const textOf = ({ sheet, range }: Place): string => `${sheet}!${range}`;

function zoneText({ left, top, right, bottom }: Zone): string {
  const first = helpers.toXC(left, top);
  const last = helpers.toXC(right, bottom);
  return first === last ? first : `${first}:${last}`;
}

function zoneOf(range: string): Zone {
  if (!/^\$?[A-Z]{1,3}\$?[1-9]\d{0,6}(?::\$?[A-Z]{1,3}\$?[1-9]\d{0,6})?$/i.test(range)) throw new Error(`Cannot read "${range}" as a range: write it like B4 or B4:C9`);
  return helpers.toZone(range);
}

function rowsOf({ left, right, top, bottom }: Zone, cell: (col: number, row: number) => CellReading): CellReading[][] {
  return Array.from({ length: bottom - top + 1 }, (_, r) => Array.from({ length: right - left + 1 }, (_, c) => cell(left + c, top + r)));
}
