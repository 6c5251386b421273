import { addFunction, type AddFunctionDescription, type Arg, type FunctionResultObject, type Matrix, helpers, registries } from "@odoo/o-spreadsheet";
import { NAMESPACE, catalogue } from "../catalogue/catalogue";
import type { Entry, Parameter } from "../catalogue/entry";
import { type Fault, FaultError, errorCode, sentence } from "../core/fault";
import type { CellValue } from "../functions/answer";
import { refuseDeepFormulas } from "./deep-formulas";
import { isErrorCode, registerErrors } from "./error-codes";
import { lotNames } from "../formulas/lot-calls";
import { unknownName } from "../formulas/nearest-name";
import { roundAsExcel } from "./rounding";
import { setWording } from "./wording";

/** Makes our functions known to every grid of this program. Must have run before the first one is made. */
export function registerFunctions(): void {
  if (isRegistered) return;
  isRegistered = true;
  registerErrors();
  setWording();
  roundAsExcel();
  refuseDeepFormulas();
  for (const entry of catalogue) addFunction(entry.name, described(entry));
}
let isRegistered = false;

/**
 * A name under our namespace that is none of ours is registered too, hidden, so that its cell shows #NAME? with the
 * nearest name instead of without a word.
 */
export function registerUnknownNames(formula: string): void {
  for (const name of lotNames(formula))
    if (!registries.functionRegistry.contains(name))
      addFunction(name, {
        description: unknownName(name),
        hidden: true,
        args: [helpers.arg("arguments (any, range<any>, optional, repeating)")],
        compute: () => ({ value: "#NAME?", message: unknownName(name) }),
      });
}

const described = (entry: Entry): AddFunctionDescription => ({
  description: entry.description,
  category: NAMESPACE,
  args: entry.parameters.map(argument),
  compute: (...args) => computed(entry, args),
});

function argument({ name, shape, optional, description, wants, otherwise }: Parameter) {
  const types = shape === "range" ? "any, range<any>" : "any";
  const unless = otherwise === null ? "" : `; ${otherwise} when left out`;
  return helpers.arg(`${name} (${types}${optional ? ", optional" : ""})`, `${description} It is ${wants}${unless}.`);
}

function computed({ name, arity, call }: Entry, args: readonly Arg[]): FunctionResultObject | Matrix<FunctionResultObject> {
  const error = args.map(firstError).find((found) => found !== undefined);
  if (error) return error;
  try {
    const cells = Array.from({ length: arity }, (_, i) => cellsOf(args[i]));
    const value = call(...cells).value();
    return Array.isArray(value) ? columns(value) : resultCell(value);
  } catch (fault) {
    if (fault instanceof FaultError) return faultCell(fault.fault);
    return { value: "#VALUE!", message: `Cannot compute ${name}: the fault is in Lotwright, please report it (${String(fault)})` };
  }
}

function firstError(arg: Arg): FunctionResultObject | undefined {
  const cells = helpers.isMatrix(arg) ? arg.flat() : [arg];
  return cells.find((cell) => isErrorCode(cell?.value));
}

/** The grid gives a range as columns of cells, ours are rows; what was left out is undefined there and null here. */
function cellsOf(arg: Arg): unknown {
  if (!helpers.isMatrix(arg)) return arg?.value ?? null;
  return (arg[0] ?? []).map((_, row) => arg.map((column) => column[row]?.value ?? null));
}

const columns = (rows: readonly (readonly CellValue[])[]): Matrix<FunctionResultObject> =>
  (rows[0] ?? []).map((_, column) => rows.map((row) => resultCell(row[column] ?? "")));

const resultCell = (value: CellValue): FunctionResultObject => (typeof value === "object" ? faultCell(value.fault) : { value });

const faultCell = (fault: Fault): FunctionResultObject => ({ value: errorCode(fault), message: sentence(fault) });
