import type { CellPosition, Model } from "@odoo/o-spreadsheet";
import type { CellReading } from "./outcome";
import { reworded } from "./wording";
import { excelError } from "./error-codes";

/** A cell of the grid, with the errors as Excel names them. */
export function readCell({ getters }: Model, position: CellPosition): CellReading {
  const cell = getters.getCell(position);
  const shown = getters.getEvaluatedCell(position);
  const formula = cell?.isFormula ? cell.compiledFormula.toFormulaString(getters) : null;
  if (shown.type !== "error") return { value: shown.value, formula, error: false };
  return { value: excelError(shown.value), formula, error: true, ...(shown.message ? { message: reworded(String(shown.message)) } : {}) };
}
