import { type Plan, plan } from "../../workbook/plan";
import { type WorkbookPort, isBookPort } from "../../workbook/port";
import { addressOf } from "../../workbook/xlsx/address";
import type { Explanation } from "./explain";
import { explanationText } from "./explanation-text";

/** A working on its way into the workbook: as a note beside its cell, or as a text in the cell at its right. */
export interface Keeping {
  readonly plan: Plan;
  /** "The note beside F7", "G7". */
  readonly where: string;
  readonly before: string | null;
  readonly after: string;
}

/** Plans it. A host that knows no notes gets a text in the next free cell at the right. */
export async function keeping(of: Explanation, port: WorkbookPort): Promise<Keeping> {
  const { sheet, spot } = of.on;
  const after = explanationText(of);
  const cell = addressOf(spot);
  if (isBookPort(port)) {
    const planned = await plan(port, [{ sheet, cell, note: after }]);
    return { plan: planned, where: `The note beside ${cell}`, before: planned.notes[0]?.before ?? null, after };
  }
  const beside = addressOf({ ...spot, column: spot.column + 1 });
  const planned = await plan(port, [{ sheet, cell: beside, content: after, asText: true }]);
  const held = planned.cells[0];
  const before = held?.overwrites ? (held.before.formula ?? String(held.before.value)) : null;
  return { plan: planned, where: beside, before, after };
}
