import { type Token, type TokenKind, tokens } from "../formulas/tokens";
import type { WorkbookReading } from "../workbook/file-reading";
import type { CellReading, NamedPlace } from "../workbook/port";
import { type PlacedTable, type SheetArea, placedTable, tableColumns } from "../workbook/table-columns";
import { type Area, type Spot, areaText, cellCount, readArea } from "../workbook/xlsx/address";
import { readCellRange } from "../workbook/cell-range";

/** Cells that a formula names, and what they hold now. */
export interface Referenced extends SheetArea {
  /** As the formula writes them. */
  readonly text: string;
  /** [row][column] */
  readonly rows: readonly (readonly CellReading[])[];
}

/** By their text in the formula; those that cannot be read here are missing. */
export type References = ReadonlyMap<string, Referenced>;

/** The cell in which a formula stands. */
export interface Standing {
  readonly sheet: string;
  readonly spot: Spot;
}

/** More cells than these are not read for an explanation. */
const MOST_CELLS = 200_000;

export async function readReferences(formula: string, on: Standing, port: WorkbookReading): Promise<References> {
  const found = tokens(formula);
  const isThere = (kind: TokenKind): boolean => found.some((token) => token.kind === kind);
  const tables = isThere("columns") ? await readTables(port) : [];
  const names = isThere("name") ? await port.names() : [];
  const cellsOf = ({ kind, text }: Token): SheetArea | null => {
    if (kind === "reference") return plainCells(text, on);
    if (kind === "columns") return tableColumns(text, on, tables);
    return kind === "name" ? namedCells(text, names) : null;
  };
  const placed = new Map(found.map((token) => [token.text, cellsOf(token)]));
  const read = await Promise.all([...placed].map(([text, cells]) => cells && referenced(text, cells, port)));
  return new Map(read.flatMap((one) => (one ? [[one.text, one] as const] : [])));
}

async function referenced(text: string, cells: SheetArea, port: WorkbookReading): Promise<Referenced | null> {
  if (cellCount(cells.area) > MOST_CELLS) return null;
  try {
    return { ...cells, text, rows: await port.read({ sheet: cells.sheet, range: areaText(cells.area) }) };
  } catch {
    // A sheet that is gone, or another workbook: the formula's own error tells.
    return null;
  }
}

function plainCells(text: string, on: Standing): SheetArea | null {
  const range = readCellRange(text);
  if (!range || range.sheet?.includes("[")) return null;
  return { sheet: range.sheet ?? on.sheet, area: range.area };
}

function namedCells(text: string, names: readonly NamedPlace[]): SheetArea | null {
  const found = names.find(({ name }) => name.toLowerCase() === text.toLowerCase());
  const area = found && readArea(found.place.range);
  return area ? { sheet: found.place.sheet, area } : null;
}

async function readTables(port: WorkbookReading): Promise<readonly PlacedTable[]> {
  const sheets = await port.sheets();
  const read = sheets.flatMap(({ name, tables }) =>
    tables.map(async (info) => {
      const area = readArea(info.range);
      const [row = []] = area ? await port.read({ sheet: name, range: areaText(headingRow(area)) }) : [];
      return placedTable(name, info, row.map(({ value }) => String(value ?? "")));
    }),
  );
  return (await Promise.all(read)).flatMap((table) => table ?? []);
}

const headingRow = (area: Area): Area => ({ ...area, bottom: area.top });
