import { type Model, type Zone, helpers, parse } from "@odoo/o-spreadsheet";
import { typed, typedText } from "../engine/cell-text";
import { readCell } from "../engine/read-cell";
import { type TypedCell, writeCells } from "../engine/write-cells";
import type { CellReading, CellWrite, Place, WorkbookPort } from "./port";

/** The port over the embedded grid. */
export function gridPort(model: Model): WorkbookPort {
  const { getters } = model;

  const sheetId = (name: string): string => {
    const id = getters.getSheetIdByName(name);
    if (id === undefined) throw new Error(`Cannot find the sheet "${name}" in this workbook`);
    return id;
  };

  const selected = (): Place => {
    const zone = getters.getSelectedZone();
    return { sheet: getters.getSheetName(getters.getActiveSheetId()), range: zoneText(zone) };
  };

  const typedCell = (write: CellWrite): TypedCell => {
    const { left, top } = zoneOf(write.cell);
    const content = typedContent(write);
    return { sheetId: sheetId(write.sheet), col: left, row: top, content, ...(write.numberFormat === undefined ? {} : { format: write.numberFormat }) };
  };

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

    async read({ sheet, range }) {
      const id = sheetId(sheet);
      return rowsOf(zoneOf(range), (col, row) => readCell(model, { sheetId: id, col, row }));
    },

    async write(writes) {
      writeCells(model, writes.map(typedCell));
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

function typedContent({ sheet, cell, content, asText }: CellWrite): string {
  if (typeof content !== "string") return typed(content);
  if (asText || !content.startsWith("=")) return typedText(content);
  try {
    parse(content);
  } catch {
    throw new Error(`Cannot write ${sheet}!${cell}: ${content} cannot be read as a formula`);
  }
  return content;
}

