import { tokenize } from "@odoo/o-spreadsheet";
import { NAMESPACE } from "../catalogue/catalogue";

/** A call of one of our functions, as it stands in a formula. */
export interface LotCall {
  /** LOT.COPPER, in capitals whatever was typed. */
  readonly name: string;
  /** The texts between the separators; an omitted argument is "". */
  readonly arguments: readonly string[];
  /** The whole call, and where it stands in the formula. */
  readonly text: string;
  readonly start: number;
  readonly end: number;
}

/** The calls of our functions in a formula, in reading order: an outer one before those within its arguments. */
export function lotCalls(formula: string): LotCall[] {
  return outermost(formula).flatMap((call) => [
    call.own,
    ...call.slices.flatMap(({ start, text }) =>
      lotCalls(text).map((inner) => ({ ...inner, start: start + inner.start, end: start + inner.end })),
    ),
  ]);
}

/** Puts other text in the place of each call, from within: the arguments of an outer call hold what replaced the inner ones. */
export function replaceCalls(formula: string, replacer: (call: LotCall) => string): string {
  let replaced = "";
  let at = 0;
  for (const { own, slices } of outermost(formula)) {
    const texts = slices.map(({ text }) => replaceCalls(text, replacer).trim());
    replaced += formula.slice(at, own.start) + replacer({ ...own, arguments: texts });
    at = own.end;
  }
  return replaced + formula.slice(at);
}

/** The names under our namespace that a formula calls, known or not. */
export const lotNames = (formula: string): string[] =>
  formula.toUpperCase().includes(PREFIX) ? unguarded(formula).filter(isLotName).map(({ value }) => value.toUpperCase()) : [];

const PREFIX = `${NAMESPACE}.`;

interface Slice {
  readonly start: number;
  readonly text: string;
}

interface FoundCall {
  readonly own: LotCall;
  readonly slices: readonly Slice[];
}

interface Piece {
  readonly type: string;
  readonly value: string;
  readonly start: number;
  readonly next: string | undefined;
}

function outermost(formula: string): FoundCall[] {
  if (!formula.toUpperCase().includes(PREFIX)) return [];
  const found: FoundCall[] = [];
  let open: { name: string; start: number; depth: number; cuts: number[] } | null = null;
  let depth = 0;
  for (const piece of pieces(formula)) {
    const end = piece.start + piece.value.length;
    if (!open && isLotName(piece)) open = { name: piece.value.toUpperCase(), start: piece.start, depth: depth + 1, cuts: [] };
    if (OPENING.has(piece.value)) {
      depth++;
      if (open?.depth === depth && open.cuts.length === 0) open.cuts.push(end);
    } else if (CLOSING.has(piece.value)) {
      if (open?.depth === depth) {
        found.push(foundCall(formula, open, piece.start, end));
        open = null;
      }
      depth--;
    } else if (piece.type === "ARG_SEPARATOR" && open?.depth === depth) open.cuts.push(end);
  }
  if (depth !== 0) throw new Error(depth > 0 ? "Cannot read the formula: a bracket in it is not closed" : "Cannot read the formula: it closes a bracket that was not opened");
  return found;
}

const OPENING: ReadonlySet<string> = new Set(["(", "{", "["]);
const CLOSING: ReadonlySet<string> = new Set([")", "}", "]"]);

function foundCall(formula: string, { name, start, cuts }: { name: string; start: number; cuts: number[] }, close: number, end: number): FoundCall {
  const slices = cuts.map((from, i) => ({ start: from, text: formula.slice(from, (cuts[i + 1] ?? close + 1) - 1) }));
  const hasNone = slices.length === 1 && slices[0]?.text.trim() === "";
  const given = hasNone ? [] : slices;
  return { own: { name, arguments: given.map(({ text }) => text.trim()), text: formula.slice(start, end), start, end }, slices: given };
}

const isLotName = ({ type, value, next }: Piece): boolean => type === "SYMBOL" && next === "(" && value.toUpperCase().startsWith(PREFIX);

function pieces(formula: string): Piece[] {
  const all = unguarded(formula);
  for (const { type, value } of all)
    if (type === "STRING" && (value.length < 2 || !value.endsWith('"'))) throw new Error("Cannot read the formula: a text in it has no closing quotation mark");
  return all;
}

function unguarded(formula: string): Piece[] {
  const tokens = tokenize(formula);
  let start = 0;
  return tokens.map(({ type, value }, i) => {
    const piece = { type, value, start, next: tokens.slice(i + 1, i + 3).find((token) => token.type !== "SPACE")?.value };
    start += value.length;
    return piece;
  });
}
