import { writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { costSheet } from "./cost-sheet";
import { bookFile } from "./write/file";

const target = new URL("cost-sheet.xlsx", import.meta.url);
writeFileSync(target, bookFile(costSheet));
console.log(`Wrote ${fileURLToPath(target)}`);
