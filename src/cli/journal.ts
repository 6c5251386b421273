import { readAccounts } from "../journal/accounts";
import { csvBytes } from "../journal/csv";
import { journalOf, withoutJournal } from "../journal/journal";
import { centsText } from "../journal/money";
import { readShop, withCells } from "../lots/shop";
import { readWorkbook } from "../lots/where";
import { monthsOf } from "../month/month-lots";
import { type Month, monthText, readMonth } from "../month/month-of";
import { FileFault, openXlsx } from "../workbook/file";
import { FilePort } from "../workbook/file-port";
import type { Command } from "./command";
import { checkOutput, readWorkbookFile, writeWhole } from "./files";
import { Misuse } from "./misuse";
import { progress } from "./progress";

export const journal: Command = {
  help: `journal IN OUT.csv    writes a month's settlements as balanced lines for the books
    lotwright journal lots.xlsx journal-2026-03.csv --month 2026-03
  Columns: Date, Lot, Client, Account, Debit, Credit, Memo. The file is comma-separated (RFC 4180), in UTF-8; debits equal
  credits to the cent. A text that a spreadsheet could take for a formula has an apostrophe before it. Without --month it is
  the last month in which lots came in. The names of the accounts are those that the workbook keeps (Journal, in the pane).
  Lots that are not in it, or not in all their lines, are told with the reason. A file that is there already is replaced
  only with --force.`,
  async run(words) {
    const { input, output, month: asked } = given(words);
    const bar = progress();
    try {
      const port = new FilePort(openXlsx(readWorkbookFile(input)));
      const { sheets, place } = await readWorkbook(port);
      if (place === null) throw new Misuse(`${input} does not know where its lots live: open it in Lotwright once, and set it up under Set up a lot`);
      if (typeof place === "string") throw new Misuse(place);
      const shop = withCells(await readShop(port), sheets);
      const without = withoutJournal(place, shop);
      if (without !== null) throw new Misuse(without);
      const month = asked ?? monthsOf(place).at(-1);
      if (!month) throw new Misuse("No lot in the list has a date: fill them in, since they decide which month a lot belongs to");
      const found = await journalOf(place, month, { accounts: await readAccounts(port), shop }, (done, of) => bar.step("settling lots", done, of));
      bar.end();
      for (const remark of [...place.changes, ...found.remarks]) console.error(remark);
      if (found.settlements.length === 0) throw new Misuse(`${monthText(month)} has no lot that is settled: there is nothing to write`);
      writeWhole(output, csvBytes(found));
      const count = found.settlements.length;
      console.log(`${monthText(month)}: ${count} ${count === 1 ? "settlement" : "settlements"} in ${found.settlements.flat().length} lines, debits ${centsText(found.debit)}, credits ${centsText(found.credit)}`);
      return 0;
    } catch (fault) {
      bar.end();
      if (!(fault instanceof FileFault)) throw fault;
      console.error(`${input}: ${fault.message}`);
      return 2;
    }
  },
};

function given(words: readonly string[]): { readonly input: string; readonly output: string; readonly month: Month | null } {
  const plain = words.filter((word) => word !== "--force");
  const at = plain.indexOf("--month");
  const unknown = plain.find((word) => word.startsWith("--") && word !== "--month");
  if (unknown !== undefined) throw new Misuse(`There is no "${unknown}" here: --month and --force can be given`);
  const [input, output, ...more] = at === -1 ? plain : [...plain.slice(0, at), ...plain.slice(at + 2)];
  if (input === undefined || output === undefined) throw new Misuse("Give the workbook to read and the name of the file to write");
  if (more.length > 0) throw new Misuse(`Give two names: "${more.join(" ")}" came after them`);
  checkOutput(input, output, words.includes("--force"));
  return { input, output, month: at === -1 ? null : monthIn(plain[at + 1]) };
}

function monthIn(written: string | undefined): Month {
  const read = readMonth(written ?? "");
  if (!read) throw new Misuse(written === undefined ? "Give the month after --month, such as 2026-03" : `Cannot read the month "${written}": write it as 2026-03`);
  return read;
}
