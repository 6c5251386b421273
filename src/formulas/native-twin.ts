import type { Entry } from "../catalogue/entry";
import { isBracketed } from "../functions/reference";
import { type LotCall, lotCalls, replaceCalls } from "./lot-calls";

/** A formula that computes without us, or rows of them for the cells of a spill. */
export type Twin = string | readonly (readonly string[])[];

/** Says why a formula has no native twin. */
export class NoTwin extends Error {}

/**
 * The ordinary spreadsheet formula that computes the same. `cell` turns an argument into what the function takes: it is
 * given as it stands in the twin, and as it stands in the formula.
 */
export function nativeTwin(written: string, entryOf: (call: LotCall) => Entry, cell: (twin: string, written: string) => unknown): Twin {
  let rows: readonly (readonly string[])[] | null = null;
  const formula = pickedCells(written, (call) => nativeTwin(`=${call}`, entryOf, cell));
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

/** INDEX of one cell of a spill needs the twin of that cell alone. */
function pickedCells(formula: string, twinOf: (call: string) => Twin): string {
  for (const { text, start, end } of lotCalls(formula)) {
    const [before] = /\bINDEX\(\s*$/i.exec(formula.slice(0, start)) ?? [];
    const [after, row, column = "1"] = /^\s*,\s*([1-9]\d*)\s*(?:,\s*([1-9]\d*)\s*)?\)/.exec(formula.slice(end)) ?? [];
    if (before === undefined || after === undefined) continue;
    const twin = twinOf(text);
    const picked = typeof twin === "string" ? undefined : twin[Number(row) - 1]?.[Number(column) - 1];
    if (picked === undefined) continue;
    return pickedCells(`${formula.slice(0, start - before.length)}(${picked.slice(1)})${formula.slice(end + after.length)}`, twinOf);
  }
  return formula;
}

/** A twin that is the whole formula needs no brackets. */
const withoutOuterBrackets = (formula: string): string => (isBracketed(formula.slice(1)) ? `=${formula.slice(2, -1)}` : formula);
