import type { Outcome } from "./outcome";
import { modelOf } from "./model";
import { Book, sheetData } from "./book";

/**
 * What a formula gives beside the cells of a small sheet, each as it is typed; or, for an address, what that cell gives:
 * evaluate("A1", { A1: '=LOT.FINEWEIGHT(B1,"g",925)', B1: "100" }).
 */
export function evaluate(formula: string, cells: Readonly<Record<string, string>> = {}): Outcome {
  const workbook = new Book(modelOf({ sheets: [sheetData("sheet1", "Sheet1", cells)] }));
  return cells[formula] === undefined ? workbook.evaluate(formula) : workbook.outcome("Sheet1", formula);
}
