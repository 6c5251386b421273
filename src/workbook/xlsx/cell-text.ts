import { Tags } from "./xml-tags";
import { encodeText, textBetween } from "./xml-text";

/** A cell's text as XML: what looks like a written-out character (_x0041_) is kept from being taken for one. */
export const encodeCellText = (text: string): string =>
  encodeText(text.replace(/_(?=x[0-9A-Fa-f]{4}_)/g, "_x005F_")).replace(/\r/g, "_x000D_");

export const decodeCellText = (text: string): string =>
  text.includes("_x") ? text.replace(/_x([0-9A-Fa-f]{4})_/g, (_, hex: string) => String.fromCharCode(parseInt(hex, 16))) : text;

/** The text of a shared or inline string: its runs one after another, without the readings set above the words. */
export function readRichText(xml: string, start: number, end: number, prefix: string): string {
  const tags = new Tags(xml, start);
  let text = "";
  while (tags.next() && tags.start < end) {
    if (tags.kind !== "open") continue;
    if (tags.name === `${prefix}rPh`) tags.skip();
    else if (tags.name === `${prefix}t`) {
      const from = tags.end;
      tags.skip();
      text += textBetween(xml, from, tags.start);
    }
  }
  return decodeCellText(text);
}
