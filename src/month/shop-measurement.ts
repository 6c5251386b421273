import { massUnits } from "../core/measure/mass";
import type { Shop, ShopFieldId } from "../lots/shop";
import type { SheetReading } from "../lots/sheet-reading";
import { readAddress } from "../workbook/xlsx/address";
import type { Measurement } from "./month-input";

/** What the shop has told of its scale and its assays; what it has not is absent. */
export type KnownMeasurement = { readonly [K in "scale" | "assay" | "bias"]?: Measurement[K] };

/** Values are taken, not references: a month that is closed does not change with the shop's settings. */
export function shopMeasurement(shop: Shop, sheets: readonly SheetReading[]): KnownMeasurement {
  const scale = held(shop, "scale", sheets);
  const unit = massUnits.lookUp(shop.scale?.unit ?? "")?.symbol;
  const scaleValue = typeof scale === "number" ? scale : readPlain(String(scale ?? ""));
  const assay = readPerThousand(held(shop, "assay", sheets) ?? "");
  const bias = readShare(held(shop, "scaleBias", sheets) ?? "");
  return {
    ...(scaleValue === null || unit === undefined ? {} : { scale: { value: scaleValue, unit } }),
    ...(assay === null ? {} : { assay }),
    ...(bias === null ? {} : { bias }),
  };
}

function held(shop: Shop, field: ShopFieldId, sheets: readonly SheetReading[]): number | string | null {
  const value = shop[field];
  if (!value) return null;
  if ("value" in value) return value.value;
  const sheet = sheets.find(({ info }) => info.name === value.sheet);
  const spot = readAddress(value.cell);
  const found = sheet && spot ? sheet.at(spot.row, spot.column).value : null;
  return typeof found === "boolean" ? null : found;
}

/** A number from 0 up, with a point or a comma before its decimals; null for anything else. */
export function readPlain(text: string): number | null {
  return /^\d+(?:[.,]\d+)?$/.test(text.trim()) ? Number(text.trim().replace(",", ".")) : null;
}

/** A share: 0.05 or 5 %. */
export function readShare(written: number | string): number | null {
  if (typeof written === "number") return written >= 0 && written <= 1 ? written : null;
  const [, digits, sign] = /^([\d.,]+)\s*([%‰])?$/.exec(written.trim()) ?? [];
  const number = digits === undefined ? null : readPlain(digits);
  const share = number === null ? null : scaled(number, sign === "%" ? 100 : sign === "‰" ? 1000 : 1);
  return share !== null && share <= 1 ? share : null;
}

/** Parts per thousand: 1, 1‰ or 0.1 %. */
export function readPerThousand(written: number | string): number | null {
  if (typeof written === "number") return written >= 0 && written <= 1000 ? written : null;
  const text = written.trim();
  if (text.endsWith("%")) {
    const share = readShare(text);
    return share === null ? null : Number((share * 1000).toPrecision(15));
  }
  const number = readPlain(text.replace(/\s*‰$/, ""));
  return number !== null && number <= 1000 ? number : null;
}

const scaled = (number: number, parts: number): number => Number((number / parts).toPrecision(15));
