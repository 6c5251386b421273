import { spawnSync } from "node:child_process";
import { fileURLToPath } from "node:url";

const program = fileURLToPath(new URL("../../src/build/lotwright.mjs", import.meta.url));

interface Ended {
  readonly out: string;
  readonly error: string;
  readonly code: number | null;
}

/** Runs the command line as a user does. */
export const lotwright = (...words: readonly string[]): Ended => lotwrightIn(process.cwd(), ...words);

/** The same, in another folder. */
export function lotwrightIn(folder: string, ...words: readonly string[]): Ended {
  const { stdout, stderr, status } = spawnSync(process.execPath, [program, ...words], { cwd: folder, encoding: "utf8" });
  return { out: stdout.trimEnd(), error: stderr.trimEnd(), code: status };
}
