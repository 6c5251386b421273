import { LONGEST_FORMULA } from "../functions/answer";

/** A command was called in a way that it cannot be. */
export class Misuse extends Error {}

/** The one formula that a command takes. */
export function formulaIn(words: readonly string[]): string {
  const [formula, ...more] = words;
  if (formula === undefined || formula.trim() === "") throw new Misuse("Give a formula in quotes, such as '=LOT.COPPER(10,\"lb\")'");
  if (more.length > 0) throw new Misuse(`Give one formula in quotes: "${more.join(" ")}" came after it`);
  const trimmed = formula.trim();
  if (trimmed.length > LONGEST_FORMULA) throw new Misuse(`Cannot read a formula of ${trimmed.length} characters: a spreadsheet takes ${LONGEST_FORMULA}: split it`);
  return trimmed.startsWith("=") ? trimmed : `=${trimmed}`;
}
