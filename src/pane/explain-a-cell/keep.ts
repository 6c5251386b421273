import { type Plan, plan } from "../../workbook/plan";
import type { BookPort } from "../../workbook/port";
import { addressOf } from "../../workbook/xlsx/address";
import type { Explanation } from "../../explaining/explain";
import { explanationText } from "../../explaining/explanation-text";

/** A working on its way into the workbook, as a note beside its cell. */
export interface Keeping {
  readonly plan: Plan;
  /** "The note beside F7". */
  readonly where: string;
  readonly before: string | null;
  readonly after: string;
}

export async function keeping(of: Explanation, port: BookPort): Promise<Keeping> {
  const { sheet, spot } = of.on;
  const after = explanationText(of);
  const cell = addressOf(spot);
  const planned = await plan(port, [{ sheet, cell, note: after }]);
  return { plan: planned, where: `The note beside ${cell}`, before: planned.notes[0]?.before ?? null, after };
}
