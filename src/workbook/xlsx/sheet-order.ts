import { insertingInOrder, prefixOf } from "./children";
import { relationshipTypes } from "./package";
import { edited } from "./xml-edits";

/** What may follow the rows of a sheet, in the order that Excel insists on. */
export const AFTER_ROWS = [
  "sheetData", "sheetCalcPr", "sheetProtection", "protectedRanges", "scenarios", "autoFilter", "sortState", "dataConsolidate", "customSheetViews",
  "mergeCells", "phoneticPr", "conditionalFormatting", "dataValidations", "hyperlinks", "printOptions", "pageMargins", "pageSetup", "headerFooter",
  "rowBreaks", "colBreaks", "customProperties", "cellWatches", "ignoredErrors", "smartTags", "drawing", "legacyDrawing", "legacyDrawingHF", "picture",
  "oleObjects", "controls", "webPublishItems", "tableParts", "extLst",
];

/** A sheet that points at a part of its own: its drawing, or the boxes of its notes. */
export function pointingAt(sheet: string, name: "drawing" | "legacyDrawing", id: string, isStrict: boolean): string {
  const namespace = relationshipTypes(isStrict).slice(0, -1);
  const child = `<${prefixOf(sheet)}${name} xmlns:r="${namespace}" r:id="${id}"/>`;
  return edited(sheet, [insertingInOrder(sheet, AFTER_ROWS, name, child)]);
}
