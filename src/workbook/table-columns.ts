import type { TableInfo } from "./port";
import { type Area, type Spot, isInside, readArea } from "./xlsx/address";

/** A table and where it stands. */
export interface PlacedTable {
  readonly sheet: string;
  readonly info: TableInfo;
  readonly area: Area;
  /** From left to right. */
  readonly headings: readonly string[];
}

export interface SheetArea {
  readonly sheet: string;
  readonly area: Area;
}

/** The cells that Lots[Net], Lots[@Net] or [@Net] mean in a formula of that cell; null where they cannot be told. */
export function tableColumns(text: string, on: { readonly sheet: string; readonly spot: Spot }, tables: readonly PlacedTable[]): SheetArea | null {
  const asked = readColumns(text);
  const table = asked && tables.find(({ sheet, info, area }) => (asked.table === "" ? sheet === on.sheet && isInside(on.spot, area) : isSame(info.name, asked.table)));
  if (!asked || !table) return null;
  const columns = asked.columns.map((name) => table.headings.findIndex((heading) => isSame(heading, name)));
  const [first = 0, last = columns.length === 0 ? table.headings.length - 1 : first] = columns;
  const { top, bottom, left } = table.area;
  const body = { top: top + 1, bottom: bottom - (table.info.hasTotals ? 1 : 0) };
  const isBeside = table.sheet === on.sheet && on.spot.row >= body.top && on.spot.row <= body.bottom;
  if (columns.includes(-1) || (asked.isThisRow && !isBeside)) return null;
  const rows = asked.isThisRow ? { top: on.spot.row, bottom: on.spot.row } : body;
  return { sheet: table.sheet, area: { ...rows, left: left + Math.min(first, last), right: left + Math.max(first, last) } };
}

/** Tables by the name of their sheet, with their headings from a reading of the heading row. */
export function placedTable(sheet: string, info: TableInfo, headings: readonly string[]): PlacedTable | null {
  const area = readArea(info.range);
  return area && { sheet, info, area, headings };
}

interface Asked {
  readonly table: string;
  readonly columns: readonly string[];
  readonly isThisRow: boolean;
}

const ITEM = /\[((?:'[^]|[^'[\]])*)\]/g;

function readColumns(text: string): Asked | null {
  const open = text.indexOf("[");
  const inside = text.slice(open + 1, -1).trim();
  const isAt = inside.startsWith("@");
  const items = isAt ? inside.slice(1).trim() : inside;
  const all = items === "" ? [] : items.startsWith("[") ? [...items.matchAll(ITEM)].map(([, item = ""]) => item.trim()) : [items];
  const special = all.filter((item) => item.startsWith("#")).map((item) => item.toLowerCase());
  if (special.some((item) => item !== "#this row" && item !== "#data")) return null;
  const columns = all.filter((item) => !item.startsWith("#")).map((item) => item.replace(/'([^])/g, "$1"));
  return columns.length > 2 ? null : { table: text.slice(0, open).trim(), columns, isThisRow: isAt || special.includes("#this row") };
}

const isSame = (a: string, b: string): boolean => a.trim().toLowerCase() === b.trim().toLowerCase();
