import type { CellReading } from "../port";
import type { Area } from "../xlsx/address";
import { rowsOf } from "./shape";

export const READ = ["values", "formulas", "valueTypes", "numberFormat"];

/** The cells of a range whose properties in READ are loaded. */
export function readings(range: Excel.Range, area: Area): CellReading[][] {
  const formulas = rowsOf<unknown>(range.formulas, area);
  const types = rowsOf<unknown>(range.valueTypes, area);
  const formats = rowsOf<unknown>(range.numberFormat, area);
  return rowsOf<unknown>(range.values, area).map((row, r) => row.map((value, c) => reading(value, formulas[r]?.[c], types[r]?.[c], String(formats[r]?.[c]))));
}

function reading(value: unknown, formula: unknown, type: unknown, format: string): CellReading {
  const written = typeof formula === "string" && formula.startsWith("=");
  return {
    value: type === "Empty" ? null : (value as CellReading["value"]),
    // Excel drops the apostrophe of a text such as '=A1 and gives it as value and formula alike.
    formula: written && formula !== value ? formula : null,
    error: type === "Error",
    ...(/^general$/i.test(format) ? {} : { numberFormat: format }),
  };
}
