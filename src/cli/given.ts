import { parseArgs } from "node:util";
import { nearest } from "../formulas/nearest";
import { Misuse } from "./misuse";

/** What a command takes. */
export interface Takes {
  /** What each of its names is, in their order. */
  readonly names: readonly string[];
  /** Whether the names may be left out. */
  readonly optional?: boolean;
  /** Options that need a value, each with a value such as people give. */
  readonly options?: Readonly<Record<string, string>>;
  readonly flags?: readonly string[];
}

export interface Given {
  readonly names: readonly string[];
  readonly options: ReadonlyMap<string, string>;
  readonly flags: ReadonlySet<string>;
}

/** Reads the words after a command, or refuses with what to write. */
export function given(words: readonly string[], { names, optional = false, options = {}, flags = [] }: Takes): Given {
  const known = [...Object.keys(options), ...flags];
  const { tokens } = parseArgs({
    args: [...words],
    strict: false,
    tokens: true,
    options: Object.fromEntries(known.map((name) => [name.slice(2), { type: name in options ? ("string" as const) : ("boolean" as const) }])),
  });
  const [found, values, set]: [string[], Map<string, string>, Set<string>] = [[], new Map(), new Set()];
  for (const token of tokens) {
    if (token.kind === "positional") found.push(token.value);
    if (token.kind !== "option") continue;
    const { rawName, value, inlineValue } = token;
    const such = options[rawName];
    if (such !== undefined) values.set(rawName, valueOf(rawName, value, inlineValue ?? false, such));
    else if (flags.includes(rawName)) set.add(rawName);
    else throw new Misuse(noSuch(rawName, known));
  }
  if (found.length < names.length && !(optional && found.length === 0)) throw new Misuse(`Give ${names.join(" and ")}`);
  const more = found.slice(names.length).join(" ");
  if (more !== "") throw new Misuse(names.length === 1 ? `Give one name: "${more}" came after it` : `Give two names: "${more}" came after them`);
  return { names: found, options: values, flags: set };
}

/** What looks like the next option is none: its value was forgotten. */
function valueOf(name: string, value: string | undefined, inline: boolean, such: string): string {
  if (value === undefined || value === "" || (!inline && value.startsWith("--"))) throw new Misuse(`Give a value after ${name}, such as ${name} ${such}`);
  return value;
}

function noSuch(name: string, known: readonly string[]): string {
  const meant = nearest(name, known);
  const can = known.length === 0 ? "the command takes no options" : `${known.join(", ")} can be given`;
  return `There is no "${name}" here: ${meant ? `did you mean ${meant}` : can}`;
}
