import { find } from "../catalogue/catalogue";
import type { Entry } from "../catalogue/entry";
import type { Working } from "../core/expression/working";
import { FaultError, errorCode } from "../core/fault";
import { type Expression, expression } from "../formulas/expression";
import { type LotCall, lotCalls, wholeCall } from "../formulas/lot-calls";
import { type Twin, nativeTwin } from "../formulas/native-twin";
import { unknownName } from "../formulas/nearest-name";
import { tokens } from "../formulas/tokens";
import { Reference } from "../functions/reference";
import type { WorkbookReading } from "../workbook/file-reading";
import type { CellReading } from "../workbook/port";
import { blamed } from "../catalogue/blamed";
import { addressOn } from "../workbook/cell-range";
import { type Found, cellsFor, evaluate } from "./evaluate";
import { nameOf } from "./headings";
import { type Referenced, type References, type Standing, readReferences } from "./references";

/** Cells that a formula names, with what the sheet calls them. */
export interface NamedCells extends Referenced {
  readonly name: string | null;
}

/** An argument of one of our functions. */
export interface Input {
  readonly parameter: string;
  readonly of: Expression;
  readonly found: Found;
  readonly cells: readonly NamedCells[];
  /** True where it is what keeps the function from computing. */
  readonly isBlamed: boolean;
}

export type Outcome =
  | { readonly kind: "worked"; readonly working: Working }
  /** Something is still to be filled in. */
  | { readonly kind: "waiting"; readonly sentence: string; readonly outline: Working }
  | { readonly kind: "stopped"; readonly code: string; readonly sentence: string; readonly outline: Working | null }
  /** Some of its arguments the spreadsheet alone computes. */
  | { readonly kind: "open"; readonly texts: readonly string[]; readonly outline: Working };

export interface ExplainedCall {
  /** LOT.FINEWEIGHT */
  readonly name: string;
  readonly text: string;
  readonly inputs: readonly Input[];
  readonly outcome: Outcome;
}

export interface Explanation {
  readonly on: Standing;
  /** Lots!F7 */
  readonly place: string;
  readonly formula: string;
  readonly shows: CellReading;
  /** The inner ones before those that hold them. */
  readonly calls: readonly ExplainedCall[];
  /** Whether the formula is one call and nothing around it. */
  readonly isWhole: boolean;
  /** What the whole formula comes to. */
  readonly whole: Found;
  readonly twin: Twin | null;
  readonly references: References;
}

/** Explains a cell whose formula holds a function of ours. */
export async function explain(on: Standing, shows: CellReading, port: WorkbookReading): Promise<Explanation> {
  const formula = shows.formula ?? "";
  const { row, column } = on.spot;
  const references = await readReferences(formula, on, port);
  const names = await namesOf(references, on, port);
  return {
    on,
    place: addressOn(on.sheet, { top: row, bottom: row, left: column, right: column }, null),
    formula,
    shows,
    calls: innerFirst(lotCalls(formula)).map((call) => explained(call, references, names)),
    isWhole: wholeCall(formula) !== null,
    whole: evaluate(expression(formula.slice(1)), references),
    twin: twinOf(formula, references),
    references,
  };
}

/** A call that stands in a formula twice is explained once. */
const innerFirst = (calls: readonly LotCall[]): readonly LotCall[] =>
  [...calls].sort((a, b) => a.end - b.end).filter(({ text }, i, all) => all.findIndex((other) => other.text === text) === i);

type Names = ReadonlyMap<string, string | null>;

async function namesOf(references: References, on: Standing, port: WorkbookReading): Promise<Names> {
  return new Map(await Promise.all([...references].map(async ([text, cells]) => [text, await nameOf(cells, on, port)] as const)));
}

function explained(call: LotCall, references: References, names: Names): ExplainedCall {
  const entry = find(call.name);
  const given = call.arguments.map(expression);
  const found = given.map((of) => evaluate(of, references));
  const { outcome, parameters } = entry ? worked(entry, given, found) : { outcome: unknown(call.name), parameters: [] };
  const inputs = given.map((of, i): Input => {
    const parameter = entry?.parameters[i]?.name ?? "";
    return { parameter, of, found: found[i] ?? evaluate(of, references), cells: cellsIn(of, references, names), isBlamed: parameters.includes(parameter) };
  });
  return { name: call.name, text: call.text, inputs, outcome };
}

const unknown = (name: string): Outcome => ({ kind: "stopped", code: "#NAME?", sentence: unknownName(name), outline: null });

function cellsIn({ text }: Expression, references: References, names: Names): readonly NamedCells[] {
  const inside = tokens(text).flatMap((token) => references.get(token.text) ?? []);
  return [...new Set(inside)].map((cells) => ({ ...cells, name: names.get(cells.text) ?? null }));
}

/** The working, or what is known without it and the arguments that keep it from being given. */
function worked(entry: Entry, given: readonly Expression[], found: readonly Found[]): { outcome: Outcome; parameters: readonly string[] } {
  const names = (kind: Found["kind"]): readonly string[] => entry.parameters.flatMap(({ name }, i) => (found[i]?.kind === kind ? [name] : []));
  const answer = entry.call(...cellsFor(entry, given, found));
  const outline = answer.outline();
  const [wrong] = found.flatMap((one) => (one.kind === "error" ? [one] : []));
  if (wrong) return { outcome: { kind: "stopped", code: wrong.code, sentence: wrong.sentence, outline }, parameters: names("error") };
  const texts = found.flatMap((one) => (one.kind === "foreign" ? one.texts : []));
  if (texts.length > 0) return { outcome: { kind: "open", texts: [...new Set(texts)], outline }, parameters: names("foreign") };
  try {
    answer.value();
    return { outcome: { kind: "worked", working: answer.working() }, parameters: [] };
  } catch (thrown) {
    if (!(thrown instanceof FaultError)) throw thrown;
    const { fault, message } = thrown;
    const waits = fault.kind === "missing" || fault.kind === "awaited" || fault.kind === "half-filled";
    const outcome: Outcome = waits ? { kind: "waiting", sentence: message, outline } : { kind: "stopped", code: errorCode(fault), sentence: message, outline };
    return { outcome, parameters: blamed(fault, entry.parameters) };
  }
}

/** Null where there is none. */
function twinOf(formula: string, references: References): Twin | null {
  const entryOf = ({ name }: LotCall): Entry => {
    const entry = find(name);
    if (!entry) throw new Error(unknownName(name));
    return entry;
  };
  try {
    return nativeTwin(formula, entryOf, (twin, written) => {
      const of = expression(written);
      const found = evaluate(of, references);
      const holds = found.kind === "known" ? found.holds : undefined;
      return of.kind === "nothing" || of.kind === "value" || of.kind === "list" ? holds : new Reference(twin, holds);
    });
  } catch {
    return null;
  }
}
