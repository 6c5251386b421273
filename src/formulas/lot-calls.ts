import { NAMESPACE } from "../catalogue/catalogue";
import { type Token, isUnclosed, tokens } from "./tokens";

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

/** The one call of ours that a formula consists of; null where there is more to it. */
export function wholeCall(formula: string): LotCall | null {
  const [call] = lotCalls(formula);
  return call && formula.slice(0, call.start).trim() === "=" && formula.slice(call.end).trim() === "" ? call : null;
}

/** Puts other text in the place of each call, from within: `given` are the arguments with what replaced the inner calls. */
export function replaceCalls(formula: string, replacer: (call: LotCall, given: readonly string[]) => string): string {
  let replaced = "";
  let at = 0;
  for (const { own, slices } of outermost(formula)) {
    const given = slices.map(({ text }) => replaceCalls(text, replacer).trim());
    replaced += formula.slice(at, own.start) + replacer(own, given);
    at = own.end;
  }
  return replaced + formula.slice(at);
}

/** The names under our namespace that a formula calls, known or not. */
export const lotNames = (formula: string): string[] =>
  formula.toUpperCase().includes(PREFIX) ? tokens(formula).filter(isLotName).map(({ text }) => text.toUpperCase()) : [];

const PREFIX = `${NAMESPACE}.`;

/** Four times the levels of functions that Excel takes. */
const MOST_NESTED = 256;

interface Slice {
  readonly start: number;
  readonly text: string;
}

interface FoundCall {
  readonly own: LotCall;
  readonly slices: readonly Slice[];
}

function outermost(formula: string): FoundCall[] {
  if (!formula.toUpperCase().includes(PREFIX)) return [];
  const found: FoundCall[] = [];
  let open: { name: string; start: number; depth: number; cuts: number[] } | null = null;
  let depth = 0;
  for (const token of tokens(formula)) {
    if (isUnclosed(token)) throw new Error("Cannot read the formula: a text in it has no closing quotation mark");
    if (!open && isLotName(token)) open = { name: token.text.toUpperCase(), start: token.start, depth: depth + 1, cuts: [] };
    if (token.kind === "open") {
      if (++depth > MOST_NESTED) throw new Error("Cannot read the formula: it is nested too deep: work a part of it out in a cell of its own");
      if (open?.depth === depth && open.cuts.length === 0) open.cuts.push(token.end);
    } else if (token.kind === "close") {
      if (open?.depth === depth) {
        found.push(foundCall(formula, open, token));
        open = null;
      }
      depth--;
    } else if (token.kind === "separator" && open?.depth === depth) open.cuts.push(token.end);
  }
  if (depth !== 0) throw new Error(depth > 0 ? "Cannot read the formula: a bracket in it is not closed" : "Cannot read the formula: it closes a bracket that was not opened");
  return found;
}

function foundCall(formula: string, { name, start, cuts }: { name: string; start: number; cuts: number[] }, close: Token): FoundCall {
  const slices = cuts.map((from, i) => ({ start: from, text: formula.slice(from, (cuts[i + 1] ?? close.end) - 1) }));
  const hasNone = slices.length === 1 && slices[0]?.text.trim() === "";
  const given = hasNone ? [] : slices;
  return { own: { name, arguments: given.map(({ text }) => text.trim()), text: formula.slice(start, close.end), start, end: close.end }, slices: given };
}

const isLotName = ({ kind, text }: Token): boolean => kind === "function" && text.toUpperCase().startsWith(PREFIX);
