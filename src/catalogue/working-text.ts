import type { Working, WorkingLine } from "../core/expression/working";

const HEADINGS: Readonly<Record<WorkingLine["part"], string>> = {
  rule: "Rule",
  formula: "Formula",
  given: "Put in",
  constant: "Constants",
  step: "So",
  rounding: "Rounding",
  result: "Result",
  caution: "Caution",
  source: "Source",
};
const WIDTH = 11;

/** A working as a page of plain text: what one would hand to a client or an inspector. */
export function workingText({ title, lines }: Working): string {
  const set = lines.map(({ part, text }, i) => {
    const heading = part === lines[i - 1]?.part ? "" : HEADINGS[part];
    return `${heading.padEnd(WIDTH)}${text}`;
  });
  return [title, "", ...set].join("\n");
}
