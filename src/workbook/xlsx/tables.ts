import { overlaps } from "../cell-range";
import { type Area, areaText, cellCount, readArea } from "./address";
import type { TableInFile } from "./change";
import { prefixOf, settingAttribute } from "./children";
import type { Draft } from "./draft";
import { FileFault } from "./file-fault";
import { readFormulaGroups } from "./formula-groups";
import { relationshipsPart, readRelationships } from "./package";
import { edited, type Edit } from "./xml-edits";
import { localName } from "./xml-tags";
import { encodeAttribute } from "./xml-text";
import { appending, attributeOf, childrenOf, type Element, rootOf } from "./xml-tree";

/** Lets a table take up a larger range; what its columns are and compute stays as it is. */
export function growTable(draft: Draft, sheet: string, growth: TableInFile): void {
  const part = partOf(draft, sheet, growth);
  const xml = draft.text(part);
  const root = rootOf(xml);
  const [old, wanted] = [readArea(attributeOf(xml, root, "ref") ?? ""), readArea(growth.tableRange)];
  if (!old || !wanted) throw refused(growth, "its place in this file is damaged: open it in Excel and save it again");
  refuseArrays(draft.text(sheet), old, wanted, growth);
  const totals = Number(attributeOf(xml, root, "totalsRowCount") ?? 0);
  const filter = named(xml, root, "autoFilter");
  const filtered = areaText({ ...wanted, bottom: wanted.bottom - totals });
  draft.write(
    part,
    edited(xml, [
      settingAttribute(xml, root.start, "ref", areaText(wanted)),
      ...(filter ? [settingAttribute(xml, filter.start, "ref", filtered)] : []),
      ...newColumns(xml, root, growth),
    ]),
  );
}

const named = (xml: string, parent: Element, name: string): Element | undefined => childrenOf(xml, parent).find((one) => localName(one.name) === name);

const refused = ({ table }: TableInFile, why: string): FileFault => new FileFault(`Cannot enlarge the table ${table}: ${why}`);

function partOf(draft: Draft, sheet: string, growth: TableInFile): string {
  const rels = relationshipsPart(sheet);
  const links = draft.has(rels) ? readRelationships(draft.text(rels), sheet) : [];
  const isIt = (part: string): boolean => attributeOf(draft.text(part), rootOf(draft.text(part)), "displayName")?.toLowerCase() === growth.table.toLowerCase();
  const found = links.find(({ type, target }) => type === "table" && target !== null && draft.has(target) && isIt(target))?.target;
  if (!found) throw refused(growth, `the sheet ${growth.sheet} has no table of that name`);
  return found;
}

/** Excel takes no formula into a table that fills several cells. */
function refuseArrays(sheet: string, old: Area, wanted: Area, growth: TableInFile): void {
  const inTheWay = readFormulaGroups(sheet).arrays.find(({ area }) => cellCount(area) > 1 && overlaps(area, wanted) && !overlaps(area, old));
  if (inTheWay) throw refused(growth, `it would run into ${areaText(inTheWay.area)}, which one formula fills: put that formula elsewhere first`);
}

function newColumns(xml: string, root: Element, growth: TableInFile): Edit[] {
  const list = named(xml, root, "tableColumns");
  if (!list) throw refused(growth, "the list of its columns in this file is damaged: open it in Excel and save it again");
  const columns = childrenOf(xml, list);
  const added = growth.headings.slice(columns.length);
  if (added.length === 0) return [];
  if (/^(?:queryTable|xml)$/.test(attributeOf(xml, root, "tableType") ?? "")) throw refused(growth, "its columns come from outside this workbook: add the column to their source");
  const names = growth.headings.map((heading) => heading.toLowerCase());
  const bad = added.find((heading) => heading.trim() === "" || names.indexOf(heading.toLowerCase()) !== names.lastIndexOf(heading.toLowerCase()));
  if (bad !== undefined) throw refused(growth, bad.trim() === "" ? "a new column has no heading: give it one" : `it would have the heading ${bad} twice: choose another one`);
  const x = prefixOf(xml);
  const last = columns.reduce((most, column) => Math.max(most, Number(attributeOf(xml, column, "id")) || 0), 0);
  const items = added.map((heading, i) => `<${x}tableColumn id="${last + 1 + i}" name="${columnName(heading)}"/>`).join("");
  return [settingAttribute(xml, list.start, "count", String(columns.length + added.length)), appending(list, items)];
}

/** An attribute holds no line breaks, so they are written out. */
const columnName = (heading: string): string => encodeAttribute(heading.replace(/_(?=x[0-9A-Fa-f]{4}_)/g, "_x005F_").replace(/[\n\r\t]/g, (sign) => `_x${sign.charCodeAt(0).toString(16).padStart(4, "0")}_`));
