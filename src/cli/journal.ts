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
import { given } from "./given";
import { Misuse } from "./misuse";
import { progress } from "./progress";

export const journal: Command = {
  takes: "IN.xlsx OUT.csv [--month 2026-03] [--force]",
  does: "writes a month's settlements as balanced lines for the books",
  examples: ["lotwright journal sample-workbooks/throughput.xlsx december.csv", "lotwright journal sample-workbooks/throughput.xlsx march.csv --month 2025-03"],
  more: `Columns: Date, Lot, Client, Account, Debit, Credit, Memo. The file is comma-separated (RFC 4180), in UTF-8; debits equal
credits to the cent. A text that a spreadsheet could take for a formula has an apostrophe before it. Without --month it is
the last month in which lots came in. The names of the accounts are those that the workbook keeps (Journal, in the pane).
Lots that are not in it, or not in all their lines, are told with the reason. The workbook must know where its lots live
(Set up a lot, in the pane). A file that is there already is replaced only with --force.`,
  endsWithOne: null,
  async run(words) {
    const { input, output, month: wanted } = asked(words);
    const bar = progress();
    try {
      const port = new FilePort(openXlsx(readWorkbookFile(input)));
      const { sheets, place } = await readWorkbook(port);
      if (place === null) throw new Misuse(`${input} does not know where its lots live: open it in Lotwright once, and set it up under Set up a lot`);
      if (typeof place === "string") throw new Misuse(place);
      const shop = withCells(await readShop(port), sheets);
      const without = withoutJournal(place, shop);
      if (without !== null) throw new Misuse(without);
      const month = wanted ?? monthsOf(place).at(-1);
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

function asked(words: readonly string[]): { readonly input: string; readonly output: string; readonly month: Month | null } {
  const { names: [input = "", output = ""], options, flags } = given(words, { names: ["the workbook to read", "the name of the file to write"], options: { "--month": "2026-03" }, flags: ["--force"] });
  checkOutput(input, output, flags.has("--force"));
  const written = options.get("--month");
  return { input, output, month: written === undefined ? null : monthIn(written) };
}

function monthIn(written: string): Month {
  const read = readMonth(written);
  if (!read) throw new Misuse(`Cannot read the month "${written}": write it as 2026-03`);
  return read;
}
