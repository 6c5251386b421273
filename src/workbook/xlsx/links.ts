import { insertingInOrder, prefixOf } from "./children";
import { AFTER_ROWS } from "./sheet-order";
import { edited } from "./xml-edits";
import { localName } from "./xml-tags";
import { encodeAttribute } from "./xml-text";
import { appending, attributeOf, childrenOf, rootOf } from "./xml-tree";

/** A link from a cell to another cell of the workbook, or one that is taken away again. */
export interface CellLink {
  readonly sheet: string;
  readonly cell: string;
  /** Such as 'Old lots'!B4 */
  readonly to: string;
  readonly tip?: string;
  readonly isTakenAway?: boolean;
}

/** The sheet with these links. A cell that has a link of its own keeps it, and only a link to the same place is taken away. */
export function withLinks(sheet: string, links: readonly CellLink[]): string {
  const x = prefixOf(sheet);
  const list = childrenOf(sheet, rootOf(sheet)).find(({ name }) => localName(name) === "hyperlinks");
  const there = (list ? childrenOf(sheet, list) : []).map((one) => ({ ...one, cell: attributeOf(sheet, one, "ref") ?? "", to: plain(attributeOf(sheet, one, "location") ?? "") }));
  const unwanted = new Set(links.flatMap(({ cell, to, isTakenAway }) => (isTakenAway ? [`${cell} ${plain(to)}`] : [])));
  const filled = new Set(there.map(({ cell }) => cell));
  const gone = there.filter(({ cell, to }) => unwanted.has(`${cell} ${to}`));
  const added = links.filter(({ cell, isTakenAway }) => !isTakenAway && !filled.has(cell)).map(({ cell, to, tip }) => `<${x}hyperlink ref="${cell}" location="${encodeAttribute(to)}"${tip === undefined ? "" : ` tooltip="${encodeAttribute(tip)}"`}/>`);
  if (gone.length === 0 && added.length === 0) return sheet;
  if (!list) return edited(sheet, [insertingInOrder(sheet, AFTER_ROWS, "hyperlinks", `<${x}hyperlinks>${added.join("")}</${x}hyperlinks>`)]);
  // A list that holds nothing is no longer one.
  if (gone.length === there.length && added.length === 0) return edited(sheet, [{ start: list.start, end: list.end, text: "" }]);
  return edited(sheet, [...gone.map(({ start, end }) => ({ start, end, text: "" })), ...(added.length > 0 ? [appending(list, added.join(""))] : [])]);
}

const plain = (location: string): string => location.replace(/^#/, "").replaceAll("'", "").replaceAll("$", "").toLowerCase();
