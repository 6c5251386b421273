/** Measures how fast it is beside others, in one run, and writes the table into the README. */
import { execFileSync } from "node:child_process";
import { readFileSync, writeFileSync } from "node:fs";
import { arch, availableParallelism, platform } from "node:os";
import { fileURLToPath } from "node:url";
import { build } from "esbuild";
import type { Counted } from "./cents";
import type { columns } from "./columns";
import { libreOffice } from "./libreoffice";
import type { Row } from "./row";
import { startUp } from "./start-up";

const path = (name: string): string => fileURLToPath(new URL(`../../${name}`, import.meta.url));
const BUNDLE = path("node_modules/.cache/bench/measured.mjs");
const ENGINES = path("node_modules/.cache/bench-engines");
const README = path("README.md");

await build({ entryPoints: [path("tests/bench/measured.ts")], bundle: true, platform: "node", format: "esm", packages: "external", outfile: BUNDLE, logLevel: "warning" });

function measured(part: string, ...more: readonly (string | number)[]): unknown {
  console.log(`Measuring ${part} …`);
  const lines = execFileSync(process.execPath, [BUNDLE, part, ...more.map(String)], { encoding: "utf8", maxBuffer: 1e9, stdio: ["ignore", "pipe", "inherit"] }).trim().split("\n");
  return JSON.parse(lines.at(-1) ?? "");
}

const long = measured("columns") as ReturnType<typeof columns>;
const rows: Row[] = [
  ...long.rows,
  ...(measured("singles") as Row[]),
  ...(measured("file") as Row[]),
  ...(await startUp()),
  ...libreOffice(long),
  ...(measured("engines", long.payoutsMs, ENGINES) as Row[]),
];
const counted = measured("cents") as Counted[];

const table = [
  `On ${machine()}; medians of several rounds, each beside the other in one run (\`npm run bench\`).`,
  "",
  "| what | measured | goal |",
  "|---|---|---|",
  ...rows.map(({ what, figure, goal, isMet }) => `| ${what} | ${figure} | ${goal}${isMet ? "" : ", **not met**"} |`),
  "",
  `Wrong results in ${thousands(counted[0]?.rows ?? 0)} rows of each kind, by whole-number arithmetic. A plain formula is the same in float64, rounded by floor.`,
  "",
  "| kind of row | ends in exactly a half | Lotwright | plain formula | with 14.5833 typed for a pound |",
  "|---|---|---|---|---|",
  ...counted.map(({ name, ties, ours, plain, typed }) => `| ${name} | ${thousands(ties)} | ${thousands(ours)} | ${thousands(plain)} | ${typed === null ? "—" : thousands(typed)} |`),
].join("\n");
console.log(`\n${table}\n`);

const readme = readFileSync(README, "utf8");
const written = readme.replace(/(<!-- bench -->\n)[^]*?(\n<!-- \/bench -->)/, (_, before: string, after: string) => `${before}\n${table}\n${after}`);
if (written === readme) throw new Error("The README has no place for the table");
writeFileSync(README, written);
if (rows.some(({ isMet }) => !isMet) || counted.some(({ ours }) => ours > 0)) process.exitCode = 1;

function thousands(count: number): string {
  return count.toLocaleString("en");
}

function machine(): string {
  const processors = availableParallelism();
  return `a machine of ${processors} ${arch()} processor${processors === 1 ? "" : "s"} (${platform()}), Node ${process.versions.node.split(".")[0]}`;
}
