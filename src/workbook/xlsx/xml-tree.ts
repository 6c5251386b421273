import type { Edit } from "./xml-edits";
import { Tags } from "./xml-tags";

/** One element of a small part, by its places in the text. */
export interface Element {
  readonly name: string;
  readonly start: number;
  readonly tagEnd: number;
  readonly closeStart: number;
  readonly end: number;
}

export function rootOf(xml: string): Element {
  const tags = new Tags(xml);
  tags.next();
  return elementAt(tags);
}

export function childrenOf(xml: string, parent: Element): Element[] {
  const tags = new Tags(xml, parent.tagEnd);
  const children: Element[] = [];
  while (tags.end < parent.closeStart && tags.next() && tags.kind !== "close") children.push(elementAt(tags));
  return children;
}

export function attributeOf(xml: string, { start }: Element, name: string): string | undefined {
  const tags = new Tags(xml, start);
  tags.next();
  return tags.attribute(name);
}

/** What puts a piece of XML at the end of an element. */
export function appending({ name, closeStart, end }: Element, item: string): Edit {
  if (closeStart < end) return { start: closeStart, end: closeStart, text: item };
  return { start: end - "/>".length, end, text: `>${item}</${name}>` };
}

/** The element whose opening tag the scanner stands on; leaves it on the closing one. */
function elementAt(tags: Tags): Element {
  const { name, start, end: tagEnd } = tags;
  const isEmpty = tags.kind === "empty";
  tags.skip();
  return { name, start, tagEnd, closeStart: isEmpty ? tagEnd : tags.start, end: tags.end };
}
