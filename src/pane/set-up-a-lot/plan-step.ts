import type { PlausibilityRemark } from "../../lots/plausible";
import { withCells } from "../../lots/shop";
import { fill, h } from "../dom";
import type { Notation } from "../notation";
import type { FormLot } from "./lot-step";
import { planView } from "./plan/plan-view";
import type { Session } from "./session";
import type { Step } from "./step";

export interface PlanStep extends Step {
  readonly remarks: readonly PlausibilityRemark[];
}

interface Needs {
  readonly notation: Notation;
  session(): Session;
  lot(): Promise<FormLot | null>;
}

/** What the work on the lot will take. */
export function planStep({ notation, session, lot }: Needs): PlanStep {
  const element = h("div", { class: "lw-body" });
  let isShown = false;
  let view: ReturnType<typeof planView> | null = null;
  return {
    title: "The plan",
    element,
    get remarks() {
      return view?.remarks ?? [];
    },
    async enter() {
      isShown = true;
      const now = await lot();
      if (!isShown) return;
      view = null;
      const { net } = now?.figures ?? {};
      const { fineness, input } = now?.read ?? {};
      if (!net || !(net.value > 0) || fineness === undefined) {
        fill(element, h("p", { class: "lw-lead" }, "The plan needs weight and fineness."), h("p", { class: "lw-about" }, "The lot can be written without; the plan stands here as soon as its fineness is known."));
        return;
      }
      const number = input?.lot && "value" in input.lot ? String(input.lot.value) : "";
      const { shop, workbook } = session();
      view = planView({ net, fineness, lot: number }, withCells(shop, workbook.sheets), notation);
      fill(element, view.element);
    },
    mayLeave: () => true,
    focus: () => false,
    close: () => void (isShown = false),
  };
}
