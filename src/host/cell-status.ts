import type { Model } from "@odoo/o-spreadsheet";
import { readCell } from "../engine/read-cell";
import { fill, h } from "../pane/dom";

/** One line that says why the selected cell shows an error; a mouse sees it beside the cell, a keyboard here. */
export class CellStatus {
  readonly element = h("p", { class: "cell-status", role: "status", "aria-live": "polite", hidden: true });

  follow(model: Model): void {
    const show = (): void => {
      const { error, value, message } = readCell(model, model.getters.getActivePosition());
      this.element.hidden = !error || !message;
      fill(this.element, ...(error && message ? [h("strong", {}, String(value)), ` ${message}`] : []));
    };
    model.on("update", this, show);
    show();
  }
}
