import type { Picture } from "../port";
import { readAddress } from "./address";
import { prefixOf } from "./children";
import type { Draft } from "./draft";
import { relationshipTypes } from "./package";
import { pointingAt } from "./sheet-order";
import { edited } from "./xml-edits";
import { elements, localName } from "./xml-tags";
import { encodeAttribute } from "./xml-text";
import { appending, rootOf } from "./xml-tree";

const DRAWING_TYPE = "application/vnd.openxmlformats-officedocument.drawing+xml";
const PLACES = "http://schemas.openxmlformats.org/drawingml/2006/spreadsheetDrawing";
export const SHAPES = "http://schemas.openxmlformats.org/drawingml/2006/main";
/** The unit of drawings: 914,400 to the inch, of which a pixel is a 96th. */
export const PER_PIXEL = 9525;

/** Puts a picture on a sheet, beside what is drawn there already. */
export function addPicture(draft: Draft, sheet: string, folder: string, picture: Picture, isStrict: boolean): void {
  const drawing = draft.related(sheet, "drawing") ?? addDrawing(draft, sheet, folder, isStrict);
  const media = draft.freePart(`${folder}media/`, "image", "png");
  const id = draft.addByEnding(media, picture.png, "image/png", drawing, "image");
  const xml = draft.text(drawing);
  draft.write(drawing, edited(xml, [appending(rootOf(xml), anchor(xml, picture, id, isStrict))]));
}

export function addDrawing(draft: Draft, sheet: string, folder: string, isStrict: boolean): string {
  const part = draft.freePart(`${folder}drawings/`, "drawing", "xml");
  const empty = `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n<xdr:wsDr xmlns:xdr="${PLACES}"></xdr:wsDr>`;
  const id = draft.add(part, empty, DRAWING_TYPE, sheet, "drawing");
  draft.write(sheet, pointingAt(draft.text(sheet), "drawing", id, isStrict));
  return part;
}

function anchor(xml: string, { at, width, height, alt }: Picture, id: string, isStrict: boolean): string {
  const x = prefixOf(xml);
  const { row, column } = readAddress(at) ?? { row: 1, column: 1 };
  const size = `cx="${Math.round(width * PER_PIXEL)}" cy="${Math.round(height * PER_PIXEL)}"`;
  const number = freeNumber(xml);
  return (
    `<${x}oneCellAnchor><${x}from><${x}col>${column - 1}</${x}col><${x}colOff>0</${x}colOff><${x}row>${row - 1}</${x}row><${x}rowOff>0</${x}rowOff></${x}from><${x}ext ${size}/>` +
    `<${x}pic><${x}nvPicPr><${x}cNvPr id="${number}" name="Picture ${number}" descr="${encodeAttribute(alt)}"/><${x}cNvPicPr><a:picLocks xmlns:a="${SHAPES}" noChangeAspect="1"/></${x}cNvPicPr></${x}nvPicPr>` +
    `<${x}blipFill><a:blip xmlns:a="${SHAPES}" xmlns:r="${relationshipTypes(isStrict).slice(0, -1)}" r:embed="${id}"/><a:stretch xmlns:a="${SHAPES}"><a:fillRect/></a:stretch></${x}blipFill>` +
    `<${x}spPr><a:xfrm xmlns:a="${SHAPES}"><a:off x="0" y="0"/><a:ext ${size}/></a:xfrm><a:prstGeom xmlns:a="${SHAPES}" prst="rect"><a:avLst/></a:prstGeom></${x}spPr></${x}pic>` +
    `<${x}clientData/></${x}oneCellAnchor>`
  );
}

export function freeNumber(xml: string): number {
  let most = 1;
  for (const tag of elements(xml, (name) => localName(name) === "cNvPr")) most = Math.max(most, Number(tag.attribute("id")) || 0);
  return most + 1;
}
