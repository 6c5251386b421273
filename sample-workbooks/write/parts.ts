import { zipSync } from "fflate";
import { encodeXml } from "../../src/workbook/xlsx/xml-part";
import { type Link, relationshipsXml } from "./relationships";

const DECLARATION = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n';
const CONTENT_TYPES = "http://schemas.openxmlformats.org/package/2006/content-types";
const RELATIONSHIPS_TYPE = "application/vnd.openxmlformats-package.relationships+xml";

/** The parts of a file, as they come. */
export class Parts {
  readonly #xml = new Map<string, string>();
  readonly #types: string[] = [];

  /** A part with its type, and what it points at: the first link is its rId1. */
  add(name: string, type: string, xml: string, links: readonly Link[] = []): void {
    this.#set(name, xml);
    this.#types.push(`<Override PartName="/${name}" ContentType="${type}"/>`);
    if (links.length > 0) this.#set(name.replace(/[^/]*$/, "_rels/$&.rels"), relationshipsXml(links));
  }

  /** The file. `links` is what the file as a whole points at, `date` the day that its parts bear. */
  zipped(links: readonly Link[], date: string): Uint8Array {
    const types = `<Types xmlns="${CONTENT_TYPES}"><Default Extension="rels" ContentType="${RELATIONSHIPS_TYPE}"/>${this.#types.join("")}</Types>`;
    const all = [["[Content_Types].xml", DECLARATION + types], ["_rels/.rels", DECLARATION + relationshipsXml(links)], ...this.#xml] as const;
    const files = Object.fromEntries(all.map(([name, xml]) => [name, encodeXml(xml)]));
    // A zip holds local time: noon as this machine counts it is the same everywhere.
    return zipSync(files, { mtime: new Date(`${date}T12:00:00`), level: 6 });
  }

  #set(name: string, xml: string): void {
    this.#xml.set(name, xml.startsWith("<?xml") ? xml : DECLARATION + xml);
  }
}
