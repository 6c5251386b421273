import { freshValues } from "../journal/fresh-values";
import { KIND_TITLES, reconcile as reconciled, reconciledSentence } from "../lots/reconcile";
import { readShop, withCells } from "../lots/shop";
import { readWorkbook } from "../lots/where";
import { addressOn } from "../workbook/cell-range";
import { FileFault, openXlsx } from "../workbook/file";
import { FilePort } from "../workbook/file-port";
import { readArea } from "../workbook/xlsx/address";
import type { Command } from "./command";
import { readWorkbookFile } from "./files";
import { given } from "./given";
import { Misuse } from "./misuse";
import { progress } from "./progress";

export const reconcile: Command = {
  takes: "FILE.xlsx",
  does: "lists lots whose rows contradict themselves",
  examples: ["lotwright reconcile sample-workbooks/throughput.xlsx"],
  more: `Weights, dates, units, outturn, recovery, payout, lot numbers, formulas that were typed over and values that are out of
date: each with its cell and the reason. The workbook must know where its lots live (Set up a lot, in the pane). The file is
never changed.`,
  endsWithOne: "when there is a contradiction",
  async run(words) {
    const { names: [input = ""] } = given(words, { names: ["the workbook whose lots are to be looked at"] });
    const bar = progress();
    try {
      const port = new FilePort(openXlsx(readWorkbookFile(input)));
      const { sheets, place } = await readWorkbook(port);
      if (place === null) throw new Misuse(`${input} does not know where its lots live: open it in Lotwright once, and set it up under Set up a lot`);
      if (typeof place === "string") throw new Misuse(place);
      const found = await reconciled({ sheets, place }, { today: today(), shop: withCells(await readShop(port), sheets), fresh: freshValues, names: await port.names(), step: (done, of) => (bar.step("looking at lots", done, of), true) });
      bar.end();
      for (const { kind, lot, cell, heading, sentence } of found.contradictions) console.log(`${placeOf(place.list.sheet, cell)}\t${KIND_TITLES[kind]}\t${lot}\t${heading}\t${sentence}`);
      for (const remark of [...place.changes, ...found.remarks]) console.error(remark);
      for (const { kind, count, without } of found.looked) console.error(`${KIND_TITLES[kind]}: ${without === null ? `${count} looked at` : `not looked at, since ${without}`}`);
      console.log(reconciledSentence(found));
      return found.contradictions.length > 0 ? 1 : 0;
    } catch (fault) {
      bar.end();
      if (!(fault instanceof FileFault)) throw fault;
      console.error(`${input}: ${fault.message}`);
      return 2;
    }
  },
};

function placeOf(sheet: string, cell: string): string {
  const area = readArea(cell);
  return area ? addressOn(sheet, area, null) : cell;
}

function today(): { year: number; month: number; day: number } {
  const now = new Date();
  return { year: now.getFullYear(), month: now.getMonth() + 1, day: now.getDate() };
}
