import { type Token, tokens } from "./tokens";

/**
 * The formula that a text is, in en-US form: typed after an apostrophe, or into a cell formatted as text. Null where the
 * text is none; a sentence where it cannot be told how it is meant. `decimal` is the user's.
 */
export function formulaInText(text: string, decimal: "." | ","): { readonly formula: string } | { readonly fault: string } | null {
  const [, written] = /^\s*['’]?\s*=\s*([^]+?)\s*$/.exec(text) ?? [];
  if (written === undefined) return null;
  const all = tokens(written);
  if (hasSemicolons(all)) return withPoints(all);
  if (decimal === "," && all.some((_, i) => isDecimalComma(all, i))) return { fault: "Cannot tell whether its comma parts two arguments or begins decimals: type the formula again" };
  return { formula: `=${written}` };
}

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
