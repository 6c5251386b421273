import type { BookPort, CellContent, CellReading, SheetInfo } from "../workbook/port";
import { type Area, areaText, columnName, readArea } from "../workbook/xlsx/address";
import { SETTINGS_SHEET } from "../workbook/settings";

const EMPTY: CellReading = { value: null, formula: null, error: false };

/** A sheet as it was read: what it is, and the cells of its used range. */
export class SheetReading {
  readonly area: Area | null;

  constructor(
    readonly info: SheetInfo,
    /** [row][column], from the upper left cell of the used range. */
    readonly rows: readonly (readonly CellReading[])[],
  ) {
    this.area = info.used === null ? null : readArea(info.used);
  }

  at(row: number, column: number): CellReading {
    if (!this.area) return EMPTY;
    return this.rows[row - this.area.top]?.[column - this.area.left] ?? EMPTY;
  }

  text(row: number, column: number): string {
    const { value } = this.at(row, column);
    return typeof value === "string" ? value.trim() : "";
  }

  isHidden(column: number): boolean {
    return this.info.hiddenColumns.includes(columnName(column));
  }
}

/** A cell in which a person typed something. */
export const isTyped = ({ value, formula }: CellReading): boolean => formula === null && !isBlank(value);

export const isFilled = ({ value, formula }: CellReading): boolean => formula !== null || !isBlank(value);

const isBlank = (value: CellContent): boolean => value === null || (typeof value === "string" && value.trim() === "");

/** One answer of Excel on the web carries some megabytes at most. */
const CELLS_AT_ONCE = 30_000;

/** Every sheet with its cells, but the one on which the add-in keeps its settings. */
export async function readSheets(port: Pick<BookPort, "sheets" | "read">): Promise<SheetReading[]> {
  const readings: SheetReading[] = [];
  for (const info of await port.sheets()) {
    if (info.name.toLowerCase() === SETTINGS_SHEET.toLowerCase()) continue;
    const area = info.used === null ? null : readArea(info.used);
    readings.push(new SheetReading(info, area ? await readInBlocks(port, info.name, area) : []));
  }
  return readings;
}

async function readInBlocks(port: Pick<BookPort, "read">, sheet: string, area: Area): Promise<(readonly CellReading[])[]> {
  const atOnce = Math.max(1, Math.floor(CELLS_AT_ONCE / (area.right - area.left + 1)));
  const rows: (readonly CellReading[])[] = [];
  for (let top = area.top; top <= area.bottom; top += atOnce) {
    const block = { ...area, top, bottom: Math.min(area.bottom, top + atOnce - 1) };
    rows.push(...(await port.read({ sheet, range: areaText(block) })));
  }
  return rows;
}
