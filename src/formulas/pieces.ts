export interface FormulaPiece {
  readonly text: string;
  /** False for "texts", 'sheet names' and [columns or books], which no rewriting may touch. */
  readonly isCode: boolean;
}

export function formulaPieces(formula: string): FormulaPiece[] {
  const pieces: FormulaPiece[] = [];
  let codeStart = 0;
  let at = 0;
  while (at < formula.length) {
    const end = quotedEnd(formula, at);
    if (end === at) {
      at++;
      continue;
    }
    if (at > codeStart) pieces.push({ text: formula.slice(codeStart, at), isCode: true });
    pieces.push({ text: formula.slice(at, end), isCode: false });
    codeStart = at = end;
  }
  if (codeStart < formula.length) pieces.push({ text: formula.slice(codeStart), isCode: true });
  return pieces;
}

export const mapCode = (formula: string, change: (code: string) => string): string =>
  formulaPieces(formula)
    .map(({ text, isCode }) => (isCode ? change(text) : text))
    .join("");

/** Where the quoted piece that begins here ends; here, when none begins. A doubled quote is two pieces that touch. */
export function quotedEnd(formula: string, at: number): number {
  const mark = formula[at];
  if (mark === '"' || mark === "'") {
    const close = formula.indexOf(mark, at + 1);
    return close < 0 ? formula.length : close + 1;
  }
  if (mark !== "[") return at;
  let depth = 0;
  for (let i = at; i < formula.length; i++) {
    if (formula[i] === "'") i++;
    else if (formula[i] === "[") depth++;
    else if (formula[i] === "]" && --depth === 0) return i + 1;
  }
  return formula.length;
}
