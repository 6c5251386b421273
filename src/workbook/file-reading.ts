import type { Cell, XlsxFile } from "./file";
import type { CellReading, NamedPlace, Place, BookPort, SheetInfo } from "./port";
import { namedPlaces } from "./range-names";
import { addressOf, readArea, spotsOf } from "./xlsx/address";

/** What a port reads. */
export interface WorkbookReading extends Pick<BookPort, "read" | "sheets" | "names"> {
  /** The row of the nearest typed text above a cell in its column; left out where only reading the column tells. */
  textAbove?(sheet: string, row: number, column: number): number | null;
}

/** Reads a file through the words of the port; number formats are not told. */
export class FileReading implements WorkbookReading {
  readonly #contents = new Map<string, ReadonlyMap<string, Cell>>();
  readonly #texts = new Map<string, ReadonlyMap<number, readonly number[]>>();

  constructor(readonly file: XlsxFile) {}

  async sheets(): Promise<readonly SheetInfo[]> {
    return this.file.sheets.filter(({ kind }) => kind === "worksheet").map(({ name }) => this.file.facts(name));
  }

  async names(): Promise<readonly NamedPlace[]> {
    return namedPlaces(this.file);
  }

  async read({ sheet, range }: Place): Promise<CellReading[][]> {
    const area = readArea(range);
    if (!area) throw new Error(`Cannot use ${sheet}!${range}: it must be a cell or a range, such as B4 or B4:C9`);
    const cells = this.contents(sheet);
    const rows: CellReading[][] = [];
    for (const spot of spotsOf(area)) (rows[spot.row - area.top] ??= []).push(readingOf(cells.get(addressOf(spot))));
    return rows;
  }

  textAbove(sheet: string, row: number, column: number): number | null {
    const rows = this.#textsOf(sheet).get(column) ?? [];
    let [low, high] = [0, rows.length];
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((rows[middle] ?? 0) < row) low = middle + 1;
      else high = middle;
    }
    return rows[low - 1] ?? null;
  }

  /** The rows of typed texts, by their columns. */
  #textsOf(sheet: string): ReadonlyMap<number, readonly number[]> {
    const key = sheet.toLowerCase();
    const known = this.#texts.get(key);
    if (known) return known;
    const texts = new Map<number, number[]>();
    for (const { row, column, value, formula } of this.contents(sheet).values()) {
      if (formula !== null || typeof value !== "string" || value.trim() === "") continue;
      const rows = texts.get(column);
      if (rows) rows.push(row);
      else texts.set(column, [row]);
    }
    this.#texts.set(key, texts);
    return texts;
  }

  /** The filled cells of a sheet by their addresses. */
  contents(sheet: string): ReadonlyMap<string, Cell> {
    const key = sheet.toLowerCase();
    const known = this.#contents.get(key) ?? new Map([...this.file.cells(sheet)].map((cell) => [cell.address, cell]));
    this.#contents.set(key, known);
    return known;
  }
}

const readingOf = (cell: Cell | undefined): CellReading => ({ value: cell?.value ?? null, formula: cell?.formula ?? null, error: cell?.error ?? false });
