/** Format codes in en-US form. */

/** As many decimals as the numbers have, but no fewer than `least` and no more than `most`. */
export function decimalsOf(numbers: readonly number[], least: number, most: number): number {
  const held = numbers.map((number) => /\.(\d+)$/.exec(String(Number(number.toFixed(most))))?.[1]?.length ?? 0);
  return Math.max(least, ...held);
}

const digits = (whole: string, decimals: number): string => (decimals === 0 ? whole : `${whole}.${"0".repeat(decimals)}`);

export const plainFormat = (decimals: number): string => digits("#,##0", decimals);

export const percentFormat = (share: number): string => `${digits("0", decimalsOf([Number((share * 100).toPrecision(12))], 0, 4))}%`;

/** With the shop's sign before it; letters stand apart from the number. */
export function moneyFormat(currency: string | undefined, decimals = 2): string {
  const sign = (currency ?? "").replaceAll('"', "").trim();
  if (sign === "") return plainFormat(decimals);
  return `"${sign}${/\p{L}$/u.test(sign) ? " " : ""}"${plainFormat(decimals)}`;
}

export const DAY_FORMAT = "yyyy-mm-dd";
