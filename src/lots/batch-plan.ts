import { FaultError } from "../core/fault";
import { type BatchChoices, type PlanLot, planCells } from "./batch-plan-cells";
import type { PlanLine } from "./batch-plan-line";
import { dissolvingLines, dropLines, meltLines, washingLines, wasteLines } from "./batch-plan-lines";
import type { Need } from "./batch-plan-needs";
import { type DropCurve, type PailsFilled, dropCurve, pailFacts, pailsFilled } from "./batch-plan-pictures";
import { type PlausibilityRemark, plausibility } from "./plausible";
import type { Shop } from "./shop";

export interface BatchPlan {
  /** In the order of the work. */
  readonly lines: readonly PlanLine[];
  /** All that the lines lack, each named once. */
  readonly needs: readonly Need[];
  readonly pails: PailsFilled | null;
  readonly curve: DropCurve | null;
  readonly remarks: readonly PlausibilityRemark[];
}

/** The plan of a batch, or the sentence that says why the lot itself allows none. */
export function batchPlan(lot: PlanLot, shop: Shop, choices: BatchChoices): BatchPlan | string {
  const cells = planCells(lot, shop, choices);
  try {
    cells.silver();
  } catch (error) {
    if (error instanceof FaultError) return error.message;
    throw error;
  }
  const lines = [dissolvingLines, dropLines, washingLines, meltLines, wasteLines].flatMap((group) => group(cells));
  const pails = pailsFilled(cells);
  return {
    lines,
    needs: [...new Map(lines.flatMap(({ content }) => (content.kind === "lacking" ? content.needs : [])).map((need) => [need.in === "shop" ? need.field : need.choice, need])).values()],
    pails,
    curve: dropCurve(cells),
    remarks: pails === null ? [] : plausibility(pailFacts(pails), NOTHING_AROUND),
  };
}

/** What the fill of pails is not compared with. */
const NOTHING_AROUND = { today: { year: 1900, month: 3, day: 1 }, lots: [], prices: [] };
