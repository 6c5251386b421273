import { spawnSync } from "node:child_process";
import { appendFileSync, existsSync, mkdirSync, readFileSync, readdirSync, rmSync } from "node:fs";
import { delimiter, join } from "node:path";
import { fileURLToPath } from "node:url";

/** Programs and data of others that the arithmetic is held against. They need not be on a user's machine. */
export const tools = {
  soffice: {
    find: () => onPath("soffice")[0],
    get: "LibreOffice, its command soffice on the PATH (Debian: apt-get install libreoffice-calc-nogui)",
  },
  pdfinfo: {
    find: () => onPath("pdfinfo")[0],
    get: "Poppler's pdfinfo (Debian: apt-get install poppler-utils)",
  },
  pdftotext: {
    find: () => onPath("pdftotext")[0],
    get: "Poppler's pdftotext (Debian: apt-get install poppler-utils)",
  },
  units: {
    find: () => onPath("units").find((units) => output(units, ["--version"])?.includes("GNU Units")),
    get: "GNU units (Debian: apt-get install units)",
  },
  "decimal vectors": {
    find: () => folderOf("decimaltestdata/rounding.decTest", packages("libpython3*-testsuite")),
    get: "the General Decimal Arithmetic vectors (Debian 12: apt-get install libpython3.11-testsuite)",
  },
  bodr: {
    find: () => folderOf("bodr/elements.xml", packages("bodr")),
    get: "the Blue Obelisk Data Repository (Debian: apt-get install bodr)",
  },
  "python uncertainties": {
    find: () => onPath("python3").find((python) => output(python, ["-c", "import uncertainties"]) !== null),
    get: "the Python package uncertainties (Debian: apt-get install python3-uncertainties)",
  },
} as const satisfies Record<string, { find: () => string | undefined; get: string }>;

export type Tool = keyof typeof tools;

/** Test files run in processes of their own: what they leave out is collected in a folder, a file for each tool. */
const NOT_RUN = fileURLToPath(new URL("../node_modules/.cache/outside-not-run/", import.meta.url));

export const forget = (): void => rmSync(NOT_RUN, { recursive: true, force: true });

export function recordNotRun(tool: Tool, title: string): void {
  mkdirSync(NOT_RUN, { recursive: true });
  appendFileSync(join(NOT_RUN, tool), `${title}\n`);
}

/** What was not checked, and how to get what it needs; nothing where all was checked. */
export function notRun(): string {
  const missing = existsSync(NOT_RUN) ? readdirSync(NOT_RUN).filter((name): name is Tool => name in tools) : [];
  const lines = missing.flatMap((tool) => [
    `  needs ${tools[tool].get}:`,
    ...[...new Set(readFileSync(join(NOT_RUN, tool), "utf8").trim().split("\n"))].map((title) => `    ${title}`),
  ]);
  return lines.length === 0 ? "" : ["", "Not run: checks against programs and data that are not on this machine.", ...lines, ""].join("\n");
}

const onPath = (program: string): readonly string[] =>
  (process.env["PATH"] ?? "").split(delimiter).map((folder) => join(folder, program)).filter((path) => existsSync(path));

function output(program: string, args: readonly string[]): string | null {
  const { status, stdout } = spawnSync(program, args, { encoding: "utf8" });
  return status === 0 ? stdout : null;
}

const packages = (pattern: string): readonly string[] =>
  output("dpkg-query", ["--show", "--showformat=${Package}\n", pattern])?.trim().split("\n") ?? [];

/** The folder in which one of the Debian packages put a file. */
function folderOf(ending: string, candidates: readonly string[]): string | undefined {
  const files = candidates.flatMap((name) => output("dpkg", ["--listfiles", name])?.split("\n") ?? []);
  const file = files.find((path) => path.endsWith(`/${ending}`) && existsSync(path));
  return file?.slice(0, file.lastIndexOf("/"));
}
