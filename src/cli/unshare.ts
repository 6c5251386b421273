import { unshare as putBack } from "../sharing/unshare";
import { FileFault, openXlsx } from "../workbook/file";
import type { Command } from "./command";
import { cellText } from "./cell-text";
import { checkOutput, readWorkbookFile, writeWhole } from "./files";
import { inputAndOutput } from "./input-and-output";

export const unshare: Command = {
  help: `unshare IN OUT.xlsx   turns a shared copy that came back into formulas of ours again
    lotwright unshare back-from-the-bookkeeper.xlsx lots.xlsx
  What was changed in the copy stays, and every cell whose formula was changed is listed. Ends with 1 where there is such a
  cell. A file that is there already is replaced only with --force.`,
  run(words) {
    const { input, output, flags } = inputAndOutput(words, ["--force"]);
    checkOutput(input, output, flags.has("--force"));
    try {
      const { bytes, restored, kept } = putBack(openXlsx(readWorkbookFile(input)));
      writeWhole(output, bytes);
      for (const { place, was, now, sentence } of kept) console.log(`${place}\tstays as it is: ${sentence}\twas ${was}\tnow ${cellText(now) || "nothing"}`);
      console.log(`${restored.length} formulas of ours stand again, ${kept.length} cells stay as they came back`);
      return kept.length > 0 ? 1 : 0;
    } catch (fault) {
      if (!(fault instanceof FileFault)) throw fault;
      console.error(`${input}: ${fault.message}`);
      return 2;
    }
  },
};
