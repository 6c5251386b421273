/** Builds, and stops when what Excel loads at start-up has grown past its bound. */
import { readFileSync, readdirSync } from "node:fs";
import { gzipSync } from "node:zlib";
import { excel } from "./bundles/excel";
import { bundle } from "./bundle";
import { DEVELOPMENT_BASE, inRepository } from "./excel-files";
import { fillExcelFolder } from "./excel-folder";

/** Bytes, gzipped. */
const BOUNDS = { "functions ready": { files: /^start\.js$/, most: 60_000 }, "the pane, when it is shown": { files: /^pane\..*\.js$/, most: 150_000 }, "all of its tasks, each when it is opened": { files: /^(?!start|pane|reference).*\.js$/, most: 300_000 }, "the reference page's script": { files: /^reference\.js$/, most: 10_000 } };

await bundle(excel);
const folder = inRepository("dist/excel");
fillExcelFolder(folder, DEVELOPMENT_BASE);
for (const [what, { files, most }] of Object.entries(BOUNDS)) {
  const found = readdirSync(folder).filter((name) => files.test(name));
  const size = found.reduce((sum, name) => sum + gzipSync(readFileSync(`${folder}/${name}`)).length, 0);
  console.log(`${what}: ${size} of ${most} bytes gzipped (${found.join(", ")})`);
  if (found.length === 0 || size > most) process.exitCode = 1;
}
