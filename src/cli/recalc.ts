import { FileFault, openXlsx } from "../workbook/file";
import type { Command } from "./command";
import { cellText } from "./cell-text";
import { checkOutput, readWorkbookFile, writeWhole } from "./files";
import { type FreshCell, freshCells } from "./fresh-cells";
import { Misuse } from "./misuse";
import { progress } from "./progress";

export const recalc: Command = {
  help: `recalc FILE.xlsx      computes every cell with a function of ours and what depends on it, and lists what differs
    lotwright recalc lots.xlsx
    lotwright recalc lots.xlsx --write fresh.xlsx
  Ends with 1 where a stored value differs. --write puts the fresh values into a copy; the file itself is never changed,
  and a copy that is there already is replaced only with --force.`,
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

function paths(words: readonly string[]): { input: string; output: string | null } {
  const plain = words.filter((word) => word !== "--force");
  const at = plain.indexOf("--write");
  const output = at === -1 ? null : plain[at + 1];
  const [input, ...more] = at === -1 ? plain : [...plain.slice(0, at), ...plain.slice(at + 2)];
  if (input === undefined) throw new Misuse("Give the workbook to recalculate");
  if (output === undefined) throw new Misuse("Give the copy's name after --write");
  if (more.length > 0) throw new Misuse(`Give one workbook: "${more.join(" ")}" came after it`);
  if (output !== null) checkOutput(input, output, words.includes("--force"));
  return { input, output };
}
