import { type AddFunctionDescription, type Arg, helpers, registries } from "@odoo/o-spreadsheet";
import Decimal from "decimal.js";

const MODES: Readonly<Record<string, Decimal.Rounding>> = {
  ROUND: Decimal.ROUND_HALF_UP,
  ROUNDUP: Decimal.ROUND_UP,
  ROUNDDOWN: Decimal.ROUND_DOWN,
};

/**
 * The grid rounds binary numbers, so that ROUND(1.005,2) is 1. Excel rounds the fifteen digits that it shows, as a
 * person would with pencil and paper: 1.01. A statement must not be a cent off from one program to the other.
 */
export function roundAsExcel(): void {
  for (const [name, mode] of Object.entries(MODES)) {
    const own: AddFunctionDescription = registries.functionRegistry.get(name);
    registries.functionRegistry.replace(name, {
      ...own,
      compute(value, places = { value: 0 }) {
        const number = helpers.toNumber(single(value), this.locale);
        const format = single(value)?.format;
        return { value: rounded(number, Math.trunc(helpers.toNumber(single(places), this.locale)), mode), ...(format === undefined ? {} : { format }) };
      },
    });
  }
}

/** The grid calls these functions with one value at a time. */
const single = (arg: Arg) => (helpers.isMatrix(arg) ? arg[0]?.[0] : arg);

const SHOWN_DIGITS = 15;
/** Beyond these places a number has nothing left to round. */
const MOST_PLACES = 400;

function rounded(number: number, places: number, mode: Decimal.Rounding): number {
  if (!Number.isFinite(number) || places > MOST_PLACES) return number;
  if (places < -MOST_PLACES) return 0;
  return new Decimal(number.toPrecision(SHOWN_DIGITS)).toNearest(new Decimal(10).pow(-places), mode).toNumber() + 0;
}
