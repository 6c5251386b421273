import { quotedEnd } from "./pieces";

export type TokenKind =
  | "space"
  | "text"
  | "number"
  | "error"
  /** A cell, a range, whole columns or rows, with the sheet where it is named. */
  | "reference"
  /** Columns of a table: Lots[Net], [@Net]. */
  | "columns"
  /** The name before a bracket. */
  | "function"
  | "name"
  | "open"
  | "close"
  | "separator"
  | "operator";

/** A piece of a formula in en-US form, and where it stands. */
export interface Token {
  readonly kind: TokenKind;
  readonly text: string;
  readonly start: number;
  readonly end: number;
}

/** Cuts any text, be it a formula or not: put together again, the tokens are that text. */
export function tokens(formula: string): Token[] {
  const found: Token[] = [];
  for (let start = 0; start < formula.length; ) {
    const { kind, end } = next(formula, start);
    found.push({ kind, text: formula.slice(start, end), start, end });
    start = end;
  }
  return found;
}

const SHEET = String.raw`(?:(?:\[[^\[\]]+\])?(?:'(?:[^']|'')+'|[\p{L}\p{N}_.]+(?::[\p{L}\p{N}_.]+)?)!)`;
const CELL = String.raw`\$?[A-Z]{1,3}\$?[1-9]\d{0,6}`;
const AREA = String.raw`(?:${CELL}(?::${CELL})?|\$?[A-Z]{1,3}:\$?[A-Z]{1,3}|\$?\d{1,7}:\$?\d{1,7})`;
const NAME = String.raw`[\p{L}_\\][\p{L}\p{N}_.\\?]*`;

const RULES: readonly (readonly [TokenKind, RegExp])[] = [
  ["space", /\s+/y],
  ["text", /"(?:[^"]|"")*"?/y],
  ["error", /#(?:N\/A|DIV\/0!|[A-Z_]+[!?])/iy],
  ["reference", new RegExp(String.raw`${SHEET}?${AREA}(?![\p{L}\p{N}_.\\?$!\[]|\s*\()`, "iuy")],
  ["function", new RegExp(String.raw`${NAME}(?=\s*\()`, "uy")],
  ["number", /(?:\d+\.?\d*|\.\d+)(?:E[+-]?\d+)?/iy],
  ["name", new RegExp(`${SHEET}?${NAME}`, "uy")],
  ["open", /[({]/y],
  ["close", /[)}]/y],
  ["separator", /[,;]/y],
  ["operator", /<=|>=|<>|[^]/uy],
];

function next(formula: string, start: number): { kind: TokenKind; end: number } {
  for (const [kind, rule] of RULES) {
    rule.lastIndex = start;
    if (!rule.test(formula)) continue;
    const end = rule.lastIndex;
    if (kind === "name" && formula[end] === "[") return { kind: "columns", end: quotedEnd(formula, end) };
    if (kind === "operator" && formula[start] === "[") return { kind: "columns", end: quotedEnd(formula, start) };
    return { kind, end };
  }
  return { kind: "operator", end: formula.length };
}

/** Whether a token that is a text in quotation marks lacks its last one. */
export const isUnclosed = ({ kind, text }: Token): boolean => kind === "text" && (text.match(/"/g)?.length ?? 0) % 2 === 1;

/** What a text in quotation marks says. */
export const textIn = (quoted: string): string => quoted.slice(1, -1).replaceAll('""', '"');
