import { damaged, FileFault } from "./file-fault";

const LT = 60;
const GT = 62;
const SLASH = 47;
const EQUALS = 61;
const QUOTE = 34;
const APOSTROPHE = 39;
const BANG = 33;
const QUESTION = 63;
const SPACE = 32;

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
      else throw new FileFault("Cannot read the workbook: it declares XML entities, which no spreadsheet writes: take a fresh copy from someone you trust");
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

/** The words a main part is written in: its namespace may stand under any prefix, and has a strict twin. */
export interface Root {
  /** "" or "x:". */
  readonly prefix: string;
  readonly name: string;
  readonly namespace: string;
}

export const SPREADSHEET = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
export const STRICT_SPREADSHEET = "http://purl.oclc.org/ooxml/spreadsheetml/main";

/** Steps onto the root element, which must be one of a spreadsheet's. */
export function readRoot(tags: Tags): Root {
  if (!tags.next()) throw damaged("a part of it holds no XML");
  const colon = tags.name.indexOf(":");
  const prefix = tags.name.slice(0, colon + 1);
  const namespace = tags.attribute(colon < 0 ? "xmlns" : `xmlns:${tags.name.slice(0, colon)}`);
  if (namespace !== SPREADSHEET && namespace !== STRICT_SPREADSHEET)
    throw new FileFault("Cannot read the workbook: a part of it is not written in the words of a spreadsheet: open it in Excel and save it again as .xlsx");
  return { prefix, name: tags.name.slice(colon + 1), namespace };
}

/** Every element of one name, in order; `tags` stands on it while the loop body runs. */
export function* elements(xml: string, isWanted: (name: string) => boolean): Generator<Tags> {
  const tags = new Tags(xml);
  while (tags.next()) if (tags.kind !== "close" && isWanted(tags.name)) yield tags;
}

export const localName = (name: string): string => name.slice(name.indexOf(":") + 1);

const NAMED: Readonly<Record<string, string>> = { amp: "&", lt: "<", gt: ">", quot: '"', apos: "'" };

export function decodeEntities(text: string): string {
  if (!text.includes("&")) return text;
  return text.replace(/&(?:#x([0-9A-Fa-f]+)|#([0-9]+)|([a-z]+));/g, (whole, hex?: string, decimal?: string, name?: string) => {
    if (name !== undefined) return NAMED[name] ?? whole;
    const code = hex === undefined ? Number(decimal) : parseInt(hex, 16);
    return code <= 0x10ffff ? String.fromCodePoint(code) : whole;
  });
}

/** The text between two tags, with comments left out and quoted sections as they stand. */
export function textBetween(xml: string, start: number, end: number): string {
  const raw = xml.slice(start, end);
  const lines = raw.includes("\r") ? raw.replace(/\r\n?/g, "\n") : raw;
  if (!lines.includes("<")) return decodeEntities(lines);
  return lines
    .split(/(<!\[CDATA\[[^]*?\]\]>|<!--[^]*?-->)/)
    .map((piece) => (piece.startsWith("<![CDATA[") ? piece.slice(9, -3) : piece.startsWith("<!--") ? "" : decodeEntities(piece)))
    .join("");
}

/** Characters that XML cannot hold in any form. */
const UNWRITABLE = /[\u0000-\u0008\u000B\u000C\u000E-\u001F\uFFFE\uFFFF]|\p{Surrogate}/gu;

export const encodeText = (text: string): string =>
  text.replace(UNWRITABLE, "").replace(/&/g, "&amp;").replace(/</g, "&lt;").replace(/>/g, "&gt;");

export const encodeAttribute = (text: string): string => encodeText(text).replace(/"/g, "&quot;");

export interface Edit {
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

/** Replaces stretches of a text; everything between them stays as it is. Edits at one place keep their order. */
export function edited(text: string, edits: readonly Edit[]): string {
  const pieces: string[] = [];
  let from = 0;
  for (const edit of [...edits].sort((a, b) => a.start - b.start)) {
    pieces.push(text.slice(from, edit.start), edit.text);
    from = edit.end;
  }
  pieces.push(text.slice(from));
  return pieces.join("");
}

/** Replaces the value of one attribute, where the tag that begins here has it and it is to change. */
export function attributeEdits(xml: string, tagStart: number, name: string, change: (value: string) => string): Edit[] {
  const tags = new Tags(xml, tagStart);
  tags.next();
  const attribute = tags.attributes().find((one) => one.name === name);
  if (!attribute) return [];
  const text = change(attribute.value);
  return text === attribute.value ? [] : [{ start: attribute.valueStart, end: attribute.end - 1, text }];
}

const MOST_CHARACTERS = 500_000_000;

/** A part's bytes as text, from which the same bytes can be written again. */
export function decodeXml(bytes: Uint8Array, part: string): string {
  if (bytes.length > MOST_CHARACTERS) throw new FileFault(`Cannot read the workbook: its part ${part} is larger than 500 MB: split the sheet into smaller ones`);
  let xml;
  try {
    xml = new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    throw new FileFault(`Cannot read the workbook: its part ${part} is not written in UTF-8: open it in Excel and save it again`);
  }
  const encoding = /^\uFEFF?<\?xml[^>]*encoding\s*=\s*["']([^"']*)/.exec(xml)?.[1] ?? "utf-8";
  if (!/^(?:utf-?8|us-ascii)$/i.test(encoding))
    throw new FileFault(`Cannot read the workbook: its part ${part} is written in ${encoding}: open it in Excel and save it again`);
  refuseDeclarations(xml);
  return xml;
}

/** Entities can only be declared before the root element: stepping onto that one passes them all. */
const refuseDeclarations = (xml: string): boolean => new Tags(xml).next();

export const encodeXml = (xml: string): Uint8Array => new TextEncoder().encode(xml);
