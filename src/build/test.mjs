import { spawnSync } from "node:child_process";
import { fileURLToPath } from "node:url";
import { installed, run } from "./ready.mjs";

await run(async () => {
  installed();
  const vitest = fileURLToPath(new URL("../../node_modules/vitest/vitest.mjs", import.meta.url));
  const { status } = spawnSync(process.execPath, [vitest, "run", ...process.argv.slice(2)], { stdio: "inherit" });
  process.exitCode = status ?? 1;
});
