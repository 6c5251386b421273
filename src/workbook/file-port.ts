import { type Book, type StoredSheet, workbookOf } from "../engine/book";
import { isReadable } from "../engine/readable";
import { isCellError, type Outcome, type OutcomeCell } from "../engine/outcome";
import { refuseBySheets, sheetKey, sortedChanges } from "./changes";
import { type AddedCell, type AddedSheet, type Cell, type CellChange, type CellValue, openXlsx, type XlsxFile } from "./file";
import type { CellContent, CellReading, CellWrite, Change, NamedPlace, NewSheet, Place, SheetInfo, Undo, BookPort } from "./port";
import { namedPlaces, rangeNames } from "./range-names";
import { grownTables } from "./table-growth";
import { addressOf, readAddress, readArea, spotsOf } from "./xlsx/address";

/** The port over a file in memory: every write gives a new file, with the values that its formulas then have. */
export class FilePort implements BookPort {
  readonly #selected: Place | undefined;
  #state: State;

  constructor(file: XlsxFile, selected?: Place) {
    this.#state = new State(file);
    this.#selected = selected;
  }

  /** As it is now. */
  get file(): XlsxFile {
    return this.#state.file;
  }

  async selection(): Promise<Place> {
    const first = this.file.sheets.find(({ kind, state }) => kind === "worksheet" && state === "visible");
    return this.#selected ?? { sheet: first?.name ?? "", range: "A1" };
  }

  /** Nobody selects anything in a file. */
  onSelection(): () => void {
    return () => undefined;
  }

  async select({ sheet, range }: Place): Promise<void> {
    this.#state.area(sheet, range);
  }

  async sheets(): Promise<readonly SheetInfo[]> {
    return this.#state.infos();
  }

  async read({ sheet, range }: Place): Promise<CellReading[][]> {
    const area = this.#state.area(sheet, range);
    const rows: CellReading[][] = [];
    const formats = this.#state.formats(sheet, [...spotsOf(area)].map(addressOf));
    for (const spot of spotsOf(area)) (rows[spot.row - area.top] ??= []).push(this.#state.read(sheet, addressOf(spot), formats));
    return rows;
  }

  async names(): Promise<NamedPlace[]> {
    return namedPlaces(this.file);
  }

  async note({ sheet, cell }: { readonly sheet: string; readonly cell: string }): Promise<string | null> {
    return this.file.notes(sheet).get(cell.replaceAll("$", "").toUpperCase()) ?? null;
  }

  async write(changes: readonly Change[]): Promise<Undo> {
    const sorted = sortedChanges(changes);
    refuseBySheets(sorted, this.#state.infos());
    const tables = await grownTables(sorted, this.#state.infos(), (place) => this.read(place));
    const before = this.#state;
    const bytes = before.patched(sorted.cells, sorted.sheets, (cells, sheets) => before.file.patch(cells, { sheets, notes: sorted.notes, pictures: sorted.pictures, tables }));
    const after = new State(openXlsx(bytes));
    this.#state = after;
    return {
      undo: async () => {
        if (this.#state.written !== after) throw new Error("Cannot undo: something was written after it: undo that first");
        this.#state = before;
      },
    };
  }

  async recalculate(): Promise<void> {
    this.#state = this.#state.recalculated();
  }
}

type Contents = ReadonlyMap<string, Cell>;

/** One file and what is computed from it. */
class State {
  readonly #cells = new Map<string, Contents>();
  #infos: readonly SheetInfo[] | undefined;
  #book: Book | undefined;

  constructor(
    readonly file: XlsxFile,
    private readonly computedFrom: State | null = null,
  ) {}

  /** What was written last: computing it again is no writing. */
  get written(): State {
    return this.computedFrom ?? this;
  }

  infos(): readonly SheetInfo[] {
    return (this.#infos ??= this.#worksheets().map((name) => this.file.facts(name)));
  }

  area(sheet: string, range: string) {
    const area = readArea(range);
    if (!area) throw new Error(`Cannot use ${sheet}!${range}: it must be a cell or a range, such as B4 or B4:C9`);
    this.#name(sheet, range);
    return area;
  }

  formats(sheet: string, cells: readonly string[]): (cell: string) => string | undefined {
    const style = this.file.styles(this.#name(sheet, ""), cells);
    return (cell) => this.file.numberFormat(style(cell));
  }

  read(sheet: string, address: string, formats: (cell: string) => string | undefined): CellReading {
    const cell = this.#contents(this.#name(sheet, address)).get(address);
    const code = formats(address);
    const numberFormat = code === undefined ? {} : { numberFormat: code };
    return { value: cell?.value ?? null, formula: cell?.formula ?? null, error: cell?.error ?? false, ...numberFormat };
  }

  recalculated(): State {
    const book = this.#computed();
    const changes = book.lotCells().flatMap(({ sheet, address, reading }): CellChange[] => {
      const stored = this.#contents(sheet);
      const { error = false, fills = null } = stored.get(address) ?? {};
      // What this engine does not know keeps the value that another program gave it.
      if (reading.value === "#NAME?" && !error) return [];
      const now = results(book.outcome(sheet, address), fills !== null && fills !== address);
      return holds(stored, address, now.spill ?? [[now]]) ? [] : [{ sheet, cell: address, ...now }];
    });
    return changes.length === 0 ? this : new State(openXlsx(this.file.patch(changes)), this.written);
  }

  #computed(): Book {
    return (this.#book ??= workbookOf(this.#stored(), rangeNames(this.file)));
  }

  /** What to patch: the changed cells with the results of their formulas, and every formula elsewhere whose result is another now. */
  patched<T>(writes: readonly CellWrite[], sheets: readonly NewSheet[], patch: (cells: readonly CellChange[], sheets: readonly AddedSheet[]) => T): T {
    const written = new Map(writes.map((write) => [`${sheetKey(write.sheet)}!${plain(write.cell)}`, write]));
    refuseUnreadable(writes, sheets);
    const now = this.#sheetsWith(writes, sheets);
    const after = workbookOf(now, rangeNames(this.file));
    const made = new Set(sheets.map(({ newSheet }) => sheetKey(newSheet)));
    const cells: CellChange[] = writes.filter(({ sheet }) => !made.has(sheetKey(sheet))).map((write) => change(write, after));
    const before = this.#computed();
    for (const name of this.#worksheets())
      for (const { address, formula, fills } of this.#contents(name).values()) {
        if (formula === null || written.has(`${sheetKey(name)}!${address}`)) continue;
        const [was, is] = [before.outcome(name, address), after.outcome(name, address)];
        if (JSON.stringify(was) !== JSON.stringify(is)) cells.push({ sheet: name, cell: address, ...results(is, fills !== null && fills !== address) });
      }
    return patch(cells, sheets.map((sheet) => added(sheet, writes, after)));
  }

  #worksheets(): string[] {
    return this.file.sheets.filter(({ kind }) => kind === "worksheet").map(({ name }) => name);
  }

  /** The name as the workbook writes it. */
  #name(sheet: string, range: string): string {
    const found = this.#worksheets().find((name) => sheetKey(name) === sheetKey(sheet));
    if (found === undefined) throw new Error(`Cannot read ${sheet}${range && `!${range}`}: this workbook has no sheet of that name`);
    return found;
  }

  #contents(sheet: string): Contents {
    const known = this.#cells.get(sheet) ?? new Map([...this.file.cells(sheet)].map((cell) => [cell.address, cell]));
    this.#cells.set(sheet, known);
    return known;
  }

  #stored(): StoredSheet[] {
    return this.#worksheets().map((name) => ({ name, cells: this.#contents(name).values() }));
  }

  #sheetsWith(writes: readonly CellWrite[], sheets: readonly NewSheet[]): StoredSheet[] {
    const all = new Map(this.#stored().map(({ name, cells }) => [sheetKey(name), { name, cells: new Map([...cells].map((cell) => [cell.address, cell as StoredCell])) }]));
    for (const { newSheet } of sheets) all.set(sheetKey(newSheet), { name: newSheet, cells: new Map() });
    const put = (sheet: string, { cell, content, asText }: Pick<CellWrite, "cell" | "content" | "asText">): void => {
      const formula = formulaOf({ content, ...(asText ? { asText } : {}) });
      const address = plain(cell);
      all.get(sheetKey(sheet))?.cells.set(address, { address, formula, fills: null, value: formula === null ? content : null, error: false });
    };
    for (const { newSheet, cells } of sheets) for (const cell of cells) put(newSheet, cell);
    for (const write of writes) put(write.sheet, write);
    return [...all.values()].map(({ name, cells }) => ({ name, cells: cells.values() }));
  }
}

type StoredCell = StoredSheet["cells"] extends Iterable<infer T> ? T : never;

const plain = (cell: string): string => cell.replaceAll("$", "").toUpperCase();

const formulaOf = ({ content, asText }: { readonly content: CellContent; readonly asText?: boolean }): string | null =>
  typeof content === "string" && content.startsWith("=") && !asText ? content : null;

function refuseUnreadable(writes: readonly CellWrite[], sheets: readonly NewSheet[]): void {
  const all = [...writes, ...sheets.flatMap(({ newSheet, cells }) => cells.map((cell) => ({ sheet: newSheet, ...cell })))];
  const bad = all.find((write) => !isReadable(formulaOf(write) ?? "=0"));
  if (bad) throw new Error(`Cannot write ${bad.sheet}!${bad.cell}: ${String(bad.content)} cannot be read as a formula`);
}

function change(write: CellWrite, book: Book): CellChange {
  const { sheet, cell, numberFormat, like } = write;
  const look = { ...(numberFormat === undefined ? {} : { numberFormat }), ...(like === undefined ? {} : { like }) };
  return { sheet, cell: plain(cell), ...contents(write, sheet, book), ...look };
}

function added({ newSheet, cells, pictures: _pictures, ...rest }: NewSheet, writes: readonly CellWrite[], book: Book): AddedSheet {
  const more = new Map(writes.filter(({ sheet }) => sheetKey(sheet) === sheetKey(newSheet)).map((write) => [plain(write.cell), write]));
  const known = new Set(cells.map(({ cell }) => plain(cell)));
  const own = cells.map(({ content, asText, ...cell }): AddedCell => ({ ...cell, cell: plain(cell.cell), ...contents(more.get(plain(cell.cell)) ?? { cell: cell.cell, content, ...(asText ? { asText } : {}) }, newSheet, book) }));
  const extra = [...more].filter(([address]) => !known.has(address)).map(([address, write]): AddedCell => ({ cell: address, ...contents(write, newSheet, book), ...(write.numberFormat === undefined ? {} : { numberFormat: write.numberFormat }) }));
  return { newSheet, ...rest, cells: [...own, ...extra] };
}

function contents(write: Pick<CellWrite, "cell" | "content" | "asText">, sheet: string, book: Book): Pick<CellChange, "formula" | "value" | "error" | "spill"> {
  const formula = formulaOf(write);
  return formula === null ? { formula: null, value: write.content } : { formula, ...results(book.outcome(sheet, plain(write.cell)), false) };
}

function results(outcome: Outcome, isArray: boolean): Pick<CellChange, "value" | "error" | "spill"> {
  const rows = (isRows(outcome) ? outcome : [[outcome]]).map((row) => row.map(cellValue));
  const first = rows[0]?.[0] ?? { value: null };
  return { ...first, ...(isRows(outcome) || isArray ? { spill: rows } : {}) };
}

function holds(stored: Contents, address: string, rows: readonly (readonly { readonly value?: CellContent }[])[]): boolean {
  const { row, column } = readAddress(address) ?? { row: 0, column: 0 };
  return rows.every((cells, r) => cells.every(({ value = null }, c) => (stored.get(addressOf({ row: row + r, column: column + c }))?.value ?? null) === value));
}

const isRows = (outcome: Outcome): outcome is readonly (readonly OutcomeCell[])[] => Array.isArray(outcome);

const cellValue = (cell: OutcomeCell): CellValue => (isCellError(cell) ? { value: cell.error, error: true } : { value: cell });
