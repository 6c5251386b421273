import { attributeEdits, type Edit, edited } from "./xml-edits";
import { readRoot } from "./xml-part";
import { Tags } from "./xml-tags";
import { appending, attributeOf, childrenOf, type Element, rootOf } from "./xml-tree";

export const METADATA_TYPE = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheetMetadata+xml";

/** A metadata part that holds nothing yet. */
export const emptyMetadata = (namespace: string): string =>
  `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n<metadata xmlns="${namespace}"></metadata>`;

const NAME = "XLDAPR";
const TYPE_WORDS =
  `name="${NAME}" minSupportedVersion="120000" copy="1" pasteAll="1" pasteValues="1" merge="1" splitFirst="1" ` +
  'rowColShift="1" clearFormats="1" clearComments="1" assign="1" coerce="1" cellMeta="1"';
const PROPERTY_URI = "{bdbb8cdc-fa1e-496e-a857-3c3f30c029c3}";
const PROPERTY =
  '<xda:dynamicArrayProperties xmlns:xda="http://schemas.microsoft.com/office/spreadsheetml/2017/dynamicarray" fDynamic="1" fCollapsed="0"/>';

export interface DynamicArrays {
  /** What a cell whose formula spills writes as its mark (cm). */
  readonly index: string;
  readonly xml: string;
}

/**
 * Finds that mark in a metadata part, or adds to the part what is missing. Excel lets the result of an array formula
 * spill only when the mark leads, through this part, to the dynamic array property; else it shows braces.
 */
export function withDynamicArrays(xml: string): DynamicArrays {
  const { prefix: x } = readRoot(new Tags(xml));
  const root = rootOf(xml);
  const parts = childrenOf(xml, root);
  const edits: Edit[] = [];

  /** Where the wanted item stands in a list; it is added to the list, or with a list of its own, where it is missing. */
  const found = (list: Element | undefined, isIt: (element: Element) => boolean, item: string, listAt: number, listTag: string): number => {
    const items = list ? childrenOf(xml, list) : [];
    const at = items.findIndex(isIt);
    if (at >= 0) return at;
    if (list) edits.push(...attributeEdits(xml, list.start, "count", () => String(items.length + 1)), appending(list, item));
    else edits.push({ start: listAt, end: listAt, text: `<${x}${listTag} count="1">${item}</${x}${listTag.split(" ")[0]}>` });
    return items.length;
  };

  // The lists must stand in this order: types, strings, mdx, future, cells, values.
  const types = parts.find(({ name }) => name === `${x}metadataTypes`);
  const isOurs = (element: Element): boolean => attributeOf(xml, element, "name") === NAME;
  const type = 1 + found(types, isOurs, `<${x}metadataType ${TYPE_WORDS}/>`, root.tagEnd, "metadataTypes");

  const earlier = ["metadataTypes", "metadataStrings", "mdxMetadata", "futureMetadata"].map((name) => x + name);
  const listAt = parts.filter(({ name }) => earlier.includes(name)).at(-1)?.end ?? root.tagEnd;
  const future = parts.find((part) => part.name === `${x}futureMetadata` && attributeOf(xml, part, "name") === NAME);
  const property = `<${x}bk><${x}extLst><${x}ext uri="${PROPERTY_URI}">${PROPERTY}</${x}ext></${x}extLst></${x}bk>`;
  const isDynamic = ({ start, end }: Element): boolean => /fDynamic\s*=\s*["'](?:1|true)["']/.test(xml.slice(start, end));
  const value = found(future, isDynamic, property, listAt, `futureMetadata name="${NAME}"`);

  const marks = parts.find(({ name }) => name === `${x}cellMetadata`);
  const leadsThere = (mark: Element): boolean => {
    const [record, ...more] = childrenOf(xml, mark);
    if (!record || more.length > 0) return false;
    return attributeOf(xml, record, "t") === String(type) && attributeOf(xml, record, "v") === String(value);
  };
  const index = 1 + found(marks, leadsThere, `<${x}bk><${x}rc t="${type}" v="${value}"/></${x}bk>`, listAt, "cellMetadata");
  return { index: String(index), xml: edited(xml, edits) };
}
