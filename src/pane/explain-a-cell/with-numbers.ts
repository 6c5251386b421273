import type { Expression } from "../../formulas/expression";
import { type Notation, writtenNumber } from "../notation";
import { type Found, evaluate } from "../../explaining/evaluate";
import type { References } from "../../explaining/references";

const SIGNS = { "+": " + ", "-": " − ", "*": " × ", "/": " ÷ " } as const;

/** An argument's arithmetic with the numbers put in; what is not known stands as it is. */
export function withNumbers(of: Expression, references: References, notation: Notation): string {
  const inside = (one: Expression): string => withNumbers(one, references, notation);
  switch (of.kind) {
    case "arithmetic":
      return `${inside(of.a)}${SIGNS[of.operator]}${inside(of.b)}`;
    case "brackets":
      return `(${inside(of.of)})`;
    case "negative":
      return `−${inside(of.of)}`;
    case "percent":
      return `${inside(of.of)}%`;
    default: {
      const found = evaluate(of, references);
      return found.kind === "known" && typeof found.holds === "number" ? shownNumber(found.holds, notation) : of.text;
    }
  }
}

/** What an argument comes to, in few words. */
export function shownFound(of: Expression, found: Found, notation: Notation): string {
  if (of.kind === "nothing") return "left out";
  if (found.kind === "error") return found.code;
  if (found.kind === "foreign") return "as it stands";
  const { holds } = found;
  if (Array.isArray(holds)) {
    const cells = (holds as unknown[][]).flat();
    return `${cells.filter((cell) => cell !== null && cell !== "").length} filled of ${cells.length} cells`;
  }
  if (holds === null || holds === undefined || holds === "") return "empty";
  return typeof holds === "number" ? shownNumber(holds, notation) : typeof holds === "string" ? `“${holds}”` : String(holds).toUpperCase();
}

/** To as many digits as a spreadsheet shows. */
export const shownNumber = (value: number, notation: Notation): string => writtenNumber(Number(value.toPrecision(15)), notation);
