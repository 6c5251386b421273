import { share as shared } from "../sharing/share";
import { FileFault, openXlsx } from "../workbook/file";
import type { Command } from "./command";
import { checkOutput, readWorkbookFile, writeWhole } from "./files";
import { freshCells } from "./fresh-cells";
import { given } from "./given";
import { progress } from "./progress";

export const share: Command = {
  takes: "IN.xlsx OUT.xlsx [--values] [--force]",
  does: "makes a copy that any spreadsheet computes: ordinary formulas for ours, and a sheet of their workings",
  examples: [
    "lotwright share sample-workbooks/cost-sheet.xlsx for-the-bookkeeper.xlsx",
    "lotwright share sample-workbooks/cost-sheet.xlsx figures-only.xlsx --values",
  ],
  more: `--values puts values instead of formulas. The file itself is never changed; a copy that is there already is replaced only
with --force.`,
  endsWithOne: null,
  async run(words) {
    const { names: [input = "", output = ""], flags } = given(words, { names: ["the workbook to read", "the name of the one to write"], flags: ["--values", "--force"] });
    checkOutput(input, output, flags.has("--force"));
    const bar = progress();
    try {
      const file = openXlsx(readWorkbookFile(input));
      const { changes } = freshCells(file, bar.step);
      const { bytes, cells, left } = await shared(changes.length === 0 ? file : openXlsx(file.patch(changes)), { valuesOnly: flags.has("--values"), step: bar.step });
      bar.end();
      writeWhole(output, bytes);
      const values = cells.filter(({ now }) => now === null).length;
      if (changes.length > 0) console.error(`${changes.length} formulas had out-of-date values: the copy has fresh ones`);
      for (const sentence of left) console.error(sentence);
      console.log(cells.length === 0 ? "No cell holds a formula of ours: the copy is the workbook as it is" : `${cells.length} cells: ${cells.length - values} hold ordinary formulas now, ${values} their values; what each was stands on the sheet of workings`);
      return 0;
    } catch (fault) {
      bar.end();
      if (!(fault instanceof FileFault)) throw fault;
      console.error(`${input}: ${fault.message}`);
      return 2;
    }
  },
};
