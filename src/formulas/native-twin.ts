import type { Entry } from "../catalogue/entry";
import { isBracketed } from "../functions/reference";
import { type LotCall, replaceCalls } from "./lot-calls";

/** A formula that computes without us, or rows of them for the cells of a spill. */
export type Twin = string | readonly (readonly string[])[];

/** Says why a formula has no native twin. */
export class NoTwin extends Error {}

/**
 * The ordinary spreadsheet formula that computes the same. `cell` turns an argument into what the function takes: it is
 * given as it stands in the twin, and as it stands in the formula.
 */
export function nativeTwin(formula: string, entryOf: (call: LotCall) => Entry, cell: (twin: string, written: string) => unknown): Twin {
  let rows: readonly (readonly string[])[] | null = null;
  const text = replaceCalls(formula, (call, given) => {
    const twin = entryOf(call).call(...given.map((argument, i) => cell(argument, call.arguments[i] ?? ""))).native();
    if (twin === null) throw new NoTwin(`${call.name} has no native twin: its value stands in its place`);
    if (typeof twin === "string") return `(${twin.slice(1)})`;
    if (formula.slice(1).trim() !== call.text) throw new NoTwin("A function that spills has a twin of many cells, which cannot stand inside another formula");
    rows = twin;
    return call.text;
  });
  return rows ?? withoutOuterBrackets(text);
}

/** A twin that is the whole formula needs no brackets. */
const withoutOuterBrackets = (formula: string): string => (isBracketed(formula.slice(1)) ? `=${formula.slice(2, -1)}` : formula);
