import { FaultError } from "../core/fault";
import { aboveZero, aboveZeroToTenThousand, fromOne, fromZero, perThousand, share, shareAboveZero, shareBelowOne, shareUpToTen, strengthReader, wholeNumber } from "../functions/read";
import type { Reader } from "../functions/reader";
import { type ShopField, isNumber } from "./shop-fields";
import type { ShopFieldId, ShopKind, ShopValue } from "./shop";

/** The sentence that a cell function would give for it, or null where it will do. What a cell holds is read when it is used. */
export function shopFault({ id, title, kind }: ShopField, told: ShopValue): string | null {
  if ("cell" in told) return isNumber(kind) ? null : `Cannot use a cell for ${title.toLowerCase()}: write it here`;
  const { value } = told;
  if (kind === "paper") return value === "letter" || value === "A4" ? null : "Choose letter or A4";
  if (kind === "number series") return /\d/.test(String(value)) ? null : `Cannot count on from ${String(value)}: it needs a number in it, such as Q-2026-001`;
  const reader = OF_FIELD[id] ?? OF_KIND[kind];
  return reader ? faultOf(reader, value, title) : null;
}

/** What any text will do for has none. */
const OF_KIND: Readonly<Partial<Record<ShopKind, Reader>>> = {
  days: wholeNumber,
  share: share,
  "per thousand": perThousand,
  "per mass": fromZero,
  money: fromZero,
  mass: aboveZero,
  volume: aboveZero,
  strength: strengthReader,
  "grams per litre": aboveZero,
  "per hour": aboveZeroToTenThousand,
  hours: aboveZero,
  ppm: aboveZero,
  factor: fromOne,
  amperes: aboveZero,
  volts: aboveZero,
};

/** Bounds of the function that takes it. */
const OF_FIELD: Readonly<Partial<Record<ShopFieldId, Reader>>> = {
  acidExcess: shareUpToTen,
  copperAllowance: shareUpToTen,
  saltExcess: shareUpToTen,
  copperStub: shareBelowOne,
  pailFill: shareAboveZero,
  cellEfficiency: shareAboveZero,
  settleHours: fromZero,
};

function faultOf(reader: Reader, value: number | string, title: string): string | null {
  try {
    reader.read(value, title.toLowerCase());
    return null;
  } catch (thrown) {
    if (thrown instanceof FaultError) return thrown.message;
    throw thrown;
  }
}
