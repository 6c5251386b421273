import type { Model } from "@odoo/o-spreadsheet";
import { readCell } from "../engine/read-cell";
import { fill, h } from "../pane/dom";

const KEYS = "F6 moves between bar, sheet and pane · Shift+Page Down goes to the next sheet · Ctrl+S saves";

/** The line at the foot: why the selected cell shows an error, which a mouse sees beside the cell, or else the keys. */
export class CellStatus {
  readonly element = h("p", { class: "cell-status", role: "status", "aria-live": "polite" }, KEYS);

  follow(model: Model): void {
    let shown = KEYS;
    model.on("update", this, () => {
      const { error, value, message } = readCell(model, model.getters.getActivePosition());
      const text = error && message ? `${value} ${message}` : KEYS;
      if (text === shown) return;
      shown = text;
      this.element.classList.toggle("fault", text !== KEYS);
      fill(this.element, text);
    });
  }
}
