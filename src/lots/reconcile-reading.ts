import { readArea } from "../workbook/xlsx/address";
import type { WorkbookReading } from "../workbook/file-reading";
import type { CellReading, NamedPlace, Place, SheetInfo } from "../workbook/port";
import { type SheetReading, isTyped } from "./sheet-reading";

/** Sheets that were read whole, read again without asking the spreadsheet for every cell. */
export class SheetsReading implements WorkbookReading {
  readonly #byName: ReadonlyMap<string, SheetReading>;
  readonly #texts = new Map<string, ReadonlyMap<number, readonly number[]>>();

  constructor(
    private readonly all: readonly SheetReading[],
    private readonly named: readonly NamedPlace[],
  ) {
    this.#byName = new Map(all.map((sheet) => [sheet.info.name.toLowerCase(), sheet]));
  }

  async sheets(): Promise<readonly SheetInfo[]> {
    return this.all.map(({ info }) => info);
  }

  async names(): Promise<readonly NamedPlace[]> {
    return this.named;
  }

  async read({ sheet, range }: Place): Promise<CellReading[][]> {
    const [area, found] = [readArea(range), this.#byName.get(sheet.toLowerCase())];
    if (!area || !found) throw new Error(`Cannot read ${sheet}!${range}: there are no such cells`);
    return Array.from({ length: area.bottom - area.top + 1 }, (_, r) => Array.from({ length: area.right - area.left + 1 }, (__, c) => found.at(area.top + r, area.left + c)));
  }

  textAbove(sheet: string, row: number, column: number): number | null {
    return (this.#textsOf(sheet).get(column) ?? []).findLast((at) => at < row) ?? null;
  }

  /** The rows of typed texts, by their columns. */
  #textsOf(name: string): ReadonlyMap<number, readonly number[]> {
    const key = name.toLowerCase();
    const before = this.#texts.get(key);
    if (before) return before;
    const texts = new Map<number, number[]>();
    const { area, rows = [] } = this.#byName.get(key) ?? {};
    rows.forEach((cells, r) =>
      cells.forEach((cell, c) => {
        if (!area || typeof cell.value !== "string" || !isTyped(cell)) return;
        const column = area.left + c;
        const known = texts.get(column);
        if (known) known.push(area.top + r);
        else texts.set(column, [area.top + r]);
      }),
    );
    this.#texts.set(key, texts);
    return texts;
  }
}
