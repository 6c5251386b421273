import { dayText } from "../../lots/calendar";
import type { FieldId } from "../../lots/fields";
import type { ListedLot } from "../../lots/listed-lot";
import { nextPaperNumber } from "../../lots/paper-number";
import type { Shop, ShopFieldId, ShopValue } from "../../lots/shop";
import { cellRange, writtenRange } from "../../workbook/cell-range";
import { type Notation, writtenNumber } from "../notation";
import type { Entered } from "./memory";
import type { QuoteKey } from "./quote-keys";
import type { Session } from "./session";

/** What stands in a field before anybody writes, and where it comes from. */
export interface Prefill extends Entered {
  readonly from?: string;
}

/** What the lot and the shop say already. */
export function prefills({ shop, quotes, today }: Session, lot: ListedLot | null, notation: Notation): ReadonlyMap<QuoteKey, Prefill> {
  const series = shop.quoteNumber && "value" in shop.quoteNumber ? shop.quoteNumber.value : undefined;
  const found = new Map<QuoteKey, Prefill>([
    ["number", { text: String(nextPaperNumber("Quote", series, quotes, today)) }],
    ["date", { text: dayText(today) }],
    ["payment", { text: "money" }],
    ["metalUnit", { text: "ozt" }],
    ...termsPrefilled(shop, lot, notation),
  ]);
  return found;
}

/** The goods and the terms, as the lot has them, else as the shop usually has them. */
export function termsPrefilled(shop: Shop, lot: ListedLot | null, notation: Notation): Map<QuoteKey, Prefill> {
  const found = new Map<QuoteKey, Prefill>();
  for (const [key, field] of SHOP_FIELDS) {
    const told = shop[field];
    if (told) found.set(key, { text: toldText(told, key, notation), ...(PER_MASS.has(key) ? { unit: told.unit ?? "ozt" } : {}), from: "From The shop." });
  }
  if (!lot) return found;
  const from = "As the lot has it.";
  for (const [key, field] of [["client", "client"], ["goods", "description"], ["basis", "finenessBasis"]] as const) {
    const value = lot.value(field);
    if (value !== null) found.set(key, { text: String(value), from });
  }
  const weight = netWeight(lot);
  if (weight) found.set("weight", { text: writtenNumber(weight.value, notation), unit: weight.unit, from });
  for (const key of ["likely", "price", "payable", "refiningCharge", "treatmentCharge", "lotCharges", "deduction"] as const) {
    const written = writtenAs(lot, key === "likely" ? "fineness" : key, notation);
    if (written) found.set(key, { ...written, from });
  }
  return found;
}

const SHOP_FIELDS: readonly (readonly [QuoteKey, ShopFieldId])[] = [
  ["price", "price"], ["swing", "priceSwing"], ["payable", "payable"], ["refiningCharge", "refiningCharge"],
  ["treatmentCharge", "treatmentCharge"], ["lotCharges", "lotCharges"], ["deduction", "deduction"], ["days", "quoteDays"],
];
const PER_MASS: ReadonlySet<QuoteKey> = new Set(["price", "refiningCharge", "treatmentCharge"]);

function toldText(told: ShopValue, key: QuoteKey, notation: Notation): string {
  if ("cell" in told) {
    const range = cellRange(told.sheet, told.cell);
    return range ? writtenRange(range, null) : "";
  }
  if (typeof told.value === "string") return told.value;
  return `${writtenNumber(told.value, notation)}${key === "deduction" && told.value > 0 ? "‰" : ""}`;
}

/** The net weight, or gross less tare where the list has no column for it. */
function netWeight(lot: ListedLot): { readonly value: number; readonly unit: string } | null {
  const [net, gross, tare] = [lot.weight("net"), lot.weight("gross"), lot.weight("tare")];
  if (net || !gross) return net;
  if (!tare) return lot.value("tare") === null ? gross : null;
  return tare.unit === gross.unit ? { value: Number((gross.value - tare.value).toPrecision(12)), unit: gross.unit } : null;
}

/** Signs by the scale of a column. */
const SIGNS: Readonly<Record<string, string>> = { "%": "%", karat: "k" };

/** What a cell of the list holds, so that it means the same outside of its column. */
function writtenAs(lot: ListedLot, field: FieldId, notation: Notation): Entered | null {
  const value = lot.value(field);
  if (value === null) return null;
  if (typeof value === "string") return { text: value };
  const symbol = lot.cell(field)?.match.unit?.symbol ?? null;
  const text = writtenNumber(value, notation);
  if (PER_MASS.has(field as QuoteKey)) return { text, unit: symbol ?? "ozt" };
  if (field === "payable" && symbol !== "%") return { text: `${writtenNumber(Number((value * 100).toPrecision(12)), notation)}%` };
  if (field === "deduction") return { text: value === 0 ? "" : `${text}${symbol === "%" ? "%" : "‰"}` };
  return { text: `${text}${field === "lotCharges" ? "" : (SIGNS[symbol ?? ""] ?? "")}` };
}
