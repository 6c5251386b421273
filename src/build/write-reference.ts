/** Writes the reference page and its script, from the catalogue. */
import { build } from "esbuild";
import { readFileSync, writeFileSync } from "node:fs";
import { catalogue } from "../catalogue/catalogue";
import { outsideChecks } from "../catalogue/outside";
import { heldOutside } from "../catalogue/outside-held";
import { referencePage } from "../reference-page/page";
import { inRepository } from "./excel-files";

const checks = outsideChecks(catalogue.map(({ id }) => id), heldOutside(catalogue));
writeFileSync(inRepository("src/reference-page/reference.html"), referencePage(catalogue, checks, readFileSync(inRepository("manifest/icons/icon-32.png"))));
await build({
  absWorkingDir: inRepository("."),
  entryPoints: ["src/reference-page/main.ts"],
  outfile: "src/reference-page/reference.js",
  bundle: true,
  // A page that is opened from a disk may load scripts, but no modules.
  format: "iife",
  target: "es2020",
  charset: "utf8",
  banner: { js: "// Written by src/build/write-reference.ts from src/reference-page/main.ts: change that instead." },
});
