import { tokens } from "../formulas/tokens";
import type { Notation } from "./notation";

/** A formula as this user's spreadsheet shows and takes it. */
export function localFormula(formula: string, { decimal, separator, column }: Notation): string {
  const open: string[] = [];
  return tokens(formula)
    .map(({ kind, text }) => {
      if (kind === "open") open.push(text);
      if (kind === "close") open.pop();
      if (kind === "number") return text.replace(".", decimal);
      if (kind !== "separator") return text;
      const isInList = open[open.length - 1] === "{";
      // The rows of a list are parted by semicolons everywhere.
      return isInList ? (text === "," ? column : text) : separator;
    })
    .join("");
}
