import { find } from "../catalogue/catalogue";
import type { Entry } from "../catalogue/entry";
import { FaultError, errorCode } from "../core/fault";
import type { Expression, Operator } from "../formulas/expression";
import { unknownName } from "../formulas/nearest-name";
import type { CellValue } from "../functions/answer";
import { Reference } from "../functions/reference";
import type { Referenced, References } from "./references";

/** What an argument comes to, as far as it can be told outside the spreadsheet. */
export type Found =
  | { readonly kind: "known"; readonly holds: unknown }
  | { readonly kind: "error"; readonly code: string; readonly sentence: string; readonly at: Referenced | null }
  /** What the spreadsheet alone computes, as it stands, or why it cannot be told. */
  | { readonly kind: "foreign"; readonly texts: readonly string[] };

const known = (holds: unknown): Found => ({ kind: "known", holds });
const error = (code: string, sentence: string, at: Referenced | null = null): Found => ({ kind: "error", code, sentence, at });
const foreign = (...texts: readonly string[]): Found => ({ kind: "foreign", texts });

export function evaluate(of: Expression, references: References): Found {
  switch (of.kind) {
    case "nothing":
      return known(null);
    case "value":
      return known(of.value);
    case "list":
      return known(of.rows);
    case "reference":
    case "columns":
    case "name":
      return inCells(of.text, references.get(of.text));
    case "foreign":
      return foreign(of.text);
    case "brackets":
      return evaluate(of.of, references);
    case "negative":
      return computed("-", known(0), evaluate(of.of, references), of.text);
    case "percent":
      return computed("/", evaluate(of.of, references), known(100), of.text);
    case "arithmetic":
      return computed(of.operator, evaluate(of.a, references), evaluate(of.b, references), of.text);
    case "call":
      return called(of.name, of.given, references);
  }
}

function inCells(text: string, cells: Referenced | undefined): Found {
  if (!cells) return foreign(text);
  const wrong = cells.rows.flat().find((reading) => reading.error);
  if (wrong) {
    const isOne = cells.rows.length === 1 && cells.rows[0]?.length === 1;
    const where = isOne ? text : `A cell of ${text}`;
    return error(String(wrong.value), `${where} shows ${String(wrong.value)}: ${wrong.message ?? "mend that cell first"}`, cells);
  }
  const values = cells.rows.map((row) => row.map(({ value }) => value));
  return known(values.length === 1 && values[0]?.length === 1 ? values[0][0] : values);
}

/** In float64, as the spreadsheet does it. */
function computed(operator: Operator, a: Found, b: Found, text: string): Found {
  if (a.kind === "error") return a;
  if (b.kind === "error") return b;
  if (a.kind === "foreign" || b.kind === "foreign") return foreign(...[a, b].flatMap((one) => (one.kind === "foreign" ? one.texts : [])));
  if (Array.isArray(a.holds) || Array.isArray(b.holds)) return foreign(text);
  const [x, y] = [number(a.holds), number(b.holds)];
  if (x === null || y === null) return error("#VALUE!", `Cannot compute ${text}: “${String(x === null ? a.holds : b.holds)}” is a text: write a number there`);
  if (operator === "/" && y === 0) return error("#DIV/0!", `Cannot compute ${text}: it divides by zero`);
  return known({ "+": x + y, "-": x - y, "*": x * y, "/": x / y }[operator]);
}

/** An empty cell counts as 0, and a text that is a number counts as that number. */
function number(value: unknown): number | null {
  if (typeof value === "number") return value;
  if (typeof value === "boolean") return value ? 1 : 0;
  if (value === null || value === undefined) return 0;
  const read = Number(value);
  return String(value).trim() === "" || !Number.isFinite(read) ? null : read;
}

function called(name: string, given: readonly Expression[], references: References): Found {
  const entry = find(name);
  if (!entry) return error("#NAME?", unknownName(name));
  const found = given.map((one) => evaluate(one, references));
  const stopped = found.find(({ kind }) => kind === "error");
  if (stopped) return stopped;
  const unknown = found.flatMap((one) => (one.kind === "foreign" ? one.texts : []));
  if (unknown.length > 0) return foreign(...unknown);
  try {
    const value = entry.call(...cellsFor(entry, given, found)).value();
    return Array.isArray(value) ? known(value.map((row) => row.map(plain))) : known(plain(value));
  } catch (thrown) {
    if (thrown instanceof FaultError) return error(errorCode(thrown.fault), thrown.message);
    throw thrown;
  }
}

const plain = (value: CellValue): unknown => (typeof value === "object" ? errorCode(value.fault) : value);

/** The arguments as a function takes them, each known. */
export function cellsFor({ parameters, arity }: Entry, given: readonly Expression[], found: readonly Found[]): unknown[] {
  return Array.from({ length: arity }, (_, i) => {
    const [of, one] = [given[i], found[i]];
    if (!of || of.kind === "nothing" || one?.kind !== "known") return null;
    if (of.kind === "value" || of.kind === "list") return one.holds;
    const isRange = parameters[i]?.shape === "range";
    return new Reference(of.text, isRange && !Array.isArray(one.holds) ? [[one.holds]] : one.holds);
  });
}
