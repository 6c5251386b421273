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
export function typedContent({ content, asText }: Pick<CellWrite, "content" | "asText">): Typed {
  if (content === null || content === "") return { kind: "plain", content: "" };
  if (typeof content === "boolean") return { kind: "plain", content };
  if (typeof content === "number") return { kind: "plain", content };
  if (content.startsWith("=") && !asText) return { kind: "formula", content };
  return { kind: "text", content: WORDS.test(content) && !TRUTH.test(content) ? content : `'${content}` };
}

const WORDS = /^\p{L}\P{N}*$/u;
const TRUTH = /^(?:true|false)$/i;
