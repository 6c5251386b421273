import { type SheetData, type WorkbookData, helpers, load } from "@odoo/o-spreadsheet";
import { contents, sheetData } from "../engine/book";
import { quietly } from "../engine/quietly";
import type { XlsxFile } from "../workbook/file";
import { type RangeName, rangeNames } from "../workbook/range-names";

export interface GridData {
  readonly data: WorkbookData;
  /** False where the grid could not read the file's looks: contents and formulas are there, formats and charts are not. */
  readonly hasLooks: boolean;
}

/**
 * What the grid shows of a file. It reads looks and charts for itself; contents come from the file layer, which knows
 * a text from a number, whatever the text looks like.
 */
export function gridData(file: XlsxFile): GridData {
  const looks = readLooks(file);
  const codes: string[] = [];
  const sheets = file.sheets
    .filter(({ kind }) => kind === "worksheet")
    .map(({ name, state }) => {
      const cells = contents(file.cells(name));
      const plain = { ...sheetData(name, name, cells), isVisible: state === "visible", ...(looks ? {} : ownLooks(file, name, codes)) };
      const seen = looks?.sheets.find((sheet) => sheet.name === name);
      const tables = tablesOf(file, name, seen?.tables ?? []);
      if (!seen || !looks) return { ...plain, tables };
      return { ...seen, tables, cells: unquoted(cells, seen.formats, looks.formats), colNumber: Math.max(seen.colNumber, plain.colNumber), rowNumber: Math.max(seen.rowNumber, plain.rowNumber) };
    });
  const data = { ...(looks ?? { ...helpers.createEmptyWorkbookData(), formats: Object.fromEntries(codes.map((code, i) => [i + 1, code])) }), sheets, namedRanges: named(rangeNames(file)) };
  return { data, hasLooks: looks !== null };
}

/** What the file layer knows of a sheet's looks by itself: number formats of filled cells, merges, hidden columns, protection. */
function ownLooks(file: XlsxFile, name: string, codes: string[]): Partial<SheetData> {
  const { merged, hiddenColumns, isProtected } = file.facts(name);
  const formats: Record<string, number> = {};
  for (const { address, style } of file.cells(name)) {
    const code = file.numberFormat(style);
    if (code === undefined) continue;
    if (!codes.includes(code)) codes.push(code);
    formats[address] = codes.indexOf(code) + 1;
  }
  const cols = Object.fromEntries(hiddenColumns.map((letters) => [helpers.lettersToNumber(letters), { isHidden: true }]));
  return { merges: [...merged], cols, formats, isLocked: isProtected };
}

/** Every table of the file, looking as the grid read it, or plain where it read none there. */
function tablesOf(file: XlsxFile, name: string, seen: SheetData["tables"]): SheetData["tables"] {
  const missed = file.tables(name).filter(({ range }) => !seen.some((table) => table.range === range));
  return [...seen, ...missed.map(({ range, hasTotals }) => ({ range, type: "static" as const, config: { ...PLAIN_TABLE, totalRow: hasTotals } }))];
}

const PLAIN_TABLE = { hasFilters: false, numberOfHeaders: 1, firstColumn: false, lastColumn: false, bandedRows: false, bandedColumns: false, styleId: "None" };

function readLooks(file: XlsxFile): WorkbookData | null {
  try {
    return quietly(() => load(file.parts()));
  } catch {
    return null;
  }
}

/** In a cell with the text format the grid takes everything for a text, and would show the apostrophe. */
function unquoted(cells: Readonly<Record<string, string>>, formats: Readonly<Record<string, number>>, codes: Readonly<Record<number, string>>): Record<string, string> {
  const textZones = Object.entries(formats)
    .filter(([, id]) => codes[id]?.includes("@"))
    .map(([zone]) => helpers.toZone(zone));
  const isText = (address: string): boolean => {
    const { col, row } = helpers.toCartesian(address);
    return textZones.some((zone) => helpers.isInside(col, row, zone));
  };
  return Object.fromEntries(
    Object.entries(cells).map(([address, text]) => [address, /^'[^=]/.test(text) && isText(address) ? text.slice(1) : text]),
  );
}

const named = (names: readonly RangeName[]): Record<string, string> => {
  const byName = new Map<string, string>();
  for (const { name, range } of names) if (!byName.has(name)) byName.set(name, range);
  return Object.fromEntries(byName);
};
