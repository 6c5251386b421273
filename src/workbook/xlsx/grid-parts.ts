import { encodeCellText, readRichText } from "./cell-text";
import { formulaText, readFormulaGroups } from "./formula-groups";
import { sheetPieces } from "./sheet-pieces";
import { fromStored } from "./stored-formula";
import type { Workbook } from "./workbook";
import { attributeEdits, type Edit, edited } from "./xml-edits";
import { readRoot, SPREADSHEET, STRICT_SPREADSHEET } from "./xml-part";
import { elements, localName, Tags } from "./xml-tags";
import { encodeText } from "./xml-text";

/**
 * The XML parts as the embedded grid reads them. It knows formulas by the names that people write, each in its own
 * cell, texts as values, and elements without a prefix; so the parts are told in these words, and the file stays as it is.
 */
export function gridParts({ parts, sheets }: Workbook): Record<string, string> {
  const worksheets = new Set(sheets.filter(({ kind }) => kind === "worksheet").map(({ part }) => parts.entry(part)));
  const texts = parts.archive.entries
    .filter(({ name }) => isRead(name))
    .map((entry) => {
      const xml = parts.text(entry.name);
      const name = entry.name.replace(/\\/g, "/");
      if (name.endsWith(".rels")) return [name, withRelativeTargets(xml, name)] as const;
      return [name, withoutPrefix(worksheets.has(entry) ? inGridWords(xml) : xml)] as const;
    });
  return Object.fromEntries(texts);
}

/** Notes of other programs and the file's properties hold nothing that a grid shows. */
const isRead = (name: string): boolean => /\.(?:xml|rels)$/.test(name) && !/^(?:customXml|docProps)\//i.test(name);

/** A target may be told from the root of the file; the grid knows those alone that are told from the part's own folder. */
function withRelativeTargets(xml: string, rels: string): string {
  const folder = rels.split("/").slice(0, -2);
  const edits: Edit[] = [];
  for (const tag of elements(xml, (name) => localName(name) === "Relationship"))
    edits.push(...attributeEdits(xml, tag.start, "Target", (target) => (target.startsWith("/") ? relative(folder, target.slice(1).split("/")) : target)));
  return edited(xml, edits);
}

function relative(folder: readonly string[], target: readonly string[]): string {
  const shared = folder.findIndex((step, i) => step !== target[i]);
  const kept = shared < 0 ? folder.length : shared;
  return [...folder.slice(kept).map(() => ".."), ...target.slice(kept)].join("/");
}

function inGridWords(xml: string): string {
  const { prefix } = readRoot(new Tags(xml));
  const { masters } = readFormulaGroups(xml);
  const edits: Edit[] = [];
  for (const piece of sheetPieces(xml)) {
    if (piece.kind !== "cell") continue;
    const { formula, value } = piece;
    const text = formula && formulaText(xml, piece, formula, masters);
    if (formula && text && formula.shared !== undefined)
      edits.push({ start: formula.start, end: formula.end, text: `<${prefix}f>${encodeText(fromStored(text))}</${prefix}f>` });
    else if (formula && text?.includes("_xl"))
      edits.push({ start: formula.textStart, end: formula.textEnd, text: encodeText(fromStored(text)) });
    if (value && piece.type === "inlineStr") {
      const written = encodeCellText(readRichText(xml, value.start, value.end, prefix));
      edits.push(...attributeEdits(xml, piece.start, "t", () => "str"));
      edits.push({ start: formula?.end ?? piece.tagEnd, end: piece.contentEnd, text: `<${prefix}v>${written}</${prefix}v>` });
    }
  }
  return edited(xml, edits);
}

/** No text of an element can hold a bare "<", so every "<x:" begins a tag. */
function withoutPrefix(xml: string): string {
  const tags = new Tags(xml);
  if (!tags.next() || !tags.name.includes(":")) return xml;
  const [prefix = ""] = tags.name.split(":");
  const namespace = tags.attribute(`xmlns:${prefix}`);
  if (namespace !== SPREADSHEET && namespace !== STRICT_SPREADSHEET) return xml;
  return xml.replaceAll(`<${prefix}:`, "<").replaceAll(`</${prefix}:`, "</");
}
