import { writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { share } from "../src/sharing/share";
import { openXlsx } from "../src/workbook/file";
import { costSheet } from "./cost-sheet";
import { quotesBook } from "./quotes";
import { throughput } from "./throughput";
import { bookFile } from "./write/file";

function write(name: string, bytes: Uint8Array): void {
  const target = new URL(name, import.meta.url);
  writeFileSync(target, bytes);
  console.log(`Wrote ${fileURLToPath(target)}`);
}

write("cost-sheet.xlsx", bookFile(costSheet));
write("quotes.xlsx", await quotesBook());
const year = await throughput();
write("throughput.xlsx", year);
write("bookkeeper-copy.xlsx", (await share(openXlsx(year))).bytes);
