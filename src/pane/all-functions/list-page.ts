import type { Entry } from "../../catalogue/entry";
import { h } from "../dom";
import type { Page } from "../page";
import type { PaneHost } from "../pane-host";
import { referenceLink } from "../reference-link";
import { finder, hitParts } from "./finder";
import { memory } from "./memory";

/** Every function, to be found by its name or by words of the trade. */
export function listPage(entries: readonly Entry[], host: PaneHost, open: (entry: Entry) => void, leave: () => void, opened: string | null): Page {
  const { search, results, input, rows } = finder(entries, {
    label: "Name, or words of the trade",
    memory,
    row: (hit) => h("button", { type: "button", class: "lw-hit", "data-id": hit.entry.id, onclick: () => open(hit.entry) }, ...hitParts(hit)),
    choose: open,
  });
  return {
    element: h(
      "div",
      { class: "lw-page lw-list" },
      h("header", { class: "lw-top" }, h("button", { type: "button", class: "lw-back", onclick: leave }, "All tasks"), h("h1", {}, "All functions")),
      referenceLink(host, null, "The reference, to read and to print"),
      search,
      results,
    ),
    focus() {
      const left = rows().find((row) => row.dataset["id"] === opened);
      (left ?? input).focus();
      left?.scrollIntoView({ block: "center" });
    },
    back: leave,
    close: () => undefined,
  };
}
