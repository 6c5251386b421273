import type { Notation } from "../notation";

/** For the eye alone: nothing is computed on with it. Money keeps its last noughts. */
export function shownNumber(value: number, decimals: number, { decimal }: Notation, isMoney = false): string {
  const text = value.toFixed(decimals);
  return (isMoney || !text.includes(".") ? text : text.replace(/\.?0+$/, "")).replace(".", decimal);
}
