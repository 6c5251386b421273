import { readFileSync, readdirSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { Reference } from "../functions/reference";
import type { Entry } from "./entry";
import type { Held, Program, Published } from "./outside";

const FOLDER = fileURLToPath(new URL("../../shared/checks/", import.meta.url));
const PROGRAMS = "programs.json";

/** What shared/checks holds, and which functions have a native twin. */
export function heldOutside(functions: readonly Pick<Entry, "id" | "parameters" | "call">[]): Held {
  const topics = readdirSync(FOLDER).filter((file) => file !== PROGRAMS).sort();
  return {
    published: topics.flatMap((file) => (read(file) as { readonly rows: readonly Published[] }).rows),
    programs: read(PROGRAMS) as readonly Program[],
    twins: new Set(functions.filter(hasTwin).map(({ id }) => id)),
  };
}

const read = (file: string): unknown => JSON.parse(readFileSync(FOLDER + file, "utf8"));

/** Whether an ordinary formula over cells stands for it. */
function hasTwin({ parameters, call }: Pick<Entry, "parameters" | "call">): boolean {
  const cells = parameters.map(({ shape }, i) => new Reference(shape === "range" ? `A${i + 1}:A${i + 9}` : `A${i + 1}`));
  return call(...cells).native() !== null;
}
