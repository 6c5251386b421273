import type { Draft } from "./draft";
import { edited, type Edit } from "./xml-edits";
import { elements, localName } from "./xml-tags";

/** Takes the reference to an add-in out of the file: its part, its pane, and what points at them. Other add-ins stay. */
export function withoutWebExtension(draft: Draft, isUnwanted: (extension: string) => boolean): void {
  const { parts } = draft;
  for (const { type, id, target: panes } of parts.relationships("")) {
    if (type !== "webextensiontaskpanes" || panes === null || !parts.has(panes)) continue;
    const links = parts.relationships(panes);
    const unwanted = links.filter((link) => link.type === "webextension" && link.target !== null && parts.has(link.target) && isUnwanted(draft.text(link.target)));
    if (unwanted.length === 0) continue;
    for (const link of unwanted) draft.unlinkWhole(panes, link.id, link.target ?? "");
    if (unwanted.length < links.length) draft.write(panes, withoutPanes(draft.text(panes), new Set(unwanted.map((link) => link.id))));
    else draft.unlinkWhole("", id, panes);
  }
}

function withoutPanes(xml: string, ids: ReadonlySet<string>): string {
  const edits: Edit[] = [];
  for (const tag of elements(xml, (name) => localName(name) === "taskpane")) {
    const { start, end } = tag;
    tag.skip();
    const id = [...elements(xml.slice(end, tag.start), (name) => localName(name) === "webextensionref")][0]?.attributes().find(({ name }) => localName(name) === "id")?.value;
    if (id !== undefined && ids.has(id)) edits.push({ start, end: tag.end, text: "" });
  }
  return edited(xml, edits);
}
