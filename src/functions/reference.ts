/** An argument as a formula gives it: the text that stands for it and, where known, what it now holds. */
export class Reference {
  constructor(
    readonly text: string,
    readonly holds?: unknown,
  ) {}
}

/** Whether one pair of brackets holds a formula's text together. */
export function isBracketed(text: string): boolean {
  if (!text.startsWith("(") || !text.endsWith(")")) return false;
  let depth = 0;
  let quoted = false;
  for (let i = 0; i < text.length - 1; i++) {
    const sign = text[i];
    if (sign === '"') quoted = !quoted;
    else if (!quoted && sign === "(") depth++;
    else if (!quoted && sign === ")") depth--;
    if (depth === 0) return false;
  }
  return true;
}

/** What an argument holds, whether it came as a plain cell or as a reference. */
export const held = (cell: unknown): unknown => (cell instanceof Reference ? cell.holds : cell);

/** An omitted argument and an empty cell; a sheet gives either as null, undefined or an empty text. */
export const isEmpty = (value: unknown): boolean => value === null || value === undefined || value === "";
