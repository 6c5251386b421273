import { calls } from "../catalogue/calls";
import type { Call } from "../catalogue/entry";
import { type Fault, FaultError, errorCode, sentence } from "../core/fault";
import type { CellValue } from "../functions/answer";

/**
 * Ties every function to its id. Microsoft's bundler plug-in would tie the functions themselves, and Excel would then
 * show #VALUE! without our sentence. `called` is told of each call.
 */
export function associate(called: () => void): void {
  // Without Excel around it the page has no such object, and there is nothing to tie.
  if (typeof CustomFunctions === "undefined") return;
  for (const [id, call] of Object.entries(calls)) {
    const compute = cellFunction(call);
    CustomFunctions.associate(id, (...cells: unknown[]) => {
      called();
      return compute(...cells);
    });
  }
}

type ExcelValue = number | string | boolean | CustomFunctions.Error;

/** A function as Excel calls it: with cells, then one argument more about the call. */
export function cellFunction({ call, arity }: Call): (...cells: unknown[]) => ExcelValue | (readonly ExcelValue[])[] {
  return (...cells) => {
    try {
      const result = call(...cells.slice(0, arity).map(plain)).value();
      if (Array.isArray(result)) return result.map(excelRow);
      const value = excelValue(result);
      if (typeof value === "object") throw value;
      return value;
    } catch (error) {
      throw asCellError(error);
    }
  };
}

/** A cell that holds a data type, such as a currency value, comes as an object around its plain value. */
function plain(cell: unknown): unknown {
  if (Array.isArray(cell)) return holdsObjects(cell) ? cell.map(plain) : cell;
  return typeof cell === "object" && cell !== null && "basicValue" in cell ? cell.basicValue : cell;
}

/** A long column is mostly rows of numbers. Loops over indices: to hand a number to a function costs more than the question. */
function holdsObjects(cells: readonly unknown[]): boolean {
  for (let i = 0; i < cells.length; i++) {
    const cell = cells[i];
    if (Array.isArray(cell) ? holdsObjects(cell) : typeof cell === "object" && cell !== null) return true;
  }
  return false;
}

function excelRow(row: readonly CellValue[]): readonly ExcelValue[] {
  for (let i = 0; i < row.length; i++) {
    const value = row[i];
    if (typeof value === "object" || (typeof value === "number" && !Number.isFinite(value))) return row.map(excelValue);
  }
  return row as readonly ExcelValue[];
}

function excelValue(value: CellValue): ExcelValue {
  if (typeof value === "object") return cellError(value.fault);
  // Excel turns NaN and Infinity into errors without a word.
  return typeof value === "number" && !Number.isFinite(value) ? cellError({ kind: "not-finite", what: "the result" }) : value;
}

function cellError(fault: Fault): CustomFunctions.Error {
  const { invalidValue, notAvailable } = CustomFunctions.ErrorCode;
  return new CustomFunctions.Error({ "#VALUE!": invalidValue, "#N/A": notAvailable }[errorCode(fault)], sentence(fault));
}

function asCellError(error: unknown): CustomFunctions.Error {
  if (error instanceof CustomFunctions.Error) return error;
  if (error instanceof FaultError) return cellError(error.fault);
  return new CustomFunctions.Error(
    CustomFunctions.ErrorCode.invalidValue,
    "Lotwright itself failed here: report this formula together with what =LOT.VERSION() shows",
  );
}
