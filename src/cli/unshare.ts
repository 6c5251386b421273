import { unshare as putBack } from "../sharing/unshare";
import { FileFault, openXlsx } from "../workbook/file";
import type { Command } from "./command";
import { cellText } from "./cell-text";
import { checkOutput, readWorkbookFile, writeWhole } from "./files";
import { given } from "./given";

export const unshare: Command = {
  takes: "IN.xlsx OUT.xlsx [--force]",
  does: "turns a shared copy that came back into formulas of ours again",
  examples: ["lotwright unshare sample-workbooks/bookkeeper-copy.xlsx lots.xlsx"],
  more: `What was changed in the copy stays, and every cell whose formula was changed is listed. A file that is there already is
replaced only with --force.`,
  endsWithOne: "when a formula was changed in the copy",
  run(words) {
    const { names: [input = "", output = ""], flags } = given(words, { names: ["the shared copy to read", "the name of the workbook to write"], flags: ["--force"] });
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
