import { readRichText } from "./cell-text";
import { readRoot } from "./xml-part";
import { Tags } from "./xml-tags";

export function readSharedStrings(xml: string): string[] {
  const tags = new Tags(xml);
  const { prefix } = readRoot(tags);
  const item = `${prefix}si`;
  const strings: string[] = [];
  while (tags.next()) {
    if (tags.name !== item || tags.kind === "close") continue;
    const start = tags.end;
    const isEmpty = tags.kind === "empty";
    tags.skip();
    strings.push(isEmpty ? "" : readRichText(xml, start, tags.start, prefix));
  }
  return strings;
}
