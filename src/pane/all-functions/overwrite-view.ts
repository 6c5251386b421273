import type { PlannedCell } from "../../workbook/plan";
import { freshId, h } from "../dom";

export interface OverwriteView {
  readonly element: HTMLElement;
  isTicked(): boolean;
  focus(): void;
}

/** Shows what a filled cell holds and what it would hold, and asks for a tick. */
export function overwriteView({ before, write }: PlannedCell, after: { readonly formula: string; readonly shows: string }, cancel: () => void): OverwriteView {
  const id = freshId("overwrite");
  const heading = freshId("overwrite-heading");
  const go = h("button", { type: "submit", class: "lw-primary", disabled: true }, "Overwrite");
  const tick = h("input", { type: "checkbox", id, onchange: () => void (go.disabled = !tick.checked) });
  const shows = before.value === null ? "nothing" : String(before.value);
  return {
    element: h(
      "div",
      { class: "lw-overwrite", role: "group", "aria-labelledby": heading },
      h("p", { id: heading, class: "lw-overwrite-title" }, `${write.cell} is filled`),
      h(
        "dl",
        {},
        h("dt", {}, "Before"),
        h("dd", {}, ...(before.formula === null ? [h("code", {}, shows)] : [h("code", {}, before.formula), `, shows ${shows}`])),
        h("dt", {}, "After"),
        h("dd", {}, h("code", {}, after.formula), `, shows ${after.shows}`),
      ),
      h("div", { class: "lw-tick" }, tick, h("label", { for: id }, `Overwrite ${write.cell}`)),
      h("div", { class: "lw-actions" }, go, h("button", { type: "button", onclick: cancel }, "Keep it as it is")),
    ),
    isTicked: () => tick.checked,
    focus: () => tick.focus(),
  };
}
