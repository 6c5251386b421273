import type { CellContent, CellReading, CellWrite, Place, WorkbookPort } from "../../src/workbook/port";
import { addressOf, readArea, spotsOf } from "../../src/workbook/xlsx/address";

/** A workbook of nothing but cells; it computes no formula, so a written one shows what `results` says. */
export class MemoryPort implements WorkbookPort {
  readonly #cells = new Map<string, CellReading>();
  readonly #listeners = new Set<(place: Place) => void>();
  #selected: Place;
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
  async write(writes: readonly CellWrite[]): Promise<void> {
    this.#mayFail();
    for (const { sheet, cell, content, asText } of writes) {
      const formula = !asText && typeof content === "string" && content.startsWith("=") ? content : null;
      this.put(`${sheet}!${cell}`, { value: formula ? (this.results.get(formula) ?? 0) : content, formula, error: false });
    }
  }
  async select({ sheet, range }: Place): Promise<void> {
    this.move(sheet, range);
  }
  #mayFail(): void {
    if (this.fault !== null) throw new Error(this.fault);
  }
}

const key = (address: string): string => (address.includes("!") ? address : `Sheet1!${address}`);
