import { type Model, type UID, type Zone, helpers } from "@odoo/o-spreadsheet";
import { quietly } from "../engine/quietly";
import { readCell } from "../engine/read-cell";
import { takeSteps } from "../engine/steps";
import type { Additions } from "./file";
import { refuseBySheets, sheetKey, sortedChanges } from "./changes";
import { keptChanges } from "./grid-kept";
import { gridSteps } from "./grid-steps";
import { tablesNow } from "./grid-tables";
import { zoneOf, zoneText } from "./grid-zone";
import type { BookPort, CellReading, Place, SheetInfo } from "./port";
import { grownTables, refuseHeadings } from "./table-growth";

/** What the file that is open in the grid knows and the grid does not. */
export interface GridFile {
  facts(sheet: string): SheetInfo | null;
  notes(sheet: string): ReadonlyMap<string, string>;
  /** Throws where the file could not hold what is added. */
  tryOut(additions: Additions): void;
}

const NO_FILE: GridFile = { facts: () => null, notes: () => new Map(), tryOut: () => undefined };

/** The smallest zone that holds these cells, of which there may be hundreds of thousands. */
function around(cells: readonly { readonly col: number; readonly row: number }[]): Zone {
  const [first = { col: 0, row: 0 }] = cells;
  const zone = { left: first.col, right: first.col, top: first.row, bottom: first.row };
  for (const { col, row } of cells) {
    zone.left = Math.min(zone.left, col);
    zone.right = Math.max(zone.right, col);
    zone.top = Math.min(zone.top, row);
    zone.bottom = Math.max(zone.bottom, row);
  }
  return zone;
}

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
    const filled = getters.getCells(id).filter((cell) => cell.isFormula || cell.content !== "");
    const columns = Array.from({ length: getters.getNumberCols(id) }, (_, col) => col);
    const rows = Array.from({ length: getters.getNumberRows(id) }, (_, row) => row);
    return {
      name,
      isVisible: getters.isSheetVisible(id),
      isProtected: getters.isSheetLocked(id),
      used: filled.length === 0 ? null : zoneText(around(filled.map((cell) => getters.getCellPosition(cell.id)))),
      tables: tablesNow(model, id, facts?.tables ?? []),
      hiddenColumns: columns.filter((col) => getters.isColHidden(id, col)).map((col) => helpers.numberToLetters(col)),
      // The grid hides rows only where it knows the filter.
      hasHiddenRows: facts?.hasHiddenRows === true || rows.some((row) => getters.isRowHidden(id, row)),
      merged: getters.getMerges(id).map(zoneText),
    };
  };

  const reading = (id: UID, col: number, row: number): CellReading => {
    const format = getters.getCell({ sheetId: id, col, row })?.format;
    return { ...readCell(model, { sheetId: id, col, row }), ...(format ? { numberFormat: format } : {}) };
  };

  const read: BookPort["read"] = async ({ sheet, range }) => {
    const id = sheetId(sheet);
    return rowsOf(zoneOf(range), (col, row) => reading(id, col, row));
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

    read,

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
      const known = await sheets();
      refuseBySheets(sorted, known);
      for (const write of sorted.cells) refuseHeadings(write, file.facts(write.sheet)?.tables ?? []);
      const tables = await grownTables(sorted, known, read);
      file.tryOut({ sheets: sorted.sheets.map((sheet) => ({ ...sheet, cells: [] })), notes: sorted.notes, tables });
      const { id, steps, backwards } = gridSteps(model, sorted, tables, sheetId);
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

    async recalculate() {
      quietly(() => model.dispatch("EVALUATE_CELLS"));
    },
  };
}

const textOf = ({ sheet, range }: Place): string => `${sheet}!${range}`;

function rowsOf({ left, right, top, bottom }: Zone, cell: (col: number, row: number) => CellReading): CellReading[][] {
  return Array.from({ length: bottom - top + 1 }, (_, r) => Array.from({ length: right - left + 1 }, (_, c) => cell(left + c, top + r)));
}
