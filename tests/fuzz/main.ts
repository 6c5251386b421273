import { fork } from "node:child_process";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";
import { fuzzFiles } from "./files";
import { fuzzFormulas } from "./formulas";
import { fuzzFunctions } from "./functions";
import { Tally } from "./tally";

/** How many cases of each kind: argument lists a function, texts a command, spoiled files a command. */
const PARTS = {
  functions: (seed: number, tally: Tally) => fuzzFunctions(seed, 100_000, tally),
  formulas: (seed: number, tally: Tally) => fuzzFormulas(seed, 20_000, tally),
  files: (seed: number, tally: Tally) => fuzzFiles(seed, 1000, tally),
} as const;

const isPart = (name: string): name is keyof typeof PARTS => Object.hasOwn(PARTS, name);

const { values, positionals } = parseArgs({ options: { seed: { type: "string" } }, allowPositionals: true });
const seed = Number(values.seed ?? Date.now() % 1_000_000);
const stranger = positionals.find((name) => !isPart(name));
if (stranger !== undefined || !Number.isSafeInteger(seed)) {
  console.error(stranger === undefined ? `Cannot use the seed ${values.seed}: give a whole number` : `There is no part "${stranger}": ${Object.keys(PARTS).join(", ")}`);
  process.exit(2);
}

if (!process.send) console.log(`seed ${seed}; the same again: npm run fuzz -- ${[...positionals, "--seed", seed].join(" ")}`);
const [only, ...others] = positionals.length > 0 ? positionals.filter(isPart) : (Object.keys(PARTS) as (keyof typeof PARTS)[]);
if (only !== undefined && others.length === 0) await run(only);
else for (const code of await Promise.all([only, ...others].map(beside))) process.exitCode ||= code;

async function run(name: keyof typeof PARTS): Promise<void> {
  const began = performance.now();
  const tally = new Tally();
  await PARTS[name](seed, tally);
  console.log(`\n${name}: ${tally.cases} cases, ${tally.failures.length} kinds of failure, ${Math.round((performance.now() - began) / 1000)} s\n${tally.table()}`);
  for (const { what, input, broken } of tally.failures) console.error(`\nFAILED ${what}\n  ${input}\n  ${broken}`);
  if (tally.failures.length > 0) process.exitCode = 1;
}

/** Each part in a process of its own, so that they use what cores there are. */
function beside(name = ""): Promise<number> {
  const child = fork(fileURLToPath(import.meta.url), [name, "--seed", String(seed)], { execArgv: ["--import", "tsx"] });
  return new Promise((resolve) => child.once("exit", (code) => resolve(code ?? 1)));
}
