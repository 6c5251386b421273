import type { Model } from "@odoo/o-spreadsheet";
import { keptChanges } from "../workbook/grid-kept";
import { placeOf } from "./place";

/** The look that a cell got through the port, in the words of a patch. */
export interface WrittenLook {
  readonly like?: string;
  readonly numberFormat?: string;
}

/** The looks that were written into cells of the file, by their places. */
export function writtenLooks(model: Model): Map<string, WrittenLook> {
  const looks = new Map<string, WrittenLook>();
  for (const { cells } of keptChanges(model))
    for (const { sheet, cell, like, numberFormat } of cells) {
      if (like === undefined && numberFormat === undefined) continue;
      const place = placeOf(sheet, cell);
      const source = like?.replaceAll("$", "").toUpperCase();
      // The cell that it is to look like may have got its own look in the same way.
      const base = source === undefined ? looks.get(place) : (looks.get(placeOf(sheet, source)) ?? { like: source });
      looks.set(place, { ...base, ...(numberFormat === undefined ? {} : { numberFormat }) });
    }
  return looks;
}
