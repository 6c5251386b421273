import { type Edit } from "./xml-edits";
import { localName, Tags } from "./xml-tags";
import { appending, childrenOf, rootOf } from "./xml-tree";
import { encodeAttribute } from "./xml-text";

/** What puts a new child of the root where the standard's order wants it. */
export function insertingInOrder(xml: string, order: readonly string[], name: string, child: string): Edit {
  const root = rootOf(xml);
  const later = new Set(order.slice(order.indexOf(name) + 1));
  const next = childrenOf(xml, root).find((one) => later.has(localName(one.name)));
  return next ? { start: next.start, end: next.start, text: child } : appending(root, child);
}

/** What gives the tag that begins here an attribute, or another value of it. */
export function settingAttribute(xml: string, tagStart: number, name: string, value: string): Edit {
  const tags = new Tags(xml, tagStart);
  tags.next();
  const attribute = tags.attributes().find((one) => one.name === name);
  const written = encodeAttribute(value);
  if (attribute) return { start: attribute.valueStart, end: attribute.end - 1, text: written };
  const at = tags.start + 1 + tags.name.length;
  return { start: at, end: at, text: ` ${name}="${written}"` };
}

export const prefixOf = (xml: string): string => {
  const { name } = rootOf(xml);
  return name.slice(0, name.indexOf(":") + 1);
};
