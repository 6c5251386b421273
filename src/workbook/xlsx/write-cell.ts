import { addressOf, type Spot } from "./address";
import { encodeCellText } from "./cell-text";
import type { CellValue } from "./change";
import { FileFault } from "./file-fault";
import { formulaText, type Master } from "./formula-groups";
import type { StoredCell } from "./sheet-pieces";
import { Tags } from "./xml-tags";
import { encodeText } from "./xml-text";

/** A formula's text is as the file stores it. */
export type FormulaPlan =
  | { readonly kind: "plain"; readonly text: string }
  /** From here on this cell holds the text of a formula that others share. */
  | { readonly kind: "shared"; readonly text: string; readonly number: string; readonly ref: string }
  /** Without a text the cell keeps the one it has. */
  | { readonly kind: "spill"; readonly text?: string; readonly ref: string };

/** What becomes of one cell. */
export interface CellPlan extends Spot {
  /** null takes the formula away; left out, it stays. */
  readonly formula?: FormulaPlan | null;
  /** Left out, the stored value stays. */
  readonly content?: CellValue;
  /** True where the value comes from the formula of another cell. */
  readonly isSpilledInto?: boolean;
  /** True where a formula begins to fill this cell, which must then hold nothing of its own. */
  readonly mustBeFree?: boolean;
  /** Its new place in the list of cell formats; left out, the format stays. */
  readonly style?: number;
}

export interface SheetWords {
  /** "" or "x:" */
  readonly prefix: string;
  /** The mark of a cell whose formula spills. */
  readonly dynamicIndex: string;
  readonly masters: ReadonlyMap<string, Master>;
}

/** A cell that is there, with its formula, its value and what marks their kind replaced, and nothing else. */
export function rewrittenCell(xml: string, cell: StoredCell, plan: CellPlan, words: SheetWords): string {
  if (plan.mustBeFree && (cell.formula || cell.value))
    throw new FileFault(`Cannot fill ${addressOf(plan)}: it already holds something: empty it, or put the formula elsewhere`);
  const keptText = cell.formula && formulaText(xml, cell, cell.formula, words.masters);
  const formula = plan.formula === undefined ? keptFormula(xml, cell) : formulaXml(plan, keptText, words);
  if (!plan.content) {
    const { start, end } = cell.formula ?? { start: cell.tagEnd, end: cell.tagEnd };
    return xml.slice(cell.start, start) + formula + xml.slice(end, cell.end);
  }

  const replaced = ["t", "vm", ...(plan.formula === undefined ? [] : ["cm"]), ...(plan.style === undefined ? [] : ["s"])];
  const attributes = keptAttributes(xml, cell, replaced) + styleAttribute(plan.style);
  return cellXml(attributes, formula, plan, words, xml.slice(cell.contentEnd, cell.closeStart));
}

/** A cell that was not there; "" when there is nothing to write. */
export function newCell(plan: CellPlan, style: string | undefined, words: SheetWords): string {
  const formula = plan.formula === undefined ? "" : formulaXml(plan, null, words);
  if (plan.style === undefined && formula === "" && valueXml(plan, plan.isSpilledInto === true, words.prefix).value === "") return "";
  return cellXml(` r="${addressOf(plan)}"${styleAttribute(plan.style ?? style)}`, formula, plan, words, "");
}

const styleAttribute = (style: number | string | undefined): string => (style === undefined ? "" : ` s="${style}"`);

const keptFormula = (xml: string, { formula }: StoredCell): string => (formula ? xml.slice(formula.start, formula.end) : "");

function cellXml(attributes: string, formula: string, plan: CellPlan, { prefix, dynamicIndex }: SheetWords, rest: string): string {
  const { type, value } = valueXml(plan, formula !== "" || plan.isSpilledInto === true, prefix);
  const marks = `${plan.formula?.kind === "spill" ? ` cm="${dynamicIndex}"` : ""}${type && ` t="${type}"`}`;
  const inner = formula + value + rest;
  return inner === "" ? `<${prefix}c${attributes}${marks}/>` : `<${prefix}c${attributes}${marks}>${inner}</${prefix}c>`;
}

function keptAttributes(xml: string, cell: StoredCell, replaced: readonly string[]): string {
  const tags = new Tags(xml, cell.start);
  tags.next();
  const kept = tags.attributes().filter(({ name }) => !replaced.includes(name));
  return kept.map(({ start, end }) => xml.slice(start, end)).join("");
}

function formulaXml(plan: CellPlan, keptText: string | null, { prefix }: SheetWords): string {
  const { formula } = plan;
  if (!formula) return "";
  const text = formula.text ?? keptText;
  if (text === null) throw new FileFault(`Cannot fill cells from ${addressOf(plan)}: it has no formula: give it one`);
  const written = `${encodeText(text)}</${prefix}f>`;
  switch (formula.kind) {
    case "plain":
      return `<${prefix}f>${written}`;
    case "shared":
      return `<${prefix}f t="shared" ref="${formula.ref}" si="${formula.number}">${written}`;
    case "spill":
      return `<${prefix}f t="array" ref="${formula.ref}">${written}`;
  }
}

/** The codes of the file format; a newer one, such as #SPILL!, stands in a file as #VALUE!, which has further parts of its own. */
const STORED_ERRORS = new Set(["#NULL!", "#DIV/0!", "#VALUE!", "#REF!", "#NAME?", "#NUM!", "#N/A", "#GETTING_DATA"]);
const LONGEST_TEXT = 32_767;

function valueXml(plan: CellPlan, isComputed: boolean, prefix: string): { type: string; value: string } {
  const { value = null, error = false } = plan.content ?? {};
  const v = (text: string): string => `<${prefix}v>${text}</${prefix}v>`;
  if (error) return { type: "e", value: v(STORED_ERRORS.has(String(value)) ? encodeText(String(value)) : "#VALUE!") };
  if (typeof value === "boolean") return { type: "b", value: v(value ? "1" : "0") };
  if (typeof value === "number") {
    if (!Number.isFinite(value))
      throw new FileFault(`Cannot write ${value} into ${addressOf(plan)}: give a number that a spreadsheet can hold`);
    return { type: "", value: v(String(value)) };
  }
  const text = value ?? "";
  if (text.length > LONGEST_TEXT)
    throw new FileFault(`Cannot write ${text.length} characters into ${addressOf(plan)}: a cell holds 32,767 at most: split the text`);
  const written = encodeCellText(text);
  if (isComputed) return { type: "str", value: v(written) };
  if (written === "") return { type: "", value: "" };
  // A text of its own, rather than one more in the list of shared ones: that list, a part of the file, stays as it is.
  const keepsSpace = /^\s|\s$|\n/.test(text) ? ' xml:space="preserve"' : "";
  return { type: "inlineStr", value: `<${prefix}is><${prefix}t${keepsSpace}>${written}</${prefix}t></${prefix}is>` };
}
