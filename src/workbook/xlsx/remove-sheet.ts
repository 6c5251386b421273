import { settingAttribute } from "./children";
import type { Draft } from "./draft";
import { FileFault } from "./file-fault";
import type { Workbook } from "./workbook";
import { edited, type Edit } from "./xml-edits";
import { elements, localName } from "./xml-tags";
import { attributeOf, childrenOf, type Element, rootOf } from "./xml-tree";

/** Takes a sheet out of the file, with its parts and the names that hold on it alone. */
export function removeSheet(workbook: Workbook, draft: Draft, name: string): void {
  const { part } = workbook.sheet(name);
  const xml = draft.text(workbook.part);
  const link = draft.parts.relationships(workbook.part).find(({ target }) => target === part);
  const list = childrenOf(xml, rootOf(xml)).find((one) => localName(one.name) === "sheets");
  const entries = list ? childrenOf(xml, list) : [];
  const position = entries.findIndex((one) => attributeOf(xml, one, "name") === name);
  const entry = entries[position];
  if (!link || !entry) throw new FileFault(`Cannot take the sheet ${name} out: the list of sheets in this file is damaged: open it in Excel and save it again`);
  if (entries.length === 1) throw new FileFault(`Cannot take the sheet ${name} out: a workbook keeps one sheet at least`);
  draft.write(workbook.part, edited(xml, [{ start: entry.start, end: entry.end, text: "" }, ...nameEdits(xml, position), ...viewEdits(xml, position)]));
  draft.unlinkWhole(workbook.part, link.id, part);
}

/** Names of one sheet tell it by its position. */
function nameEdits(xml: string, gone: number): Edit[] {
  const list = childrenOf(xml, rootOf(xml)).find((one) => localName(one.name) === "definedNames");
  if (!list) return [];
  const names = childrenOf(xml, list);
  const positionOf = (one: Element): number => Number(attributeOf(xml, one, "localSheetId") ?? -1);
  if (names.every((one) => positionOf(one) === gone)) return [{ start: list.start, end: list.end, text: "" }];
  return names.flatMap((one) => {
    const position = positionOf(one);
    if (position === gone) return [{ start: one.start, end: one.end, text: "" }];
    return position > gone ? [settingAttribute(xml, one.start, "localSheetId", String(position - 1))] : [];
  });
}

function viewEdits(xml: string, gone: number): Edit[] {
  const edits: Edit[] = [];
  for (const tag of elements(xml, (name) => localName(name) === "workbookView"))
    for (const attribute of ["activeTab", "firstSheet"]) {
      const position = Number(tag.attribute(attribute) ?? -1);
      if (position >= gone && position > 0) edits.push(settingAttribute(xml, tag.start, attribute, String(position - 1)));
    }
  return edits;
}
