import { registries } from "@odoo/o-spreadsheet";

/** Excel's errors that the grid does not know by itself: without them a test such as ISERROR takes them for text. */
const EXCEL_ERRORS = ["#VALUE!", "#REF!", "#CALC!", "#GETTING_DATA"];

export function registerErrors(): void {
  for (const code of EXCEL_ERRORS) registries.errorTypes.add(code);
}

/** The grid's own codes, as Excel would put them. */
const AS_EXCEL: ReadonlyMap<string, string> = new Map([
  ["#REF", "#REF!"],
  ["#ERROR", "#VALUE!"],
  ["#BAD_EXPR", "#VALUE!"],
  ["#CYCLE", "#VALUE!"],
]);

export const excelError = (code: string): string => AS_EXCEL.get(code) ?? code;

export const isErrorCode = (value: unknown): value is string => typeof value === "string" && registries.errorTypes.has(value);
