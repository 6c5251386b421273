import type { ArgumentNote } from "../functions/bound";
import type { Declaration } from "./declarations";

/** One function of functions.json, as the generator writes it. */
export interface Metadata {
  readonly id: string;
  readonly name: string;
  readonly description?: string;
  readonly parameters: readonly {
    readonly name: string;
    readonly description?: string;
    readonly type?: string;
    readonly dimensionality?: string;
    readonly optional?: boolean;
  }[];
}

/** Ids and argument names in their order, as they were released: workbooks keep them. */
export type Released = Readonly<Record<string, readonly string[]>>;

const TYPES = new Set(["any", "any[][]"]);

/** What would pass in silence and must stop the build: one sentence each. */
export function declarationFaults(declared: readonly Declaration[], generated: readonly Metadata[]): readonly string[] {
  return [
    ...declared.flatMap(faultsOf),
    ...declared
      .filter(({ id }) => !generated.some((f) => f.id === id))
      .map((d) => `${where(d)} is not in functions.json: the generator skipped it; write it as an exported function`),
    ...duplicates(declared.map(({ id }) => id)).map((id) => `${id} is declared twice: an id stands once`),
  ];
}

function faultsOf(d: Declaration): readonly string[] {
  const tag = (name: string): string | undefined => d.tags.find((t) => t.name === name)?.text;
  const at = where(d);
  const faults: (string | false)[] = [
    !d.declared && `${at} is not written as "export function": the generator skips arrow functions and methods in silence`,
    d.declared && !d.exported && `${at} is not exported, so the generator skips it in silence`,
    d.returnType === null && `${at} has no return type: write ": any", or ": any[][]" for a spill`,
    d.returnType !== null && !TYPES.has(d.returnType) && `${at} returns ${d.returnType}, which the generator refuses or widens: write any or any[][]`,
    !/^[A-Z][A-Z0-9.]{2,63}$/.test(d.id) && `${at} has the id "${d.id}": it must be 3 to 64 capital letters, digits and dots, no underscore`,
    /^[A-Z]{1,3}\d{1,7}$/.test(d.id) && `${at} has the id "${d.id}", which reads as a cell's address`,
    d.blocks !== 1 && `${at} has ${d.blocks} comment blocks above it: the first is taken for its description`,
    /\{@/.test(d.text) && `${at} has an inline tag in its comment, which breaks the generator: write plain words`,
    !tag("returns") && `${at} does not say what it returns: add @returns`,
    !tag("example") && `${at} has no example: add @example =LOT.${d.id}(…) -> what it shows`,
    ...d.tags.filter((t) => t.name === "example" && !/^=.* -> .+$/.test(t.text)).map((t) => `${at} has an example without "=… -> …": ${t.text}`),
    ...d.parameters.flatMap((p, i): (string | false)[] => [
      (p.type === null || !TYPES.has(p.type)) && `${at}, ${p.name}: its type is ${p.type ?? "missing"}, which the generator refuses or widens: write any or any[][]`,
      !p.optional && d.parameters.slice(0, i).some((before) => before.optional) && `${at}, ${p.name}: a required argument after an optional one keeps the whole add-in from loading`,
      !d.tags.some((t) => t.name === "param" && new RegExp(`^${p.name} \\S`).test(t.text)) && `${at}, ${p.name}: it has no @param line`,
    ]),
  ];
  return faults.filter((fault) => fault !== false);
}

/** What is written for the reader of an argument must be what the reader enforces. */
export function readerFaults(id: string, parameters: readonly string[], notes: readonly ArgumentNote[]): readonly string[] {
  const read = new Set(notes.map(({ name }) => name));
  return [
    ...parameters.filter((name) => !read.has(name)).map((name) => `${id}, ${name}: no reader reads it`),
    ...[...read].filter((name) => !parameters.includes(name)).map((name) => `${id}: a reader reads "${name}", which is no argument`),
  ];
}

export function releaseFaults(released: Released, generated: readonly Metadata[]): readonly string[] {
  return Object.entries(released).flatMap(([id, names]) => {
    const now = generated.find((f) => f.id === id);
    if (!now) return [`${id} was released and is gone: workbooks keep its name`];
    const kept = names.every((name, i) => now.parameters[i]?.name === name);
    const grown = now.parameters.slice(names.length).every(({ optional }) => optional);
    return [
      ...(kept ? [] : [`${id} was released with the arguments ${names.join(", ")}: their order and names stay`]),
      ...(grown ? [] : [`${id} was released: a new argument must be optional`]),
    ];
  });
}

/** A package that claims no side effects loses every association of a function, in silence. */
export const packageFaults = (description: { readonly sideEffects?: unknown }): readonly string[] =>
  description.sideEffects === undefined
    ? []
    : ['package.json says "sideEffects": a bundler would then drop the association of the functions in silence; take it out'];

const where = (d: Declaration): string => `${d.file}: ${d.id || d.functionName || "a function"}`;
const duplicates = (items: readonly string[]): readonly string[] => [...new Set(items.filter((item, i) => items.indexOf(item) !== i))];
