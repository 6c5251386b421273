import { calls } from "../catalogue/calls";
import type { Call } from "../catalogue/entry";
import { type ErrorCode, FaultError, errorCode } from "../core/fault";
import type { CellValue } from "../functions/answer";

/**
 * Ties every function to its id. Microsoft's bundler plug-in would tie the functions themselves, and Excel would then
 * show #VALUE! without our sentence.
 */
export function associate(): void {
  // Without Excel around it the page has no such object, and there is nothing to tie.
  if (typeof CustomFunctions === "undefined") return;
  for (const [id, call] of Object.entries(calls)) CustomFunctions.associate(id, cellFunction(call));
}

type CellFunction = (...cells: unknown[]) => CellValue | CellValue[][];

/** A function as Excel calls it: with cells, then one argument more about the call. */
export function cellFunction({ call, arity }: Call): CellFunction {
  return (...cells) => {
    try {
      return finite(call(...cells.slice(0, arity).map(plain)).value());
    } catch (error) {
      throw excelError(error);
    }
  };
}

/** A cell that holds a data type, such as a currency value, comes as an object around its plain value. */
function plain(cell: unknown): unknown {
  if (Array.isArray(cell)) return cell.map(plain);
  return typeof cell === "object" && cell !== null && "basicValue" in cell ? cell.basicValue : cell;
}

/** Excel turns NaN and Infinity into errors without a word. */
function finite(result: CellValue | CellValue[][]): CellValue | CellValue[][] {
  const bad = [result].flat(2).find((value) => typeof value === "number" && !Number.isFinite(value));
  if (bad !== undefined) throw new FaultError({ kind: "not-finite", what: "the result" });
  return result;
}

const OURS = "Lotwright itself failed here: report this formula together with what =LOT.VERSION() shows";

function excelError(error: unknown): CustomFunctions.Error {
  return error instanceof FaultError ? cellError(errorCode(error.fault), error.message) : cellError("#VALUE!", OURS);
}

function cellError(code: ErrorCode, message: string): CustomFunctions.Error {
  const codes: Record<ErrorCode, CustomFunctions.ErrorCode> = {
    "#VALUE!": CustomFunctions.ErrorCode.invalidValue,
    "#N/A": CustomFunctions.ErrorCode.notAvailable,
  };
  return new CustomFunctions.Error(codes[code], message);
}
