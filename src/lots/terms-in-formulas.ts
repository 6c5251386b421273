import { literalText } from "../functions/reader";
import type { ShopTerms } from "./lot-formula";
import { cellText } from "./operands";
import type { Shop, ShopFieldId, ShopValue } from "./shop";

/** What the shop has told, as it stands in the formulas of a lot on this sheet. */
export function termsInFormulas(shop: Shop, sheet: string): ShopTerms {
  const text = (field: ShopFieldId): string | undefined => {
    const told = shop[field];
    return told === undefined ? undefined : written(told, sheet);
  };
  const bar = shop.copperBar?.unit;
  const [barWeight, stub, copperAllowance, acidStrength, acidExcess] = [text("copperBar"), text("copperStub"), text("copperAllowance"), text("acidStrength"), text("acidExcess")];
  return {
    ...(copperAllowance === undefined ? {} : { copperAllowance }),
    ...(barWeight === undefined || bar === undefined ? {} : { barWeight, barUnit: bar }),
    ...(stub === undefined ? {} : { stub }),
    ...(acidStrength === undefined ? {} : { acidStrength }),
    ...(acidExcess === undefined ? {} : { acidExcess }),
  };
}

function written(told: ShopValue, sheet: string): string {
  if ("cell" in told) return cellText(told, sheet);
  return typeof told.value === "number" ? String(told.value) : literalText(told.value);
}
