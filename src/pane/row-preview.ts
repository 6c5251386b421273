import { evaluate } from "../explaining/evaluate";
import { readReferences } from "../explaining/references";
import { expression } from "../formulas/expression";
import type { BookPort, CellReading, CellWrite } from "../workbook/port";
import { addressOf, readAddress, readArea } from "../workbook/xlsx/address";

const EMPTY: CellReading = { value: null, formula: null, error: false };

/** What a cell of a row will show when these cells of it are written, where our functions and plain arithmetic alone make it; else null. */
export async function previewed({ sheet, row, writes }: { readonly sheet: string; readonly row: number; readonly writes: readonly CellWrite[] }, address: string, port: BookPort): Promise<number | null> {
  const planned = new Map(writes.filter((write) => write.sheet === sheet).map((write) => [write.cell, write]));
  const shown = new Map<string, Promise<CellReading | null>>();
  let isWhole = true;

  const overlay = {
    sheets: () => port.sheets(),
    names: () => port.names(),
    async read(place: { readonly sheet: string; readonly range: string }) {
      const area = readArea(place.range);
      const isInRow = area !== null && place.sheet === sheet && row >= area.top && row <= area.bottom;
      if (!isInRow) return port.read(place);
      const own = await Promise.all(Array.from({ length: area.right - area.left + 1 }, async (_, c) => (await reading(addressOf({ row, column: area.left + c }))) ?? EMPTY));
      // The sheet itself may not be made yet.
      if (area.top === area.bottom) return [own];
      return (await port.read(place)).map((line, r) => (area.top + r === row ? own : line));
    },
  };
  const reading = (cell: string): Promise<CellReading | null> => {
    const known = shown.get(cell) ?? compute(cell);
    shown.set(cell, known);
    return known;
  };
  async function compute(cell: string): Promise<CellReading | null> {
    const write = planned.get(cell);
    const spot = readAddress(cell);
    if (!spot) return EMPTY;
    const held = write ? null : await heldNow(cell);
    const content = write ? write.content : (held?.formula ?? held?.value ?? null);
    if (typeof content !== "string" || !content.startsWith("=") || write?.asText || (held && held.formula === null)) return { ...EMPTY, value: content };
    const found = evaluate(expression(content.slice(1)), await readReferences(content, { sheet, spot }, overlay));
    if (found.kind === "known" && (typeof found.holds === "number" || typeof found.holds === "string")) return { ...EMPTY, value: found.holds };
    isWhole = false;
    return null;
  }
  /** The sheet itself may not be made yet. */
  const heldNow = (cell: string): Promise<CellReading> => port.read({ sheet, range: cell }).then((rows) => rows[0]?.[0] ?? EMPTY, () => EMPTY);
  const value = (await reading(address))?.value;
  return isWhole && typeof value === "number" ? value : null;
}
