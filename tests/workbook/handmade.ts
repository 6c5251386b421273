import { strToU8, unzipSync, zipSync } from "fflate";
import { openXlsx, type XlsxFile } from "../../src/workbook/file";

export const MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
export const STRICT = "http://purl.oclc.org/ooxml/spreadsheetml/main";
const OFFICE = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const HEAD = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n';

export interface Handmade {
  /** The whole XML of each sheet, by its name. */
  readonly sheets?: Readonly<Record<string, string>>;
  /** Parts to add or to put in the place of the usual ones; null leaves one out. */
  readonly parts?: Readonly<Record<string, string | null>>;
  /** Relationships of the workbook beyond those to its sheets: type and target. */
  readonly links?: readonly (readonly [type: string, target: string])[];
  /** Inside the workbook element, before and after the sheets. */
  readonly workbookHead?: string;
  readonly workbookTail?: string;
  readonly contentTypes?: string;
}

export const sheet = (rows: string, head = ""): string => `${HEAD}<worksheet xmlns="${MAIN}">${head}<sheetData>${rows}</sheetData></worksheet>`;

/** The parts of a small workbook, written out by hand so that a test says exactly what the file holds. */
export function handmadeParts({ sheets = { Lots: sheet("") }, parts = {}, links = [], workbookHead = "", workbookTail = "", contentTypes = "" }: Handmade): Record<string, Uint8Array> {
  const names = Object.keys(sheets);
  const entries = names.map((name, i) => `<sheet name="${name}" sheetId="${i + 1}" r:id="rId${i + 1}"/>`);
  const sheetLinks = names.map((_, i) => ["worksheet", `worksheets/sheet${i + 1}.xml`] as const);
  const all: Record<string, string | null> = {
    "[Content_Types].xml": `${HEAD}<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" ContentType="application/xml"/><Override PartName="/xl/workbook.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml"/>${names.map((_, i) => `<Override PartName="/xl/worksheets/sheet${i + 1}.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml"/>`).join("")}${contentTypes}</Types>`,
    "_rels/.rels": relationships([["officeDocument", "xl/workbook.xml"]]),
    "xl/workbook.xml": `${HEAD}<workbook xmlns="${MAIN}" xmlns:r="${OFFICE}">${workbookHead}<sheets>${entries.join("")}</sheets>${workbookTail}</workbook>`,
    "xl/_rels/workbook.xml.rels": relationships([...sheetLinks, ...links]),
    ...Object.fromEntries(names.map((name, i) => [`xl/worksheets/sheet${i + 1}.xml`, sheets[name] ?? ""])),
    ...parts,
  };
  return Object.fromEntries(Object.entries(all).flatMap(([path, text]) => (text === null ? [] : [[path, strToU8(text)]])));
}

export function relationships(links: readonly (readonly [type: string, target: string])[]): string {
  const items = links.map(([type, target], i) => `<Relationship Id="rId${i + 1}" Type="${OFFICE}/${type}" Target="${target}"/>`);
  return `${HEAD}<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">${items.join("")}</Relationships>`;
}

export const handmade = (what: Handmade = {}): Uint8Array => zipSync(handmadeParts(what), { mtime: "2024-03-05T10:20:30" });

export const opened = (what: Handmade = {}): XlsxFile => openXlsx(handmade(what));

/** A workbook with one sheet named Lots that has these rows. */
export const lots = (rows: string, head = ""): XlsxFile => opened({ sheets: { Lots: sheet(rows, head) } });

export function textOf(bytes: Uint8Array, part: string): string {
  const found = unzipSync(bytes)[part];
  if (!found) throw new Error(`There is no part ${part}`);
  return new TextDecoder("utf-8", { ignoreBOM: true }).decode(found);
}

export const SHEET = "xl/worksheets/sheet1.xml";

/** The rows of the first sheet, as they are written in a file. */
export function rowsOf(bytes: Uint8Array): string {
  const xml = textOf(bytes, SHEET);
  return xml.slice(xml.indexOf("<sheetData>") + "<sheetData>".length, xml.indexOf("</sheetData>"));
}
