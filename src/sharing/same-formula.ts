import { tokens } from "../formulas/tokens";

/** Whether two formulas say the same, however the programs through which they went write them. */
export const isSameFormula = (a: string, b: string): boolean => plain(a) === plain(b);

function plain(formula: string): string {
  const code = formula.replace(/_xlfn\.(?:_xlws\.)?/gi, "").replace(/\b(TRUE|FALSE)\(\s*\)/gi, "$1");
  return tokens(code)
    .flatMap(({ kind, text }) => {
      switch (kind) {
        case "space":
          return [];
        case "text":
          return [text];
        case "number":
          // Some programs store fifteen digits.
          return [Number(Number(text).toPrecision(14)).toString()];
        case "reference":
          return [text.replace(/^'((?:[^']|'')+)'!/, (_, sheet: string) => `${sheet.replaceAll("''", "'")}!`).toUpperCase()];
        case "separator":
          return [","];
        default:
          return [text.toUpperCase()];
      }
    })
    .join(" ");
}
