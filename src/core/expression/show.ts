import type Decimal from "decimal.js";
import type { Ratio } from "./ratio";

const DIGITS = 12;

/** A number as a working shows it: all its digits when there are few, else twelve and a mark that more follow. */
export function show(value: Ratio): string {
  const exact = value.decimal();
  const shown = exact.toSignificantDigits(DIGITS);
  const text = plain(shown);
  return shown.eq(exact) ? text : `${text}…`;
}

const plain = (value: Decimal): string =>
  value.isZero() || (value.abs().gte("1e-7") && value.abs().lt("1e15")) ? value.toFixed() : value.toString();
