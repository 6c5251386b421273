import { damaged, FileFault } from "./file-fault";
import { decodeEntities } from "./xml-text";

const LT = 60;
const GT = 62;
const SLASH = 47;
const EQUALS = 61;
const QUOTE = 34;
const APOSTROPHE = 39;
const BANG = 33;
const QUESTION = 63;
const SPACE = 32;

const DECLARES =
  "Cannot read the workbook: it declares XML entities, which no spreadsheet writes: take a fresh copy from someone you trust";

export interface Attribute {
  readonly name: string;
  /** As it is written. */
  readonly value: string;
  readonly valueStart: number;
  /** From the white space before it to its closing quote. */
  readonly start: number;
  readonly end: number;
}

/**
 * Steps through the tags of an XML text by position, so that a sheet of a million rows is read without building a tree
 * and a patch knows exactly which characters it replaces.
 */
export class Tags {
  kind: "open" | "empty" | "close" = "open";
  /** With its prefix, as it is written. */
  name = "";
  start = 0;
  /** Just after the tag, where the next step begins. */
  end: number;
  #nameEnd = 0;

  constructor(
    readonly xml: string,
    at = 0,
  ) {
    this.end = at;
  }

  next(): boolean {
    const { xml } = this;
    for (;;) {
      const start = xml.indexOf("<", this.end);
      if (start < 0) return false;
      const mark = xml.charCodeAt(start + 1);
      if (mark === QUESTION) this.end = this.#after("?>", start);
      else if (mark !== BANG) return this.#readTag(start, mark);
      else if (xml.startsWith("<!--", start)) this.end = this.#after("-->", start);
      else if (xml.startsWith("<![CDATA[", start)) this.end = this.#after("]]>", start);
      else throw new FileFault(DECLARES);
    }
  }

  /** From an opening tag to its closing tag; does nothing on an empty element. */
  skip(): void {
    if (this.kind !== "open") return;
    const { name } = this;
    for (let depth = 1; depth > 0; ) {
      if (!this.next()) throw damaged(`<${name}> is not closed`);
      if (this.name !== name) continue;
      if (this.kind === "open") depth++;
      else if (this.kind === "close") depth--;
    }
  }

  attribute(name: string): string | undefined {
    for (let at = this.#nameEnd; ; ) {
      const attribute = this.#attributeAt(at);
      if (!attribute) return undefined;
      if (attribute.name === name) return decodeEntities(attribute.value);
      at = attribute.end;
    }
  }

  attributes(): Attribute[] {
    const all: Attribute[] = [];
    for (let next = this.#attributeAt(this.#nameEnd); next; next = this.#attributeAt(next.end)) all.push(next);
    return all;
  }

  #readTag(start: number, mark: number): true {
    const { xml } = this;
    let at = start + (mark === SLASH ? 2 : 1);
    const nameStart = at;
    let code = xml.charCodeAt(at);
    while (code > SPACE && code !== GT && code !== SLASH) code = xml.charCodeAt(++at);
    this.name = xml.slice(nameStart, at);
    this.#nameEnd = at;
    for (; code !== GT; code = xml.charCodeAt(++at)) {
      if (code === QUOTE) at = xml.indexOf('"', at + 1);
      else if (code === APOSTROPHE) at = xml.indexOf("'", at + 1);
      if (at < 0 || code === LT || Number.isNaN(code)) throw damaged("its XML breaks off inside a tag");
    }
    this.kind = mark === SLASH ? "close" : xml.charCodeAt(at - 1) === SLASH ? "empty" : "open";
    this.start = start;
    this.end = at + 1;
    return true;
  }

  #attributeAt(from: number): Attribute | undefined {
    const { xml } = this;
    let at = from;
    let code = xml.charCodeAt(at);
    while (code <= SPACE) code = xml.charCodeAt(++at);
    if (code === GT || code === SLASH) return undefined;
    const nameStart = at;
    while (code > SPACE && code !== EQUALS && code !== GT) code = xml.charCodeAt(++at);
    const name = xml.slice(nameStart, at);
    while (code <= SPACE || code === EQUALS) code = xml.charCodeAt(++at);
    if (code !== QUOTE && code !== APOSTROPHE) throw damaged("its XML has an attribute without quotes");
    const close = xml.indexOf(code === QUOTE ? '"' : "'", at + 1);
    return { name, value: xml.slice(at + 1, close), valueStart: at + 1, start: from, end: close + 1 };
  }

  #after(mark: string, from: number): number {
    const at = this.xml.indexOf(mark, from);
    if (at < 0) throw damaged("its XML breaks off");
    return at + mark.length;
  }
}

/** Every element of one name, in order; `tags` stands on it while the loop body runs. */
export function* elements(xml: string, isWanted: (name: string) => boolean): Generator<Tags> {
  const tags = new Tags(xml);
  while (tags.next()) if (tags.kind !== "close" && isWanted(tags.name)) yield tags;
}

export const localName = (name: string): string => name.slice(name.indexOf(":") + 1);
