import { freshId, h } from "../dom";
import { markSeen, wasSeen } from "./seen";

/** An offer to those who are new; null once it was taken or skipped. */
export function firstLotCard(open: () => void, skipped: () => void): HTMLElement | null {
  if (wasSeen()) return null;
  const id = freshId("first");
  const card = h(
    "section",
    { class: "lw-welcome", "aria-labelledby": id },
    h("h2", { id }, "New here?"),
    h("p", {}, "Compute a lot in under a minute: weight, fineness and price in; fine weight and worth out, as live formulas in your sheet."),
    h("div", { class: "lw-actions" }, h("button", { type: "button", class: "lw-primary", onclick: open }, "Compute a first lot"), h("button", { type: "button", onclick: () => skip() }, "Skip")),
  );
  function skip(): void {
    markSeen();
    card.remove();
    skipped();
  }
  return card;
}
