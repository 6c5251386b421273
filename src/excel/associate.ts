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
  if (Array.isArray(cell)) return cell.some(holdsObject) ? cell.map(plain) : cell;
  return typeof cell === "object" && cell !== null && "basicValue" in cell ? cell.basicValue : cell;
}

const holdsObject = (cell: unknown): boolean =>
  Array.isArray(cell) ? cell.some(holdsObject) : typeof cell === "object" && cell !== null;

/** A long column is mostly rows that Excel takes as they are. */
const excelRow = (row: readonly CellValue[]): readonly ExcelValue[] => (row.every(isExcelValue) ? row : row.map(excelValue));

const isExcelValue = (value: CellValue): value is string | number | boolean =>
  typeof value === "number" ? Number.isFinite(value) : typeof value !== "object";

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
