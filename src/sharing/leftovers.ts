import { lotNames } from "../formulas/lot-calls";
import type { XlsxFile } from "../workbook/file";

const STORED = "_xldudf_LOT_";

/** What of our functions is in a file outside its cells: names, rules of formats, lists of allowed entries. */
export function leftovers(file: XlsxFile): string[] {
  const names = file.definedNames.filter(({ formula }) => lotNames(formula).length > 0).map(({ name }) => `The name ${name} stands for a LOT formula, which shows #NAME? without the add-in: put the formula into a cell and let the name stand for that cell`);
  const rules = file.sheets
    .filter(({ name }) => file.text(name).includes(STORED))
    .map(({ name }) => `A rule on the sheet ${name} (a format that depends on a condition, or a list of allowed entries) uses a LOT formula, which does nothing without the add-in: let it look at a cell instead`);
  return [...names, ...rules];
}
