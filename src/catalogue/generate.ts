/** Writes the catalogue: functions.json, calls.ts and entries.ts, or stops with a sentence for each fault. */
import { generateCustomFunctionsMetadata } from "custom-functions-metadata";
import { readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { type ArgumentNote } from "../functions/bound";
import { Reference } from "../functions/reference";
import { type Metadata, type Released, declarationFaults, packageFaults, readerFaults, releaseFaults } from "./checks";
import { type Declaration, declarations } from "./declarations";
import type { Entry, Example, Texts } from "./entry";
import { type Group, groups } from "./groups";
import { outsideChecks, outsideFaults } from "./outside";
import { heldOutside } from "./outside-held";

const root = fileURLToPath(new URL("../../", import.meta.url));
const NOTICE = "// Written by src/catalogue/generate.ts from the comments in src/functions: change those instead.\n";

async function main(): Promise<void> {
  const files = Object.keys(groups).map((group) => `src/functions/${group}.ts`);
  const declared = files.flatMap((file) => declarations(file, readFileSync(root + file, "utf8")));
  const { metadataJson, errors } = await generateCustomFunctionsMetadata(files.map((file) => root + file), false);
  stop(errors);
  const generated = JSON.parse(metadataJson) as { functions: Metadata[] };
  const released = JSON.parse(readFileSync(`${root}src/catalogue/released.json`, "utf8")) as Released;
  stop(packageFaults(JSON.parse(readFileSync(`${root}package.json`, "utf8")) as { sideEffects?: unknown }));
  stop([...declarationFaults(declared, generated.functions), ...releaseFaults(released, generated.functions)]);

  const notes = new Map<string, readonly ArgumentNote[]>();
  for (const d of declared) notes.set(d.id, await notesOf(d));
  stop(declared.flatMap((d) => readerFaults(d.id, d.parameters.map((p) => p.name), notes.get(d.id) ?? [])));

  const texts = declared.map((d) => entryTexts(d, find(generated.functions, d.id), notes.get(d.id) ?? []));
  const held = heldOutside(await Promise.all(declared.map(async (d) => ({ ...find(texts, d.id), call: await callOf(d) }))));
  stop(outsideFaults(outsideChecks(texts.map(({ id }) => id), held), held));
  const json = { ...generated, functions: generated.functions.map((f) => withRanges(f, texts)) };
  writeFileSync(`${root}src/catalogue/functions.json`, `${JSON.stringify(json, null, 2)}\n`);
  writeFileSync(`${root}src/catalogue/calls.ts`, callsSource(declared));
  writeFileSync(`${root}src/catalogue/entries.ts`, entriesSource(texts));
  console.log(`catalogue: ${texts.length} functions`);
}

function stop(faults: readonly string[]): void {
  if (faults.length === 0) return;
  for (const fault of faults) console.error(fault);
  process.exit(1);
}

async function callOf(d: Declaration): Promise<Entry["call"]> {
  const module = (await import(root + d.file)) as Record<string, Entry["call"]>;
  const call = module[d.functionName];
  if (!call) throw new Error(`${d.file} does not export ${d.functionName}`);
  return call;
}

/** The function itself tells what reads each argument. */
async function notesOf(d: Declaration): Promise<readonly ArgumentNote[]> {
  const call = await callOf(d);
  return call(...d.parameters.map((_, i) => new Reference(`A${i + 1}`))).arguments;
}

function entryTexts(d: Declaration, metadata: Metadata, notes: readonly ArgumentNote[]): Texts {
  const tag = (name: string): string | null => d.tags.find((t) => t.name === name)?.text ?? null;
  return {
    id: d.id,
    name: `LOT.${d.id}`,
    description: metadata.description ?? "",
    parameters: metadata.parameters.map((p) => {
      const note = notes.find(({ name }) => name === p.name);
      return {
        name: p.name,
        description: p.description ?? "",
        wants: note?.wants ?? "",
        otherwise: note?.otherwise ?? null,
        optional: p.optional ?? false,
        shape: p.dimensionality === "matrix" ? "range" : "value",
      };
    }),
    returns: tag("returns") ?? "",
    spills: d.returnType === "any[][]",
    examples: d.tags.filter((t) => t.name === "example").map(({ text }) => example(text)),
    group: d.file.replace(/^.*\/|\.ts$/g, "") as Group,
    words: tag("words")?.split(/\s+/) ?? [],
    caution: tag("caution"),
    source: tag("source"),
  };
}

function example(text: string): Example {
  const [formula = "", shows = ""] = text.split(" -> ");
  return { formula, shows };
}

/** Excel's tooltip says the range that the reader enforces. */
function withRanges(f: Metadata, texts: readonly Texts[]): Metadata {
  const { parameters } = find(texts, f.id);
  return {
    ...f,
    parameters: f.parameters.map((p) => {
      const { description, wants, otherwise } = parameters.find(({ name }) => name === p.name) ?? { description: "", wants: "", otherwise: null };
      return { ...p, description: `${description} Write ${wants}.${otherwise === null ? "" : ` If left out: ${otherwise}.`}` };
    }),
  };
}

function callsSource(declared: readonly Declaration[]): string {
  const imports = Object.keys(groups).map((group) => `import * as ${group} from "../functions/${group}";`);
  const lines = declared.map((d) => `  ${key(d.id)}: { arity: ${d.parameters.length}, call: call(${d.file.replace(/^.*\/|\.ts$/g, "")}.${d.functionName}) },`);
  return `${NOTICE}${imports.join("\n")}\nimport type { Call } from "./entry";\n\n/** A cell function takes cells of any kind and gives an answer; a spill is declared otherwise for the generator's sake. */\nconst call = (cellFunction: unknown): Call["call"] => cellFunction as Call["call"];\n\nexport const calls: Readonly<Record<string, Call>> = {\n${lines.join("\n")}\n};\n`;
}

function entriesSource(texts: readonly Texts[]): string {
  const json = JSON.stringify(texts, null, 2);
  return `${NOTICE}import type { Texts } from "./entry";\n\nexport const texts: readonly Texts[] = ${json};\n`;
}

const key = (id: string): string => (/^[A-Z0-9]+$/.test(id) ? id : JSON.stringify(id));

function find<T extends { readonly id: string }>(items: readonly T[], id: string): T {
  const item = items.find((f) => f.id === id);
  if (!item) throw new Error(`${id} is missing`);
  return item;
}

await main();
