import { type Token, tokens } from "./tokens";

/**
 * The formula that a text is, in en-US form: typed after an apostrophe, or into a cell formatted as text. Null where the
 * text is none; a sentence where it cannot be told how it is meant. `decimal` is the user's.
 */
export function formulaInText(text: string, decimal: "." | ","): { readonly formula: string } | { readonly fault: string } | null {
  const [, written] = /^\s*['’]?\s*=\s*([^]+?)\s*$/.exec(text) ?? [];
  if (written === undefined) return null;
  const all = tokens(written);
  if (!isOneFormula(all)) return null;
  if (hasSemicolons(all)) return withPoints(all);
  if (decimal === "," && all.some((_, i) => isDecimalComma(all, i))) return { fault: "Cannot tell whether its comma parts two arguments or begins decimals: type the formula again" };
  return { formula: `=${written}` };
}

/** A sentence that begins with a formula goes on with words, or with a comma outside of brackets. */
function isOneFormula(all: readonly Token[]): boolean {
  let depth = 0;
  for (const [i, { kind, text }] of all.entries()) {
    if (kind === "open") depth++;
    if (kind === "close" && --depth < 0) return false;
    if (depth === 0 && kind === "separator") return false;
    if (kind === "space" && isWord(all[i - 1]) && isWord(all[i + 1])) return false;
    if (kind === "operator" && /[\p{L}.?!:'’“”–—]/u.test(text)) return false;
  }
  return depth === 0;
}

const isWord = (token: Token | undefined): boolean => token?.kind === "name" || token?.kind === "number" || token?.kind === "close" || token?.kind === "function";

/** Where semicolons part arguments, a comma between digits begins decimals. */
function withPoints(all: readonly Token[]): { formula: string } | { fault: string } {
  let depth = 0;
  let formula = "=";
  for (const [i, { kind, text }] of all.entries()) {
    if (text === "{") depth++;
    if (text === "}") depth--;
    if (depth > 0 && text.includes("\\")) return { fault: "Cannot read the list in braces: type the formula again" };
    if (text === "," && !isDecimalComma(all, i)) return { fault: "Cannot read it: both commas and semicolons part its arguments: type the formula again" };
    if (text === ",") formula += ".";
    else if (kind === "separator" && depth === 0) formula += ",";
    else formula += text;
  }
  return { formula };
}

const isDecimalComma = (all: readonly Token[], i: number): boolean => all[i]?.text === "," && all[i - 1]?.kind === "number" && all[i + 1]?.kind === "number";

function hasSemicolons(all: readonly Token[]): boolean {
  let depth = 0;
  return all.some(({ text }) => {
    if (text === "{") depth++;
    if (text === "}") depth--;
    return text === ";" && depth === 0;
  });
}
