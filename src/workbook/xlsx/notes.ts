import type { Note } from "../port";
import { addressOf, readAddress, type Spot } from "./address";
import { encodeCellText, readRichText } from "./cell-text";
import { prefixOf } from "./children";
import type { Draft } from "./draft";
import { FileFault } from "./file-fault";
import type { Package } from "./package";
import { pointingAt } from "./sheet-order";
import { edited, type Edit } from "./xml-edits";
import { localName } from "./xml-tags";
import { textBetween } from "./xml-text";
import { appending, attributeOf, childrenOf, type Element, rootOf } from "./xml-tree";

const COMMENTS_TYPE = "application/vnd.openxmlformats-officedocument.spreadsheetml.comments+xml";
const BOXES_TYPE = "application/vnd.openxmlformats-officedocument.vmlDrawing";
const AUTHOR = "Lotwright";

/** The text of every note on a sheet, by its cell. */
export function readNotes(parts: Package, sheet: string): Map<string, string> {
  const part = parts.related(sheet, "comments");
  if (part === undefined) return new Map();
  const xml = parts.text(part);
  const x = prefixOf(xml);
  return new Map(
    commentsOf(xml).map((comment) => {
      const text = childrenOf(xml, comment).find(({ name }) => name === `${x}text`);
      return [cellOf(xml, comment), text ? readRichText(xml, text.tagEnd, text.closeStart, x) : ""];
    }),
  );
}

/** Writes the note of a cell, in the place of one that is there, or takes it away. */
export function writeNote(draft: Draft, sheet: string, folder: string, { sheet: name, cell, note }: Note, words: { readonly namespace: string; readonly isStrict: boolean }): void {
  const spot = readAddress(cell) as Spot;
  const comments = draft.related(sheet, "comments") ?? (note === null ? undefined : addComments(draft, sheet, folder, words.namespace));
  if (comments === undefined) return;
  const xml = draft.text(comments);
  const old = commentsOf(xml).find((comment) => cellOf(xml, comment) === addressOf(spot));
  if (old && authorOf(xml, old).startsWith("tc="))
    throw new FileFault(`Cannot write a note beside ${name}!${addressOf(spot)}: people talk about this cell in a thread: answer there, in Excel`);
  if (note === null) {
    if (!old) return;
    draft.write(comments, edited(xml, [{ start: old.start, end: old.end, text: "" }]));
    changeBoxes(draft, sheet, (boxes) => boxes.replace(BOX, (box) => (isBoxOf(box, spot) ? "" : box)));
    return;
  }
  draft.write(comments, withComment(xml, spot, note, old));
  if (old) return;
  if (draft.related(sheet, "vmlDrawing") === undefined) addBoxes(draft, sheet, folder, words.isStrict);
  changeBoxes(draft, sheet, (boxes) => {
    const at = boxes.lastIndexOf("</xml>");
    if (at < 0) throw new FileFault(`Cannot write a note beside ${name}!${addressOf(spot)}: the boxes of the notes in this file are damaged: open it in Excel and save it again`);
    return boxes.slice(0, at) + box(boxes, spot) + boxes.slice(at);
  });
}

const named = (xml: string, parent: Element, name: string): Element | undefined => childrenOf(xml, parent).find((one) => localName(one.name) === name);

function commentsOf(xml: string): Element[] {
  const list = named(xml, rootOf(xml), "commentList");
  return list ? childrenOf(xml, list) : [];
}

const cellOf = (xml: string, comment: Element): string => (attributeOf(xml, comment, "ref") ?? "").replaceAll("$", "");

function authorsOf(xml: string): string[] {
  const list = named(xml, rootOf(xml), "authors");
  return list ? childrenOf(xml, list).map(({ tagEnd, closeStart }) => textBetween(xml, tagEnd, closeStart)) : [];
}

const authorOf = (xml: string, comment: Element): string => authorsOf(xml)[Number(attributeOf(xml, comment, "authorId"))] ?? "";

function addComments(draft: Draft, sheet: string, folder: string, namespace: string): string {
  const part = draft.freePart(folder, "comments", "xml");
  draft.add(part, `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n<comments xmlns="${namespace}"><authors></authors><commentList></commentList></comments>`, COMMENTS_TYPE, sheet, "comments");
  return part;
}

function withComment(xml: string, spot: Spot, note: string, old: Element | undefined): string {
  const x = prefixOf(xml);
  const authors = named(xml, rootOf(xml), "authors");
  const list = named(xml, rootOf(xml), "commentList");
  if (!authors || !list) throw new FileFault("Cannot write a note: the list of notes in this file is damaged: open it in Excel and save it again");
  const known = authorsOf(xml);
  const edits: Edit[] = [];
  const author = known.includes(AUTHOR) ? known.indexOf(AUTHOR) : known.length;
  if (author === known.length) edits.push(appending(authors, `<${x}author>${AUTHOR}</${x}author>`));
  const comment = `<${x}comment ref="${addressOf(spot)}" authorId="${author}"><${x}text><${x}r><${x}t xml:space="preserve">${encodeCellText(note)}</${x}t></${x}r></${x}text></${x}comment>`;
  edits.push(old ? { start: old.start, end: old.end, text: comment } : appending(list, comment));
  return edited(xml, edits);
}

/** Excel shows a note only where an old kind of drawing, which is not quite XML, has a box for it. */
function addBoxes(draft: Draft, sheet: string, folder: string, isStrict: boolean): void {
  const part = draft.freePart(`${folder}drawings/`, "vmlDrawing", "vml");
  const id = draft.addByEnding(part, EMPTY_BOXES, BOXES_TYPE, sheet, "vmlDrawing");
  draft.write(sheet, pointingAt(draft.text(sheet), "legacyDrawing", id, isStrict));
}

const EMPTY_BOXES =
  '<xml xmlns:v="urn:schemas-microsoft-com:vml" xmlns:o="urn:schemas-microsoft-com:office:office" xmlns:x="urn:schemas-microsoft-com:office:excel">' +
  '<o:shapelayout v:ext="edit"><o:idmap v:ext="edit" data="1"/></o:shapelayout>' +
  '<v:shapetype id="_x0000_t202" coordsize="21600,21600" o:spt="202" path="m,l,21600r21600,l21600,xe"><v:stroke joinstyle="miter"/><v:path gradientshapeok="t" o:connecttype="rect"/></v:shapetype></xml>';

const BOX = /<v:shape\s[^]*?<\/v:shape>/g;

const isBoxOf = (box: string, { row, column }: Spot): boolean =>
  new RegExp(`<x:Row>\\s*${row - 1}\\s*</x:Row>`).test(box) && new RegExp(`<x:Column>\\s*${column - 1}\\s*</x:Column>`).test(box);

function changeBoxes(draft: Draft, sheet: string, change: (boxes: string) => string): void {
  const part = draft.related(sheet, "vmlDrawing");
  if (part !== undefined) draft.write(part, change(draft.text(part)));
}

function box(boxes: string, { row, column }: Spot): string {
  const numbers = [...boxes.matchAll(/_x0000_s(\d+)/g)].map(([, number]) => Number(number));
  const number = Math.max(1024, ...numbers) + 1;
  return (
    `<v:shape id="_x0000_s${number}" type="#_x0000_t202" style="position:absolute;width:260pt;height:120pt;z-index:1;visibility:hidden" fillcolor="#ffffe1" o:insetmode="auto">` +
    '<v:fill color2="#ffffe1"/><v:shadow on="t" color="black" obscured="t"/><v:path o:connecttype="none"/><v:textbox style="mso-direction-alt:auto"><div style="text-align:left"></div></v:textbox>' +
    `<x:ClientData ObjectType="Note"><x:MoveWithCells/><x:SizeWithCells/><x:Anchor>${column}, 15, ${Math.max(row - 2, 0)}, 10, ${column + 4}, 15, ${Math.max(row - 2, 0) + 8}, 10</x:Anchor><x:AutoFill>False</x:AutoFill><x:Row>${row - 1}</x:Row><x:Column>${column - 1}</x:Column></x:ClientData></v:shape>`
  );
}
