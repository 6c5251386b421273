import { type Model, type SheetData, type WorkbookData, helpers } from "@odoo/o-spreadsheet";
import { PICTURE } from "../workbook/grid-kept";
import { tablesNow } from "../workbook/grid-tables";
import type { TableInfo } from "../workbook/port";

/** What the grid shows besides contents, to see whether it changed. */
export interface Looks {
  /** As text by kind. */
  readonly plain: Readonly<Record<Exclude<LookKind, "formats">, string>>;
  /** By sheet: what each zone looks like, by its layer and range. */
  readonly formats: ReadonlyMap<string, ReadonlyMap<string, string>>;
}

export type LookKind = "formats" | "sizes" | "figures" | "merges" | "rules" | "view";

/** The looks of these sheets; pictures that the port put there and what a table took up are saved, and no change of looks. */
export function looksOf(model: Model, wanted: ReadonlySet<string>, tablesOf: ReadonlyMap<string, readonly TableInfo[]>): Looks {
  // Not exportData: that makes a second model, to check itself, which takes as long as opening the file.
  const data = model._exportData(false);
  const sheets = data.sheets.filter(({ name }) => wanted.has(name));
  const placed = ({ id, name, tables }: SheetData): unknown => {
    const saved = tablesNow(model, id, tablesOf.get(name) ?? []).map(({ range }) => range);
    return tables.map((table) => (saved.includes(table.range) ? { ...table, range: table.range.replace(/:.*/, "") } : table));
  };
  const each = (pick: (sheet: SheetData) => unknown): string => JSON.stringify(sheets.map(pick));
  return {
    plain: {
      sizes: each(({ cols, rows }) => [cols, rows]),
      figures: each(({ figures }) => figures.filter(({ id }) => !id.startsWith(PICTURE))),
      merges: each(({ merges }) => merges),
      rules: each((sheet) => [sheet.conditionalFormats, sheet.dataValidationRules, placed(sheet)]) + JSON.stringify(data.namedRanges),
      view: each(({ panes, headerGroups, isVisible, name }) => [panes, headerGroups, isVisible, name]),
    },
    formats: new Map(sheets.map((sheet) => [sheet.name, formatsOf(sheet, data)])),
  };
}

/** Their numbers in the grid's lists shift when a format is added, so what the numbers stand for is compared. */
function formatsOf(sheet: SheetData, data: WorkbookData): Map<string, string> {
  const zones = new Map<string, string>();
  for (const layer of ["styles", "formats", "borders"] as const)
    for (const [zone, id] of Object.entries(sheet[layer])) zones.set(`${layer} ${zone}`, JSON.stringify(data[layer][id] ?? null, inOrder));
  return zones;
}

/** The grid says the same look with its parts in another order after it was set once more. */
const inOrder = (_key: string, part: unknown): unknown => (typeof part === "object" && part !== null ? Object.fromEntries(Object.entries(part).sort()) : part);

/** Which looks changed, apart from those of cells whose look the port set, which are saved. */
export function changedLooks(then: Looks, now: Looks, isSaved: (sheet: string, address: string) => boolean): LookKind[] {
  const plain = (Object.keys(then.plain) as (keyof Looks["plain"])[]).filter((kind) => then.plain[kind] !== now.plain[kind]);
  const formats = [...then.formats].some(([sheet, zones]) => formatsChanged(zones, now.formats.get(sheet) ?? new Map(), (address) => isSaved(sheet, address)));
  return formats ? ["formats", ...plain] : plain;
}

type Zones = ReadonlyMap<string, string>;

function formatsChanged(then: Zones, now: Zones, isSaved: (address: string) => boolean): boolean {
  const [before, after] = [cellsOf(then, now), cellsOf(now, then)];
  return [...new Set([...before.keys(), ...after.keys()])].some((key) => before.get(key) !== after.get(key) && !isSaved(key.slice(key.indexOf(" ") + 1)));
}

/** The cells of those zones that are not the same in the other list. */
function cellsOf(zones: Zones, others: Zones): Map<string, string> {
  const cells = new Map<string, string>();
  for (const [key, look] of zones) {
    if (others.get(key) === look) continue;
    const [layer = "", range = ""] = key.split(" ");
    const { top, bottom, left, right } = helpers.toZone(range);
    for (let row = top; row <= bottom; row++) for (let col = left; col <= right; col++) cells.set(`${layer} ${helpers.toXC(col, row)}`, look);
  }
  return cells;
}
