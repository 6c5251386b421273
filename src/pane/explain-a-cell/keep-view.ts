import { freshId, h } from "../dom";
import type { Keeping } from "./keep";

export interface KeepView {
  readonly element: HTMLElement;
  focus(): void;
}

/** Shows what would be written and what stands there, and asks. */
export function keepView({ where, before, after }: Keeping, write: () => void, cancel: () => void): KeepView {
  const [heading, id] = [freshId("keep"), freshId("tick")];
  const go = h("button", { type: "button", class: "lw-primary", disabled: before !== null, onclick: write }, before === null ? "Write it" : "Overwrite");
  const tick = h("input", { type: "checkbox", id, onchange: () => void (go.disabled = !tick.checked) });
  const text = (content: string, label: string): HTMLElement => h("pre", { tabindex: 0, role: "region", "aria-label": label }, content);
  return {
    element: h(
      "div",
      { class: "lw-overwrite", role: "group", "aria-labelledby": heading },
      h("p", { id: heading, class: "lw-overwrite-title" }, before === null ? where : `${where} is filled`),
      h("dl", {}, h("dt", {}, "Before"), h("dd", {}, before === null ? "nothing" : text(before, "Before")), h("dt", {}, "After"), h("dd", {}, text(after, "After"))),
      before === null ? null : h("div", { class: "lw-tick" }, tick, h("label", { for: id }, "Overwrite what stands there")),
      h("div", { class: "lw-actions" }, go, h("button", { type: "button", onclick: cancel }, before === null ? "Cancel" : "Keep it as it is")),
    ),
    focus: () => (before === null ? go : tick).focus(),
  };
}
