import { type FunctionResultObject, type Matrix, type Model, helpers } from "@odoo/o-spreadsheet";
import { sentence } from "../core/fault";
import type { Outcome, OutcomeCell } from "./outcome";
import { excelError, isErrorCode } from "./error-codes";
import { quietly } from "./quietly";
import { registerUnknownNames } from "./register";
import { reworded } from "./wording";

/** What a formula would give on a sheet of the grid; nothing is written. */
export function outcomeOf({ getters }: Model, sheetId: string, formula: string): Outcome {
  registerUnknownNames(formula);
  const result = quietly(() => getters.evaluateFormulaResult(sheetId, formula));
  return helpers.isMatrix(result) ? fromMatrix(result) : fromCell(result);
}

function fromMatrix(columns: Matrix<FunctionResultObject>): Outcome {
  const first = columns[0]?.[0];
  const isOne = columns.length === 1 && columns[0]?.length === 1;
  if (first && (isOne || columns.every((column) => column.every(({ value }) => isErrorCode(value))))) return fromCell(first);
  return (columns[0] ?? []).map((_, row) => columns.map((column) => fromCell(column[row] ?? { value: null })));
}

function fromCell({ value, message }: FunctionResultObject): OutcomeCell {
  if (isErrorCode(value)) return { error: excelError(value), message: reworded(String(message ?? "")) };
  // In a cell the grid sees to this itself.
  if (typeof value === "number" && !Number.isFinite(value)) return { error: "#NUM!", message: sentence({ kind: "not-finite", what: "the result" }) };
  return value;
}
