import { refuseBySheets, sheetKey, sortedChanges } from "../../src/workbook/changes";
import type { BookPort, CellContent, CellReading, CellWrite, Change, NamedPlace, NewSheet, Note, Picture, Place, SheetInfo, TableInfo, Undo } from "../../src/workbook/port";
import { grownTables } from "../../src/workbook/table-growth";
import { type Area, addressOf, areaText, readAddress, readArea, spotsOf } from "../../src/workbook/xlsx/address";

/** A workbook of cells, notes, tables, and the sheets and pictures that are added to it; it computes no formula, so a written one shows what `results` says. */
export class MemoryPort implements BookPort {
  readonly #cells = new Map<string, CellReading>();
  readonly #notes = new Map<string, string>();
  readonly #listeners = new Set<(place: Place) => void>();
  #selected: Place;
  /** By the name of their sheet. */
  tables: Readonly<Record<string, readonly TableInfo[]>> = {};
  named: readonly NamedPlace[] = [];
  /** Sheets and pictures that were added and not taken away, those of the new sheets among them. */
  made: readonly NewSheet[] = [];
  pictures: readonly Picture[] = [];
  readonly results = new Map<string, CellContent>();
  /** The sentence with which every use fails, while there is one. */
  fault: string | null = null;

  constructor(cells: Readonly<Record<string, CellContent | CellReading>> = {}, selected: Place = { sheet: "Sheet1", range: "B7" }) {
    for (const [address, cell] of Object.entries(cells)) this.put(address, cell);
    this.#selected = selected;
  }

  /** At Sheet1!B4, or B4 for the first sheet. */
  put(address: string, cell: CellContent | CellReading): void {
    this.#cells.set(key(address), typeof cell === "object" && cell !== null ? cell : { value: cell, formula: null, error: false });
  }
  at(address: string): CellReading {
    return this.#cells.get(key(address)) ?? { value: null, formula: null, error: false };
  }
  move(sheet: string, range: string): void {
    this.#selected = { sheet, range };
    for (const listener of this.#listeners) listener(this.#selected);
  }

  async selection(): Promise<Place> {
    this.#mayFail();
    return this.#selected;
  }
  onSelection(listener: (place: Place) => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }
  async read({ sheet, range }: Place): Promise<CellReading[][]> {
    this.#mayFail();
    const area = readArea(range);
    if (!area) throw new Error(`No such range: ${range}`);
    const rows: CellReading[][] = [];
    for (const spot of spotsOf(area)) (rows[spot.row - area.top] ??= []).push(this.at(`${sheet}!${addressOf(spot)}`));
    return rows;
  }
  async sheets(): Promise<SheetInfo[]> {
    this.#mayFail();
    const names = new Set([...this.#cells.keys(), `${this.#selected.sheet}!`].map((at) => at.slice(0, at.lastIndexOf("!"))));
    this.made.forEach(({ newSheet }) => names.delete(newSheet));
    const made = new Map(this.made.map((sheet) => [sheet.newSheet, sheet]));
    return [...names, ...made.keys()].map((name) => ({
      name,
      isVisible: made.get(name)?.isHidden !== true,
      isProtected: false,
      used: this.#used(name),
      tables: this.tables[name] ?? [],
      hiddenColumns: [],
      hasHiddenRows: false,
      merged: made.get(name)?.cells.flatMap(({ merge }) => merge ?? []) ?? [],
    }));
  }
  async names(): Promise<readonly NamedPlace[]> {
    this.#mayFail();
    return this.named;
  }
  async note({ sheet, cell }: { readonly sheet: string; readonly cell: string }): Promise<string | null> {
    this.#mayFail();
    return this.#notes.get(`${sheet}!${cell}`) ?? null;
  }
  async write(changes: readonly Change[]): Promise<Undo> {
    this.#mayFail();
    const sorted = sortedChanges(changes);
    const known = await this.sheets();
    refuseBySheets(sorted, known);
    const grown = await grownTables(sorted, known, (place) => this.read(place));
    const { cells, notes, sheets, pictures } = sorted;
    const all = [...sheets.flatMap(({ newSheet, cells: own }) => own.map((cell) => ({ ...cell, sheet: newSheet }))), ...cells];
    const before = all.map(({ sheet, cell }) => [`${sheet}!${cell}`, this.#cells.get(`${sheet}!${cell}`)] as const);
    const notesBefore = await Promise.all(notes.map(async (note): Promise<Note> => ({ ...note, note: await this.note(note) })));
    const { tables, made, pictures: picturesBefore } = this;
    this.made = [...made, ...sheets];
    this.pictures = [...picturesBefore, ...pictures];
    for (const { sheet, table, tableRange } of grown)
      this.tables = { ...this.tables, [sheet]: (this.tables[sheet] ?? []).map((one) => (sheetKey(one.name) === sheetKey(table) ? { ...one, range: tableRange } : one)) };
    for (const cell of all) this.#type(cell);
    notes.forEach((note) => this.#annotate(note));
    return {
      undo: async () => {
        this.#mayFail();
        for (const [at, cell] of before)
          if (cell) this.#cells.set(at, cell);
          else this.#cells.delete(at);
        notesBefore.forEach((note) => this.#annotate(note));
        Object.assign(this, { tables, made, pictures: picturesBefore });
      },
    };
  }
  async select({ sheet, range }: Place): Promise<void> {
    this.move(sheet, range);
  }
  async recalculate(): Promise<void> {
    this.#mayFail();
    for (const [at, { formula, ...cell }] of this.#cells) if (formula !== null && this.results.has(formula)) this.put(at, { ...cell, formula, value: this.results.get(formula) ?? null, error: false });
  }
  #type({ sheet, cell, content, asText, like, numberFormat = like && this.at(`${sheet}!${like}`).numberFormat }: CellWrite): void {
    const formula = !asText && typeof content === "string" && content.startsWith("=") ? content : null;
    this.put(`${sheet}!${cell}`, { value: formula ? (this.results.get(formula) ?? 0) : content, formula, error: false, ...(numberFormat === undefined ? {} : { numberFormat }) });
  }
  #annotate({ sheet, cell, note }: Note): void {
    if (note === null) this.#notes.delete(`${sheet}!${cell}`);
    else this.#notes.set(`${sheet}!${cell}`, note);
  }
  #used(sheet: string): string | null {
    const spots = [...this.#cells]
      .filter(([at, { value, formula }]) => at.startsWith(`${sheet}!`) && (value !== null || formula !== null))
      .flatMap(([at]) => readAddress(at.slice(sheet.length + 1)) ?? []);
    const [first] = spots;
    if (!first) return null;
    const around = spots.reduce<Area>(
      (area, { row, column }) => ({ top: Math.min(area.top, row), left: Math.min(area.left, column), bottom: Math.max(area.bottom, row), right: Math.max(area.right, column) }),
      { top: first.row, left: first.column, bottom: first.row, right: first.column },
    );
    return areaText(around);
  }
  #mayFail(): void {
    if (this.fault !== null) throw new Error(this.fault);
  }
}

const key = (address: string): string => (address.includes("!") ? address : `Sheet1!${address}`);
