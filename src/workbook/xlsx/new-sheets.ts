import type { PrintSetup } from "../port";
import { rowHeights } from "../row-heights";
import { areaText, readArea } from "./address";
import type { AddedSheet } from "./change";
import { prefixOf } from "./children";
import type { Draft } from "./draft";
import { FileFault } from "./file-fault";
import { isOn } from "./sheet-pieces";
import type { Workbook } from "./workbook";
import { edited } from "./xml-edits";
import { elements, localName, Tags } from "./xml-tags";
import { encodeAttribute, encodeText } from "./xml-text";
import { appending, attributeOf, childrenOf, rootOf } from "./xml-tree";

const SHEET_TYPE = "application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml";
/** The numbers by which printers know them. */
const PAPERS = { letter: 1, A4: 9 } as const;
/** What Excel adds to a width for the cell's margins. */
const MARGIN = 0.7109375;

/** Enters an empty sheet after the last one and gives its part; its cells are written as those of any sheet. */
export function addSheet(workbook: Workbook, draft: Draft, folder: string, sheet: AddedSheet, position: number): string {
  const { newSheet: name, isHidden = false, print } = sheet;
  if (workbook.sheets.some((one) => one.name.toLowerCase() === name.toLowerCase()))
    throw new FileFault(`Cannot add the sheet ${name}: the workbook has one of that name: choose another`);
  const xml = draft.text(workbook.part);
  refuseLocked(xml, name);
  const part = draft.freePart(`${folder}worksheets/`, "sheet", "xml");
  const id = draft.add(part, sheetXml(workbook.namespace, sheet), SHEET_TYPE, workbook.part, "worksheet");
  const [list] = childrenOf(xml, rootOf(xml)).filter((one) => localName(one.name) === "sheets");
  if (!list) throw new FileFault("Cannot add a sheet: the list of sheets in this file is damaged: open it in Excel and save it again");
  const sheets = childrenOf(xml, list);
  const number = sheets.reduce((most, one) => Math.max(most, Number(attributeOf(xml, one, "sheetId")) || 0), 0) + 1;
  const state = isHidden ? ' state="hidden"' : "";
  const entry = `<${prefixOf(xml)}sheet name="${encodeAttribute(name)}" sheetId="${number}"${state} ${linkName(xml, sheets[0]?.start ?? 0)}="${id}"/>`;
  draft.write(workbook.part, edited(xml, [appending(list, entry)]));
  if (print) draft.write(workbook.part, withPrintArea(draft.text(workbook.part), name, print, position));
  return part;
}

function refuseLocked(xml: string, name: string): void {
  for (const tag of elements(xml, (one) => localName(one) === "workbookProtection"))
    if (isOn(tag.attribute("lockStructure")))
      throw new FileFault(`Cannot add the sheet ${name}: the workbook's structure is protected: take the protection off in Excel first (Review, Protect Workbook)`);
}

/** The attribute that leads from a sheet's entry to its part stands under whatever prefix the file has for it. */
function linkName(xml: string, entryStart: number): string {
  const tags = new Tags(xml, entryStart);
  tags.next();
  return tags.attributes().find(({ name }) => name.endsWith(":id"))?.name ?? "r:id";
}

function sheetXml(namespace: string, { columnWidths = [], cells, print }: AddedSheet): string {
  const columns = columnWidths.map((width, i) => `<col min="${i + 1}" max="${i + 1}" width="${width + MARGIN}" customWidth="1"/>`).join("");
  // No program makes a row as high as its text when it opens the file.
  const heights = rowHeights(cells.map(({ cell, value, wraps, merge, look }) => ({ cell, text: String(value ?? ""), ...(wraps && { wraps }), ...(merge !== undefined && { merge }), ...(look && { look }) })), columnWidths);
  const rows = [...heights].sort(([a], [b]) => a - b).map(([row, height]) => `<row r="${row}" ht="${height}" customHeight="1"/>`);
  const merges = cells.flatMap(({ merge }) => (merge === undefined ? [] : [`<mergeCell ref="${merge}"/>`]));
  return (
    `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n<worksheet xmlns="${namespace}">` +
    (print?.fitsOnePage ? '<sheetPr><pageSetUpPr fitToPage="1"/></sheetPr>' : "") +
    '<sheetViews><sheetView showGridLines="0" workbookViewId="0"/></sheetViews><sheetFormatPr defaultRowHeight="15"/>' +
    (columns && `<cols>${columns}</cols>`) +
    `<sheetData>${rows.join("")}</sheetData>` +
    (merges.length > 0 ? `<mergeCells count="${merges.length}">${merges.join("")}</mergeCells>` : "") +
    '<pageMargins left="0.6" right="0.6" top="0.6" bottom="0.6" header="0.3" footer="0.3"/>' +
    (print ? `<pageSetup${print.paper === undefined ? "" : ` paperSize="${PAPERS[print.paper]}"`} orientation="${print.orientation}"${print.fitsOnePage ? ' fitToWidth="1" fitToHeight="1"' : ""}/>` : "") +
    "</worksheet>"
  );
}

function withPrintArea(xml: string, name: string, { area }: PrintSetup, position: number): string {
  const x = prefixOf(xml);
  const range = readArea(area);
  if (!range) throw new FileFault(`Cannot print ${area} of the sheet ${name}: name a range, such as A1:F40`);
  const fixed = areaText(range).replace(/([A-Z]+)(\d+)/g, "$$$1$$$2");
  const target = encodeText(`'${name.replaceAll("'", "''")}'!${fixed}`);
  const item = `<${x}definedName name="_xlnm.Print_Area" localSheetId="${position}">${target}</${x}definedName>`;
  const parts = childrenOf(xml, rootOf(xml));
  const list = parts.find((one) => localName(one.name) === "definedNames");
  if (list) return edited(xml, [appending(list, item)]);
  const before = ["sheets", "functionGroups", "externalReferences"];
  const at = parts.filter((one) => before.includes(localName(one.name))).at(-1)?.end ?? rootOf(xml).closeStart;
  return edited(xml, [{ start: at, end: at, text: `<${x}definedNames>${item}</${x}definedNames>` }]);
}
