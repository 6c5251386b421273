import { cellRange, writtenRange } from "../workbook/cell-range";
import { fill, h } from "./dom";
import type { FormField } from "./form-field";
import type { Selected } from "./selection";

/** A field into which the selected cell can be taken. */
export function withTake<F extends FormField>(field: F, label: string, changed: () => void): F & { offer(selected: Selected | null): void } {
  let cell: string | null = null;
  const take = h("button", {
    type: "button",
    class: "lw-take",
    hidden: true,
    onclick: () => {
      if (cell === null) return;
      field.set(cell);
      changed();
      field.focus();
    },
  });
  field.element.querySelector("input")?.after(take);
  return {
    ...field,
    offer(selected) {
      const range = selected && cellRange(selected.sheet, selected.cell);
      cell = range && writtenRange(range, null);
      take.hidden = cell === null;
      if (cell === null) return;
      fill(take, h("span", { "aria-hidden": "true" }, "← "), selected?.cell ?? "");
      take.setAttribute("aria-label", `Put ${cell} into ${label.toLowerCase()}`);
      take.title = `Put ${cell} into ${label.toLowerCase()}`;
    },
  };
}
