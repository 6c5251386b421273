import { constants, helpers } from "@odoo/o-spreadsheet";
import type { CellContent } from "./outcome";
import { isErrorCode } from "./error-codes";

/** What is typed into the grid to give a cell this content. */
export function typed(content: CellContent): string {
  if (content === null) return "";
  if (typeof content === "boolean") return content ? "TRUE" : "FALSE";
  return typeof content === "number" ? String(content) : typedText(content);
}

/** A text that the grid would read as something else is typed behind an apostrophe, as in any spreadsheet. */
export const typedText = (text: string): string => (isReadOtherwise(text) ? `'${text}` : text);

const isReadOtherwise = (text: string): boolean =>
  /^['=]/.test(text) ||
  /^(?:true|false)$/i.test(text) ||
  isErrorCode(text) ||
  helpers.isNumber(text, constants.DEFAULT_LOCALE) ||
  helpers.isDateTime(text, constants.DEFAULT_LOCALE);
