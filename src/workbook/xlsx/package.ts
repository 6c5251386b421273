import { damaged, FileFault } from "./file-fault";
import { decodeXml } from "./xml-part";
import { elements, localName } from "./xml-tags";
import { type Archive, unpack, type ZipEntry } from "./zip-read";

export interface Relationship {
  readonly id: string;
  /** The last word of its type: worksheet, sharedStrings, table. The rest differs between the standard's two editions. */
  readonly type: string;
  /** The part it points at, or null where it leads outside the file. */
  readonly target: string | null;
}

export const CONTENT_TYPES = "[Content_Types].xml";

/** The parts of an Office file, found by the relationships between them. Names are compared as the standard says: case does not matter. */
export class Package {
  readonly #entries = new Map<string, ZipEntry>();

  constructor(readonly archive: Archive) {
    for (const entry of archive.entries) {
      const key = keyOf(entry.name);
      if (key.endsWith("/")) continue;
      if (this.#entries.has(key)) throw damaged(`it holds two parts named ${entry.name}`);
      this.#entries.set(key, entry);
    }
  }

  entry(part: string): ZipEntry | undefined {
    return this.#entries.get(keyOf(part)) ?? this.#entries.get(keyOf(decodedUri(part)));
  }

  has(part: string): boolean {
    return this.entry(part) !== undefined;
  }

  text(part: string): string {
    const entry = this.entry(part);
    if (!entry) throw damaged(`its part ${part} is missing`);
    return decodeXml(unpack(entry), entry.name);
  }

  /** What a part is, by the list of content types; "" when the list does not say. */
  contentType(part: string): string {
    const key = keyOf(part);
    for (const tag of elements(this.text(CONTENT_TYPES), (name) => localName(name) === "Override"))
      if (keyOf(tag.attribute("PartName") ?? "") === key) return tag.attribute("ContentType") ?? "";
    return "";
  }

  relationships(part: string): Relationship[] {
    const rels = relationshipsPart(part);
    return this.has(rels) ? readRelationships(this.text(rels), part) : [];
  }

  /** The part that the relationship of one type leads to, if it is there. */
  related(part: string, type: string): string | undefined {
    return this.relationships(part).find((link) => link.type === type && link.target !== null && this.has(link.target))?.target ?? undefined;
  }
}

export function readRelationships(rels: string, part: string): Relationship[] {
  const found: Relationship[] = [];
  for (const tag of elements(rels, (name) => localName(name) === "Relationship")) {
    const target = tag.attribute("Target") ?? "";
    found.push({
      id: tag.attribute("Id") ?? "",
      type: (tag.attribute("Type") ?? "").replace(/^.*\//, ""),
      target: tag.attribute("TargetMode") === "External" ? null : resolved(part, target),
    });
  }
  return found;
}

export function relationshipsPart(part: string): string {
  const slash = part.lastIndexOf("/") + 1;
  return `${part.slice(0, slash)}_rels/${part.slice(slash)}.rels`;
}

/** The start of a relationship's type, which the standard's strict edition writes otherwise. */
export const relationshipTypes = (isStrict: boolean): string =>
  isStrict
    ? "http://purl.oclc.org/ooxml/officeDocument/relationships/"
    : "http://schemas.openxmlformats.org/officeDocument/2006/relationships/";

const keyOf = (part: string): string => part.replace(/\\/g, "/").replace(/^\/+/, "").toLowerCase();

function decodedUri(part: string): string {
  try {
    return decodeURI(part);
  } catch {
    return part;
  }
}

/** A target is written from the folder of its part; no number of ".." leaves the file. */
function resolved(part: string, target: string): string {
  const path = target.startsWith("/") ? [] : part.split("/").slice(0, -1);
  for (const step of target.replace(/\\/g, "/").split("/")) {
    if (step === "..") path.pop();
    else if (step !== "" && step !== ".") path.push(step);
  }
  return path.join("/");
}

/** The main part of a workbook; says what the file is when it is not one. */
export function findWorkbook(parts: Package): string {
  const workbook = parts.has("_rels/.rels") ? parts.related("", "officeDocument") : undefined;
  if (workbook === undefined || !parts.has(CONTENT_TYPES))
    throw notWorkbook(parts.has("mimetype") && parts.has("content.xml") ? "an OpenDocument file" : "a zip of something else");
  const type = parts.contentType(workbook);
  if (/ms-excel\.sheet\.binary/i.test(type)) throw notWorkbook("a binary workbook (.xlsb)");
  if (/wordprocessingml|ms-word/i.test(type)) throw notWorkbook("a Word document");
  if (/presentationml|ms-powerpoint/i.test(type)) throw notWorkbook("a PowerPoint presentation");
  if (!/spreadsheetml|ms-excel/i.test(type)) throw notWorkbook("an Office file of another kind");
  return workbook;
}

const notWorkbook = (what: string): FileFault =>
  new FileFault(`Cannot open the file: it is ${what}, not an .xlsx workbook: open it in a spreadsheet program and save it as .xlsx`);
