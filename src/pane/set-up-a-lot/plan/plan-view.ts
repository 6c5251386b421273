import { type BatchPlan, batchPlan } from "../../../lots/batch-plan";
import type { PlanLot } from "../../../lots/batch-plan-cells";
import type { PlanGroup } from "../../../lots/batch-plan-line";
import { needsInWords } from "../../../lots/batch-plan-needs";
import type { PlausibilityRemark } from "../../../lots/plausible";
import type { Shop } from "../../../lots/shop";
import { fill, freshId, h } from "../../dom";
import type { Notation } from "../../notation";
import { drawingElement } from "../../picture/drawing";
import { choiceFields } from "./choice-fields";
import { curvePicture } from "./curve-picture";
import { figuresTable } from "./figures-table";
import { typedChoices } from "./memory";
import { pailsPicture, pailsSentence } from "./pails-picture";

export type { PlanLot } from "../../../lots/batch-plan-cells";

export interface PlanView {
  readonly element: HTMLElement;
  /** As of now: they follow what is changed in the view. */
  readonly remarks: readonly PlausibilityRemark[];
  focus(): void;
}

const GROUPS: readonly PlanGroup[] = ["Dissolving", "Drop", "Washing", "Melt and cell", "Waste"];

/** What the work on a lot will take, figure by figure, as the choices for the batch stand. */
export function planView(lot: PlanLot, shop: Shop, notation: Notation): PlanView {
  const typed = typedChoices(lot.lot, shop.pail?.unit ?? "L");
  const choices = choiceFields(typed, notation, show);
  const said = h("div", { class: "lw-plan-said" });
  const [pailsPlace, curvePlace] = [h("div", {}), h("div", {})];
  const pictures: Readonly<Partial<Record<PlanGroup, HTMLElement>>> = { Dissolving: pailsPlace, Drop: curvePlace };
  const tables = new Map(GROUPS.map((group) => [group, figuresTable(group, typed.open, notation)]));
  let remarks: readonly PlausibilityRemark[] = [];

  const element = h("section", { class: "lw-plan", "aria-label": lot.lot === "" ? "The plan" : `Plan of lot ${lot.lot}` }, said, ...GROUPS.map(section));

  function section(group: PlanGroup): HTMLElement {
    const id = freshId("group");
    return h("section", { "aria-labelledby": id }, h("h2", { id }, group), choices.of(group), tables.get(group)?.element ?? null, pictures[group] ?? null);
  }

  function show(): void {
    const plan = batchPlan(lot, shop, choices.read());
    const isPlanned = typeof plan !== "string";
    remarks = isPlanned ? plan.remarks : [];
    for (const part of element.children) if (part !== said) (part as HTMLElement).hidden = !isPlanned;
    if (!isPlanned) return fill(said, h("p", { class: "lw-fault" }, plan));
    fill(said, ...plan.remarks.map(({ sentence }) => h("p", { class: "lw-caution", role: "note" }, sentence)), missing(plan));
    for (const [group, table] of tables) table.show(plan.lines.filter((line) => line.group === group));
    draw(plan);
  }

  function draw({ pails, curve }: BatchPlan): void {
    fill(pailsPlace, ...(pails ? [drawingElement(pailsPicture(pails, notation)), h("p", { class: "lw-about", "aria-hidden": "true" }, `${pailsSentence(pails, notation)}.`)] : []));
    fill(curvePlace, ...(curve ? [drawingElement(curvePicture(curve, notation))] : []));
  }

  show();
  return {
    element,
    get remarks() {
      return remarks;
    },
    focus: choices.focus,
  };
}

/** What would make the plan whole, all of it in one place. */
function missing({ needs }: BatchPlan): HTMLElement | null {
  if (needs.length === 0) return null;
  const { shop, batch } = needsInWords(needs);
  const item = (where: string, words: string | null): HTMLElement | null => (words === null ? null : h("li", {}, h("strong", {}, where), ` ${words}`));
  return h("div", { class: "lw-about" }, "For a whole plan say", h("ul", { class: "lw-plan-needs" }, item("below:", batch), item("in The shop:", shop)));
}
