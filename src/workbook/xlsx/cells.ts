import type { CellContent } from "../port";
import { addressOf, areaText, type Spot } from "./address";
import { decodeCellText, readRichText } from "./cell-text";
import { damaged } from "./file-fault";
import { filledArea, formulaText, readFormulaGroups } from "./formula-groups";
import { fromStored } from "./stored-formula";
import { sheetPieces, type StoredCell } from "./sheet-pieces";
import { readRoot } from "./xml-part";
import { Tags } from "./xml-tags";
import { textBetween } from "./xml-text";

/** A cell that holds something. */
export interface Cell extends Spot {
  readonly address: string;
  /** With its equals sign, in en-US form with LOT.NAME(…), or null. */
  readonly formula: string | null;
  /** The range that an array formula or a spill fills from here, or null. */
  readonly fills: string | null;
  /** As it was when the file was saved; a date is its number. */
  readonly value: CellContent;
  /** True where the value is an error's code. */
  readonly error: boolean;
  /** Its place in the list of cell formats. */
  readonly style: number;
}

export interface CellContext {
  readonly sharedStrings: () => readonly string[];
  readonly date1904: boolean;
}

export function* readCells(xml: string, context: CellContext): Generator<Cell, void, undefined> {
  const { prefix } = readRoot(new Tags(xml));
  const { masters } = readFormulaGroups(xml);
  for (const piece of sheetPieces(xml)) {
    if (piece.kind !== "cell" || !(piece.formula || piece.value)) continue;
    const { row, column, formula, style } = piece;
    const text = formula && formulaText(xml, piece, formula, masters);
    yield {
      row,
      column,
      address: addressOf(piece),
      formula: text === null ? null : `=${fromStored(text)}`,
      fills: formula?.type === "array" ? areaText(filledArea(piece, formula)) : null,
      value: readValue(xml, piece, prefix, context),
      error: piece.type === "e",
      style: Number(style ?? 0),
    };
  }
}

function readValue(xml: string, { type, value }: StoredCell, prefix: string, context: CellContext): CellContent {
  if (!value) return null;
  if (type === "inlineStr") return readRichText(xml, value.start, value.end, prefix);
  const text = textBetween(xml, value.start, value.end);
  switch (type) {
    case "str":
      return decodeCellText(text);
    case "s":
      return context.sharedStrings()[Number(text)] ?? missing(`text ${text}`);
    case "b":
      return text === "1" || text === "true";
    case "e":
      return text;
    case "d":
      return serialDate(text, context.date1904);
    default:
      return text.trim() === "" ? null : finite(Number(text), text);
  }
}

const finite = (number: number, text: string): number => (Number.isFinite(number) ? number : missing(`the number "${text.slice(0, 20)}"`));

function missing(what: string): never {
  throw damaged(`a cell holds ${what}, which cannot be read`);
}

const DAY = 86_400_000;

/** A date written out (strict files may) as the number that other files store. */
function serialDate(text: string, date1904: boolean): number {
  const time = Date.parse(/T/.test(text) && !/(?:Z|[+-]\d\d:\d\d)$/.test(text) ? `${text}Z` : text);
  return finite((time - Date.UTC(date1904 ? 1904 : 1899, date1904 ? 0 : 11, date1904 ? 1 : 30)) / DAY, text);
}
