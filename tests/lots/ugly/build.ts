import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { uglyBooks } from "./books";

/** Writes the ugly workbooks into a folder, for a look at them: npx tsx tests/lots/ugly/build.ts FOLDER */
const [folder] = process.argv.slice(2);
if (folder === undefined) throw new Error("Cannot write the workbooks: name a folder for them");
mkdirSync(folder, { recursive: true });
for (const [name, build] of Object.entries(uglyBooks)) writeFileSync(join(folder, `${name.replaceAll(" ", "-")}.xlsx`), await build());
