import { overlaps } from "../../workbook/cell-range";
import type { BookPort, SheetInfo } from "../../workbook/port";
import { type Area, LAST_COLUMN, LAST_ROW, areaText, readArea } from "../../workbook/xlsx/address";
import type { Selected } from "../selection";

export interface FreePlace {
  readonly area: Area;
  /** False where the selected cell has no room, so that it is another place. */
  readonly isSelected: boolean;
}

/** Where a block of empty cells begins at the selected cell, or else below all that the sheet holds; a sentence where there is none. */
export async function freePlace(port: BookPort, { sheet, cell }: Selected, { rows, columns }: { readonly rows: number; readonly columns: number }): Promise<FreePlace | string> {
  const info = (await port.sheets()).find(({ name }) => name === sheet);
  if (info?.isProtected) return `The sheet ${sheet} is protected: go to another one`;
  const at = (top: number, left: number): Area => ({ top, left, bottom: top + rows - 1, right: left + columns - 1 });
  const selected = readArea(cell);
  const wanted = selected && at(selected.top, selected.left);
  if (wanted && (await isFree(port, sheet, wanted, info))) return { area: wanted, isSelected: true };
  const used = readArea(info?.used ?? "");
  const below = used ? at(used.bottom + 2, used.left) : at(1, 1);
  return (await isFree(port, sheet, below, info)) ? { area: below, isSelected: false } : `There is no room left on ${sheet}: go to another sheet`;
}

async function isFree(port: BookPort, sheet: string, area: Area, info: SheetInfo | undefined): Promise<boolean> {
  if (area.bottom > LAST_ROW || area.right > LAST_COLUMN) return false;
  if (info?.merged.some((range) => overlaps(area, readArea(range) ?? area))) return false;
  const cells = await port.read({ sheet, range: areaText(area) });
  return cells.flat().every(({ value, formula }) => formula === null && (value === null || value === ""));
}
