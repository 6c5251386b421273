import { FileFault, openXlsx } from "../workbook/file";
import type { Command } from "./command";
import { cellText } from "./cell-text";
import { checkOutput, readWorkbookFile, writeWhole } from "./files";
import { type FreshCell, freshCells } from "./fresh-cells";
import { given } from "./given";
import { progress } from "./progress";

export const recalc: Command = {
  takes: "FILE.xlsx [--write COPY.xlsx] [--force]",
  does: "computes every cell with a function of ours and what depends on it, and lists what differs",
  examples: ["lotwright recalc sample-workbooks/cost-sheet.xlsx", "lotwright recalc sample-workbooks/quotes.xlsx --write fresh.xlsx"],
  more: `--write puts the fresh values into a copy. The file itself is never changed, and a copy that is there already is replaced
only with --force.`,
  endsWithOne: "when a stored value differs",
  run(words) {
    const { input, output } = paths(words);
    const bar = progress();
    try {
      const file = openXlsx(readWorkbookFile(input));
      const { cells, changes, left } = freshCells(file, bar.step);
      const differing = cells.filter(({ differs }) => differs);
      const copy = output === null ? null : file.patch(changes);
      bar.end();
      for (const cell of differing) console.log(line(cell));
      for (const { place, formula } of left) console.log(`${place}\tleft as it is: this program cannot compute it\t${formula}`);
      console.log(`${cells.length} cells computed, ${differing.length} differ from what was stored`);
      if (output !== null && copy) writeWhole(output, copy);
      return differing.length > 0 ? 1 : 0;
    } catch (fault) {
      bar.end();
      if (!(fault instanceof FileFault)) throw fault;
      console.error(`${input}: ${fault.message}`);
      return 2;
    }
  },
};

const line = ({ place, stored, fresh, formula }: FreshCell): string =>
  `${place}\tstored ${cellText(stored) || "nothing"}\tfresh ${cellText(fresh) || "nothing"}${formula === null ? "" : `\t${formula}`}`;

function paths(words: readonly string[]): { readonly input: string; readonly output: string | null } {
  const { names: [input = ""], options, flags } = given(words, { names: ["the workbook to recalculate"], options: { "--write": "fresh.xlsx" }, flags: ["--force"] });
  const output = options.get("--write") ?? null;
  if (output !== null) checkOutput(input, output, flags.has("--force"));
  return { input, output };
}
