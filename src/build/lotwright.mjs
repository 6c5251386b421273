#!/usr/bin/env node
import { installed, run } from "./ready.mjs";

await run(async () => {
  installed();
  const { register } = await import("tsx/esm/api");
  register();
  await import("../cli/main.ts");
});
