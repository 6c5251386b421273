import { sortedChanges } from "../../src/workbook/changes";
import type { CellContent, CellReading, CellWrite, Change, NamedPlace, Note, Place, SheetInfo, TableInfo, Undo, BookPort } from "../../src/workbook/port";
import { type Area, addressOf, areaText, readAddress, readArea, spotsOf } from "../../src/workbook/xlsx/address";

/** A workbook of cells, notes and the tables that it is given; it computes no formula, so a written one shows what `results` says. */
export class MemoryPort implements BookPort {
  readonly #cells = new Map<string, CellReading>();
  readonly #notes = new Map<string, string>();
  readonly #listeners = new Set<(place: Place) => void>();
  #selected: Place;
  /** By the name of their sheet. */
  tables: Readonly<Record<string, readonly TableInfo[]>> = {};
  named: readonly NamedPlace[] = [];
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
    return [...names].map((name) => ({
      name,
      isVisible: true,
      isProtected: false,
      used: this.#used(name),
      tables: this.tables[name] ?? [],
      hiddenColumns: [],
      hasHiddenRows: false,
      merged: [],
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
    const { cells, notes, sheets, pictures } = sortedChanges(changes);
    if (sheets.length > 0 || pictures.length > 0) throw new Error("This workbook takes cells and notes alone");
    const before = [...cells.map(({ sheet, cell }) => [`${sheet}!${cell}`, this.at(`${sheet}!${cell}`)] as const)];
    const notesBefore = await Promise.all(notes.map(async (note): Promise<Note> => ({ ...note, note: await this.note(note) })));
    for (const cell of cells) this.#type(cell);
    notes.forEach((note) => this.#annotate(note));
    return {
      undo: async () => {
        this.#mayFail();
        for (const [at, cell] of before) this.put(at, cell);
        notesBefore.forEach((note) => this.#annotate(note));
      },
    };
  }
  async select({ sheet, range }: Place): Promise<void> {
    this.move(sheet, range);
  }
  #type({ sheet, cell, content, asText }: CellWrite): void {
    const formula = !asText && typeof content === "string" && content.startsWith("=") ? content : null;
    this.put(`${sheet}!${cell}`, { value: formula ? (this.results.get(formula) ?? 0) : content, formula, error: false });
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
