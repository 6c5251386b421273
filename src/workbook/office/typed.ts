import { readAddress } from "../xlsx/address";
import type { CellWrite } from "../port";

/** A content as Excel must be given it to keep it as it is. */
export interface Typed {
  readonly kind: "formula" | "text" | "plain";
  readonly content: string | number | boolean;
}

/**
 * Excel reads a text that it is given as if it were typed: =A1 becomes a formula, 1/2 a date, 007 a number. An
 * apostrophe before it keeps it a text; it is not part of the value. Words need none and are spared it.
 */
export function typedContent({ sheet, cell, content, asText }: CellWrite): Typed {
  const at = `${sheet}!${cell}`;
  if (content === null || content === "") return { kind: "plain", content: "" };
  if (typeof content === "boolean") return { kind: "plain", content };
  if (typeof content === "number")
    return Number.isFinite(content) ? { kind: "plain", content } : refuse(at, `${content} is not a number that a cell can hold`);
  if (content.startsWith("=") && !asText)
    return content.length <= 8192 ? { kind: "formula", content } : refuse(at, `the formula has ${content.length} characters, and Excel takes 8192`);
  if (content.length > 32_767) return refuse(at, `the text has ${content.length} characters, and a cell takes 32767`);
  return { kind: "text", content: WORDS.test(content) && !TRUTH.test(content) ? content : `'${content}` };
}

const WORDS = /^\p{L}\P{N}*$/u;
const TRUTH = /^(?:true|false)$/i;

/** A write goes to one cell, and to each cell once. */
export function checkPlaces(writes: readonly CellWrite[]): void {
  const seen = new Set<string>();
  for (const { sheet, cell } of writes) {
    const at = `${sheet}!${cell}`;
    if (!readAddress(cell)) refuse(at, "a write goes to one cell, such as B4");
    const key = at.replaceAll("$", "").toUpperCase();
    if (seen.has(key)) refuse(at, "it is written twice in one go");
    seen.add(key);
  }
}

const refuse = (at: string, why: string): never => {
  throw new Error(`Cannot write ${at}: ${why}`);
};
