import { freshCells } from "../../src/cli/fresh-cells";
import { openXlsx } from "../../src/workbook/file";
import { Sheet, workbook } from "../native/workbook";
import { random } from "../random";
import { medians } from "./measure";
import { type Row, below } from "./row";

const FORMULAS = 10_000;
const A_SECOND = 1000;

/** What `recalc` does with a workbook of ten thousand formulas, from the file's bytes to what differs. */
export function file(): Row[] {
  const bytes = costSheet();
  const { whole } = medians({ whole: () => freshCells(openXlsx(bytes), () => undefined).cells.length }, { rounds: 5, warm: 2 });
  return [below("recalc of a file of 10,000 LOT formulas, reading and computing", whole, A_SECOND)];
}

function costSheet(): Uint8Array {
  const { decimal, pick } = random(7);
  const sheet = new Sheet("Lots");
  for (let row = 0; row < FORMULAS / 5; row++) {
    const r = row + 1;
    [decimal(200, 9000, 1), pick([925, 900, 800]), decimal(20, 35, 2), 0.975, decimal(100, 8000, 1)].forEach((cell, c) => sheet.set(row, c, cell));
    [
      `LOT.FINEWEIGHT(A${r},"g",B${r})`,
      `LOT.PAYOUT(F${r},"ozt",C${r},D${r},0.5,25)`,
      `LOT.COPPER(F${r},"ozt","13%")`,
      `LOT.RECOVERY(E${r},A${r}*B${r}/1000)`,
      `LOT.MARGIN(F${r},"ozt",C${r},G${r},40)`,
    ].forEach((formula, c) => sheet.set(row, 5 + c, { formula }));
  }
  return workbook([sheet]);
}
