import { workingText } from "../../catalogue/working-text";
import type { Working } from "../../core/expression/working";
import { copyText } from "../copy-text";
import { fill, h } from "../dom";
import { workingParts } from "../working-parts";

export interface WorkingView {
  readonly element: HTMLElement;
  /** Null where there is nothing to work out. */
  show(working: Working | null): void;
}

/** How the result comes about, folded away until it is asked for. */
export function workingView(): WorkingView {
  const parts = h("div", {});
  const copied = h("span", { role: "status", class: "lw-about" });
  let text = "";
  const copy = h("button", { type: "button", onclick: () => void copyText(text, parts).then((said) => (copied.textContent = said)) }, "Copy as text");
  const element = h("details", { class: "lw-working", hidden: true }, h("summary", {}, "Working"), parts, h("div", { class: "lw-actions" }, copy, copied));
  return {
    element,
    show(working) {
      element.hidden = working === null;
      const now = working ? workingText(working) : "";
      if (now === text) return;
      text = now;
      copied.textContent = "";
      // Caution and source stand on the page itself.
      const lines = working?.lines.filter(({ part }) => part !== "caution" && part !== "source") ?? [];
      fill(parts, workingParts(lines));
    },
  };
}
