import { fill, h } from "../dom";
import type { Notation } from "../notation";
import type { Figures } from "./figures";
import { shownNumber } from "./shown-number";

/** Net, fine weight and payout in one line, always in sight. */
export function figuresView(notation: Notation): { readonly element: HTMLElement; show(now: Figures, hasPayout: boolean): void } {
  const element = h("dl", { class: "lw-figures", "aria-label": "What the lot comes to" });
  return {
    element,
    show({ net, fine, fineU, payout, payoutBy }, hasPayout) {
      fill(
        element,
        figure("Net", net && shownNumber(net.value, 3, notation), net?.unit ?? ""),
        figure("Fine", fine === null ? null : shownNumber(fine, 3, notation), "ozt", fineU === null ? null : `± ${shownNumber(fineU, 3, notation)} by its assay`),
        hasPayout ? figure("Payout", payout === null ? null : shownNumber(payout, 2, notation, true), "", payout !== null && payoutBy === "terms" ? "by the terms; its column’s formula decides" : null) : null,
      );
    },
  };
}

const figure = (name: string, value: string | null, unit: string, more: string | null = null): HTMLElement =>
  h("div", {}, h("dt", {}, name), h("dd", {}, value ?? "–", value !== null && unit !== "" ? h("span", { class: "lw-of" }, ` ${unit}`) : null), more === null ? null : h("dd", { class: "lw-of" }, more));
