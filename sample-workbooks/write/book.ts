import type { Format } from "./formats";
import type { Look } from "./looks";

/** A workbook as plain data: what a person reads in the source is what stands in the cells. */
export interface Book {
  readonly title: string;
  readonly subject: string;
  readonly creator: string;
  /** The day that the file bears, so that the same source gives the same bytes. */
  readonly date: string;
  /** Names for cells: Prices!$B$5. */
  readonly names: Readonly<Record<string, string>>;
  readonly sheets: readonly Sheet[];
}

export interface Sheet {
  readonly name: string;
  /** In characters, from column A on. */
  readonly widths: readonly number[];
  /** By row number, from column A on. */
  readonly rows: Readonly<Record<number, readonly Cell[]>>;
  /** In points, where a row is higher than one line. */
  readonly heights?: Readonly<Record<number, number>>;
  readonly merged?: readonly string[];
  /** The row of headings: it and what stands above it stay in view, and it is printed on every page. */
  readonly headingRow?: number;
  /** Where the cursor stands when the sheet opens. */
  readonly cursor: string;
  readonly lists?: readonly List[];
  /** Texts that look like numbers and are meant as texts. */
  readonly numberTexts?: string;
  readonly page: "portrait" | "landscape";
  readonly chart?: BarChart;
}

/** A drop-down list of what a cell usually takes; anything else may still be typed. */
export interface List {
  readonly range: string;
  readonly choices: readonly string[];
}

export interface BarChart {
  readonly title: string;
  /** The cells it covers. */
  readonly over: string;
  readonly categories: string;
  readonly values: string;
  readonly format: Format;
}

export type Cell =
  | { readonly kind: "blank"; readonly look: Look | null }
  | { readonly kind: "text"; readonly text: string; readonly look: Look }
  | { readonly kind: "number"; readonly value: number; readonly look: Look; readonly format: Format }
  | { readonly kind: "formula"; readonly formula: string; readonly look: Look; readonly format: Format }
  /** One formula that fills the cells beside and below it, with what each of them looks like: [row][column]. */
  | { readonly kind: "spill"; readonly formula: string; readonly looks: readonly (readonly SpilledLook[])[] };

export type SpilledLook = readonly [Look, Format?];

export const _: Cell = { kind: "blank", look: null };
export const blank = (look: Look): Cell => ({ kind: "blank", look });
export const text = (text: string, look: Look = "label"): Cell => ({ kind: "text", text, look });
export const title = (words: string): Cell => text(words, "title");
export const section = (words: string): Cell => text(words, "section");
export const heading = (words: string): Cell => text(words, "heading");
/** A heading over what stands to the right of numbers. */
export const unitHeading = (words: string): Cell => text(words, "unitHeading");
/** A heading over numbers. */
export const numberHeading = (words: string): Cell => text(words, "numberHeading");
/** One line, over the free cells beside it. */
export const note = (words: string): Cell => text(words, "note");
export const caution = (words: string): Cell => text(words, "caution");
/** Several lines, within merged cells. */
export const noteBlock = (words: string): Cell => text(words, "noteBlock");
export const cautionBlock = (words: string): Cell => text(words, "cautionBlock");

export function input(content: string | number, format: Format = "general", look: Look = "input"): Cell {
  return typeof content === "number" ? { kind: "number", value: content, look, format } : text(content, look);
}
export const constant = (value: number, format: Format): Cell => input(value, format, "computed");
/** A number or text that is read as words are, from the left. */
export const inputWord = (content: string | number, format?: Format): Cell => input(content, format, "inputWord");

export const computed = (formula: string, format: Format = "general", look: Look = "computed"): Cell => ({ kind: "formula", formula, look, format });
export const total = (formula: string, format: Format): Cell => computed(formula, format, "total");
export const totalLabel = (words: string): Cell => text(words, "totalLabel");
export const unit = (words: string): Cell => text(words, "unit");
export const spill = (formula: string, looks: readonly (readonly SpilledLook[])[]): Cell => ({ kind: "spill", formula, looks });
