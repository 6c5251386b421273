import { Ratio } from "../core/expression/ratio";
import { round } from "../core/expression/rounding";

/** Whole cents, so that sums are exact. */
export type Cents = bigint;

/** An amount by its shortest text, to the cent, half away from zero. */
export const cents = (amount: number): Cents => BigInt(round(Ratio.of(amount), 2, "half away from zero").times(HUNDRED).decimal().toFixed(0));
const HUNDRED = Ratio.of(100);

/** 1234.50, in any language of the spreadsheet. */
export function centsText(amount: Cents): string {
  const digits = String(amount < 0n ? -amount : amount).padStart(3, "0");
  return `${amount < 0n ? "-" : ""}${digits.slice(0, -2)}.${digits.slice(-2)}`;
}

export const sumOf = (amounts: readonly Cents[]): Cents => amounts.reduce((sum, one) => sum + one, 0n);
