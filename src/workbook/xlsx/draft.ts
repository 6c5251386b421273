import { CONTENT_TYPES, type Package, readRelationships, relationshipsPart, relationshipTypes } from "./package";
import { withContentType, withDefaultType, withoutContentType, withoutRelationship, withRelationship } from "./package-list";
import type { Workbook } from "./workbook";
import { encodeXml, STRICT_SPREADSHEET } from "./xml-part";
import { writeZip } from "./zip-write";

/** Parts on their way into the new file; what is not written here keeps its very bytes. */
export class Draft {
  readonly parts: Package;
  readonly #written = new Map<string, string>();
  /** Parts as they are, since unpacking one again takes as long as the first time. */
  readonly #read = new Map<string, string>();
  readonly #media = new Map<string, Uint8Array>();
  readonly #removed = new Set<string>();
  readonly #types: string;

  constructor({ parts, namespace }: Workbook) {
    this.parts = parts;
    this.#types = relationshipTypes(namespace === STRICT_SPREADSHEET);
  }

  has(part: string): boolean {
    return this.#written.has(part) || this.#media.has(part) || this.parts.has(part);
  }

  text(part: string): string {
    const written = this.#written.get(part);
    if (written !== undefined) return written;
    const text = this.#read.get(part) ?? this.parts.text(part);
    this.#read.set(part, text);
    return text;
  }

  write(part: string, text: string): void {
    if (text !== this.#read.get(part)) this.#written.set(part, text);
    else this.#written.delete(part);
  }

  remove(part: string): void {
    this.#removed.add(part);
  }

  /** The part that the relationship of one type leads to, if it is there. */
  related(from: string, type: string): string | undefined {
    const rels = relationshipsPart(from);
    const links = this.has(rels) ? readRelationships(this.text(rels), from) : [];
    return links.find((link) => link.type === type && link.target !== null && this.has(link.target))?.target ?? undefined;
  }

  /** A part that was not there: entered in the list of content types and pointed at by another part. Gives the name it is pointed at by. */
  add(part: string, text: string, contentType: string, from: string, type: string): string {
    this.#written.set(part, text);
    this.write(CONTENT_TYPES, withContentType(this.text(CONTENT_TYPES), part, contentType));
    return this.link(from, type, part);
  }

  /** A part whose content type its ending tells. */
  addByEnding(part: string, content: Uint8Array | string, contentType: string, from: string, type: string): string {
    if (typeof content === "string") this.#written.set(part, content);
    else this.#media.set(part, content);
    this.write(CONTENT_TYPES, withDefaultType(this.text(CONTENT_TYPES), part.slice(part.lastIndexOf(".") + 1), contentType));
    return this.link(from, type, part);
  }

  link(from: string, type: string, to: string): string {
    const rels = relationshipsPart(from);
    const { xml, id } = withRelationship(this.has(rels) ? this.text(rels) : NO_RELATIONSHIPS, this.#types + type, `/${to}`);
    this.write(rels, xml);
    return id;
  }

  unlink(from: string, id: string, to: string): void {
    const rels = relationshipsPart(from);
    this.remove(to);
    this.write(rels, withoutRelationship(this.text(rels), id));
    this.write(CONTENT_TYPES, withoutContentType(this.text(CONTENT_TYPES), to));
  }

  /** A part goes with what only it points at, such as the picture of an add-in. */
  unlinkWhole(from: string, id: string, to: string): void {
    for (const own of this.parts.relationships(to)) if (own.target !== null && this.parts.has(own.target)) this.unlinkWhole(to, own.id, own.target);
    this.unlink(from, id, to);
    this.remove(relationshipsPart(to));
  }

  /** A name that no part has: folder/stem1.ending, or with the next number. */
  freePart(folder: string, stem: string, ending: string): string {
    for (let n = 1; ; n++) {
      const name = `${folder}${stem}${n}.${ending}`;
      if (!this.has(name)) return name;
    }
  }

  bytes(): Uint8Array {
    const replaced = new Map();
    const added = new Map<string, Uint8Array>(this.#media);
    for (const [part, text] of this.#written) {
      const entry = this.parts.entry(part);
      if (entry) replaced.set(entry, encodeXml(text));
      else added.set(part, encodeXml(text));
    }
    const removed = new Set([...this.#removed].flatMap((part) => this.parts.entry(part) ?? []));
    return writeZip(this.parts.archive, { replaced, removed, added });
  }

  get isEmpty(): boolean {
    return this.#written.size === 0 && this.#media.size === 0 && this.#removed.size === 0;
  }
}

const NO_RELATIONSHIPS =
  '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"></Relationships>';
