import { edited } from "./xml-edits";
import { elements, localName, type Tags } from "./xml-tags";
import { encodeAttribute } from "./xml-text";
import { appending, rootOf } from "./xml-tree";

/** The two kinds of list in which a part is entered: what it is, and who points at it. */
export const withContentType = (xml: string, part: string, type: string): string =>
  withItem(xml, "Override", { PartName: `/${part}`, ContentType: type });

/** The type of every part with an ending, unless the list says it already. */
export function withDefaultType(xml: string, ending: string, type: string): string {
  for (const tag of elements(xml, (name) => localName(name) === "Default"))
    if (tag.attribute("Extension")?.toLowerCase() === ending) return xml;
  return withItem(xml, "Default", { Extension: ending, ContentType: type });
}

export function withRelationship(xml: string, type: string, target: string): { readonly xml: string; readonly id: string } {
  const id = freeId(xml);
  return { xml: withItem(xml, "Relationship", { Id: id, Type: type, Target: target }), id };
}

export const withoutContentType = (xml: string, part: string): string =>
  without(xml, (tag) => localName(tag.name) === "Override" && tag.attribute("PartName")?.toLowerCase() === `/${part}`.toLowerCase());

export const withoutRelationship = (xml: string, id: string): string =>
  without(xml, (tag) => localName(tag.name) === "Relationship" && tag.attribute("Id") === id);

function withItem(xml: string, name: string, attributes: Readonly<Record<string, string>>): string {
  const root = rootOf(xml);
  const prefix = root.name.slice(0, root.name.indexOf(":") + 1);
  const words = Object.entries(attributes).map(([key, value]) => ` ${key}="${encodeAttribute(value)}"`);
  return edited(xml, [appending(root, `<${prefix}${name}${words.join("")}/>`)]);
}

function without(xml: string, isUnwanted: (tag: Tags) => boolean): string {
  for (const tag of elements(xml, () => true)) {
    if (!isUnwanted(tag)) continue;
    const { start } = tag;
    tag.skip();
    return edited(xml, [{ start, end: tag.end, text: "" }]);
  }
  return xml;
}

function freeId(xml: string): string {
  const taken = new Set<string>();
  for (const tag of elements(xml, (name) => localName(name) === "Relationship")) taken.add(tag.attribute("Id") ?? "");
  let n = taken.size + 1;
  while (taken.has(`rId${n}`)) n++;
  return `rId${n}`;
}
