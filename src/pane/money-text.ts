import type { Notation } from "./notation";

/** Money as the sheet will show it. */
export function moneyText(value: number, currency: string | undefined, { decimal }: Pick<Notation, "decimal">, decimals = 2): string {
  const sign = (currency ?? "").trim();
  return `${value < 0 ? "−" : ""}${sign}${/\p{L}$/u.test(sign) ? "\u00a0" : ""}${grouped(Math.abs(value).toFixed(decimals), decimal)}`;
}

export const weightText = (value: number, unit: string, notation: Pick<Notation, "decimal">): string => grouped(value.toFixed(unit === "g" ? 2 : unit === "kg" ? 5 : 3), notation.decimal);

function grouped(text: string, decimal: Notation["decimal"]): string {
  const [whole = "", rest] = text.split(".");
  const thousands = whole.replace(/(?<=\d)(?=(?:\d{3})+$)/g, decimal === "." ? "," : "\u202f");
  return rest === undefined ? thousands : `${thousands}${decimal}${rest}`;
}
