import { spawnSync } from "node:child_process";
import { fileURLToPath } from "node:url";

const program = fileURLToPath(new URL("../../src/build/lotwright.mjs", import.meta.url));

/** Runs the command line as a user does. */
export function lotwright(...words: readonly string[]): { out: string; error: string; code: number | null } {
  const { stdout, stderr, status } = spawnSync(process.execPath, [program, ...words], { encoding: "utf8" });
  return { out: stdout.trimEnd(), error: stderr.trimEnd(), code: status };
}
