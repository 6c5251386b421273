import { find } from "../catalogue/catalogue";
import type { Entry } from "../catalogue/entry";
import { evaluate } from "../engine/evaluate";
import type { LotCall } from "../formulas/lot-calls";
import { unknownName } from "../formulas/nearest-name";
import { Reference } from "../functions/reference";
import { isCellError } from "../engine/outcome";
import { Misuse } from "./misuse";

/** The function that a call in a formula names. */
export function entryOf(call: LotCall): Entry {
  const entry = find(call.name);
  if (!entry) throw new Misuse(unknownName(call.name));
  if (call.arguments.length > entry.arity && call.arguments.join("") !== "")
    throw new Misuse(`${entry.name} takes ${entry.arity} arguments, and ${call.arguments.length} were given`);
  return entry;
}

/** An argument that is written as a number or a text stands for itself; anything else is a reference by its text. */
export function argumentCell(text: string, read: (text: string) => unknown): unknown {
  const trimmed = text.trim();
  if (trimmed === "") return null;
  if (/^"(?:[^"]|"")*"$/.test(trimmed)) return trimmed.slice(1, -1).replaceAll('""', '"');
  if (/^-?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?$/i.test(trimmed)) return Number(trimmed);
  return new Reference(trimmed, read(trimmed));
}

/** What an argument holds now, computed without a sheet; an error in it is passed on. */
export function evaluated(text: string): unknown {
  const outcome = evaluate(`=${text}`);
  if (isCellError(outcome)) throw new ArgumentError(`${outcome.error} ${outcome.message}`.trim());
  return outcome;
}

/** An argument that could not be computed. */
export class ArgumentError extends Error {}
