import type { ListedLot } from "./listed-lot";
import { short } from "./reconcile-contradiction";

type Scaled = "fineness" | "payable" | "recovery";

/** Why a number cannot be on the scale of its column; null where it can, or where nothing is known. */
export function offScale(lot: ListedLot, field: Scaled): string | null {
  const [held, symbol] = [lot.value(field), lot.cell(field)?.match.unit?.symbol];
  if (typeof held !== "number" || held === 0) return null;
  return field === "fineness" ? finenessOff(held, symbol ?? null) : shareOff(held, symbol ?? null);
}

function finenessOff(held: number, symbol: string | null): string | null {
  switch (symbol) {
    case "ppt":
      if (held < 0 || held > 1000) return `${short(held)} is no fineness in ‰: it must be from 0 to 1000`;
      return held <= 100 ? `${short(held)} stands in a column of parts per thousand: ${held <= 1 ? `it looks like a fraction, and would be ${short(held * 1000)}` : `a percentage would be ${short(held * 10)}`}` : null;
    case "%":
      if (held > 100) return `${short(held)} stands in a column of percentages: ${held <= 1000 ? `parts per thousand would be ${short(held / 10)}` : "it is no fineness"}`;
      return held <= 1 ? `${short(held)} stands in a column of percentages: a fraction would be ${short(held * 100)}` : null;
    case "fraction":
      return held < 0 || held > 1 ? `${short(held)} stands in a column of fractions: write it as a number from 0 to 1` : null;
    case "karat":
      return held < 0 || held > 24 ? `${short(held)} stands in a column of karats: it must be from 0 to 24` : null;
    default:
      return null;
  }
}

/** No share of a lot is as small as one in a hundred, nor half as much again as all of it. */
function shareOff(held: number, symbol: string | null): string | null {
  if (symbol === "fraction") return held > 1.5 ? `${short(held)} stands in a column of shares from 0 to 1: a percentage would be ${short(held / 100)}` : null;
  if (symbol === "%") return held > 0 && held <= 1 ? `${short(held)} stands in a column of percentages: a share would be ${short(held * 100)}` : null;
  return null;
}
