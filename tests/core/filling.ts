import type { Expression } from "../../src/core/expression/expression";
import { type Fill, type FastInputs, fast } from "../../src/core/expression/fast";

/** A column that lies in an array already. */
export const filling =
  (numbers: Float64Array): Fill =>
  (into, start, count) => {
    const rows = numbers.subarray(start, start + count);
    into.set(rows);
    return rows.reduce((size, number) => Math.max(size, Math.abs(number)), 0);
  };

/** The fast reading of a formula as one long array. */
export function fastValues(expression: Expression, inputs: FastInputs, rows: number) {
  const values = new Float64Array(rows);
  const doubtful = fast(expression, inputs, rows, (results, start, count) => values.set(results.subarray(0, count), start));
  return { values, doubtful };
}
