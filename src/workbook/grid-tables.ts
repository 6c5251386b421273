import { type Model, type UID, type Zone, helpers } from "@odoo/o-spreadsheet";
import { readCell } from "../engine/read-cell";
import type { Step } from "../engine/steps";
import type { TableInFile } from "./file";
import { zoneText } from "./grid-zone";
import type { TableInfo } from "./port";
import type { GrownTable } from "./table-growth";

/**
 * The tables of the file as they stand in the grid, which knows them by their place alone and lets one take up what is
 * typed right below it or beside it. What Excel would not take for a part of the table is none here.
 */
export function tablesNow(model: Model, sheetId: UID, known: readonly TableInfo[]): TableInfo[] {
  const { getters } = model;
  return known.map((info) => {
    const old = helpers.toZone(info.range);
    const seen = getters.getCoreTableMatchingTopLeft(sheetId, old)?.range.zone;
    if (!seen) return info;
    const bottom = info.hasTotals ? old.bottom : Math.max(old.bottom, seen.bottom);
    let right = old.right;
    while (right < seen.right && isHeading(model, sheetId, { ...old, right: right + 1 })) right++;
    return { ...info, range: zoneText({ ...old, bottom, right }) };
  });
}

/** The tables of a sheet that are larger than in the file. */
export function tablesLarger(model: Model, sheetId: UID, known: readonly TableInfo[]): TableInFile[] {
  const sheet = model.getters.getSheetName(sheetId);
  return tablesNow(model, sheetId, known)
    .filter(({ range }, i) => range !== known[i]?.range)
    .map(({ name, range }) => ({ sheet, table: name, tableRange: range, headings: headings(model, sheetId, helpers.toZone(range)).map(String) }));
}

function headings(model: Model, sheetId: UID, { left, right, top }: Zone): unknown[] {
  return Array.from({ length: right - left + 1 }, (_, i) => readCell(model, { sheetId, col: left + i, row: top }).value ?? "");
}

/** Whether the last column of a table has a heading of its own. */
function isHeading(model: Model, sheetId: UID, zone: Zone): boolean {
  const all = headings(model, sheetId, zone).map((one) => (typeof one === "string" ? one.toLowerCase() : one));
  const last = all.at(-1);
  const isFormula = model.getters.getCell({ sheetId, col: zone.right, row: zone.top })?.isFormula === true;
  return typeof last === "string" && last.trim() !== "" && !isFormula && all.indexOf(last) === all.length - 1;
}

interface TableSteps {
  /** Before the cells are written. */
  readonly first: readonly Step[];
  /** After it: a table takes up what the port was not asked to let it take up. */
  readonly last: readonly Step[];
  /** After the cells have their old contents. */
  readonly back: readonly Step[];
}

export function tableSteps(model: Model, sheetIds: readonly UID[], grown: readonly GrownTable[], idOf: (sheet: string) => UID): TableSteps {
  const { getters } = model;
  const range = (sheetId: UID, zone: Zone): Step => ({ type: "UPDATE_TABLE", sheetId, zone, newTableRange: getters.getRangeDataFromZone(sheetId, zone) });
  const first = grown.map(({ sheet, tableRange }) => range(idOf(sheet), helpers.toZone(tableRange)));
  const tables = [...new Set([...sheetIds, ...grown.map(({ sheet }) => idOf(sheet))])].flatMap((id) => getters.getCoreTables(id).map(({ range: { zone } }) => ({ id, zone })));
  const isGrown = ({ id, zone }: (typeof tables)[number]): boolean =>
    grown.some(({ sheet, tableRange }) => idOf(sheet) === id && helpers.toZone(tableRange).left === zone.left && helpers.toZone(tableRange).top === zone.top);
  return { first, last: [...tables.filter((one) => !isGrown(one)).map(({ id, zone }) => range(id, zone)), ...first], back: tables.map(({ id, zone }) => range(id, zone)) };
}
