import { referencePlace } from "../catalogue/reference-address";
import { h } from "./dom";
import type { PaneHost } from "./pane-host";

/** A link to the reference page, at a function where one is given, with the examples as this user's spreadsheet takes them. */
export function referenceLink({ referencePage, openInBrowser, decimal }: PaneHost, id: string | null, text: string): HTMLElement | null {
  if (referencePage === undefined) return null;
  const link = h("a", { href: referencePage + referencePlace(id, decimal), target: "_blank", rel: "noopener" }, text);
  if (openInBrowser)
    link.addEventListener("click", (event) => {
      event.preventDefault();
      openInBrowser(link.href);
    });
  return h("p", { class: "lw-reference" }, link);
}
