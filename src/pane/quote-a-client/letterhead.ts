import type { QuoteInput } from "../../lots/quote";
import type { Shop, ShopFieldId } from "../../lots/shop";
import { h } from "../dom";

const textOf = (shop: Shop, field: ShopFieldId): string | undefined => {
  const told = shop[field];
  return told && "value" in told && String(told.value) !== "" ? String(told.value) : undefined;
};
export const currencyOf = (shop: Shop): string | undefined => textOf(shop, "currency");

export function letterhead(shop: Shop): QuoteInput["shop"] {
  const [name, address, currency, paper] = [textOf(shop, "name"), textOf(shop, "address"), textOf(shop, "currency"), textOf(shop, "paper")];
  return { ...(name === undefined ? {} : { name }), ...(address === undefined ? {} : { address }), ...(currency === undefined ? {} : { currency }), ...(paper === "A4" || paper === "letter" ? { paper } : {}) };
}

/** What of the letterhead will be blank, and where to tell it. */
export function blanks(shop: Shop): HTMLElement | null {
  const missing = ([["name", "name"], ["address", "address"], ["currency", "sign of its money"]] as const).flatMap(([field, words]) => (textOf(shop, field) === undefined ? [words] : []));
  if (missing.length === 0) return null;
  const list = missing.length === 1 ? missing[0] : `${missing.slice(0, -1).join(", ")} and ${missing.at(-1) ?? ""}`;
  return h("p", { class: "lw-caution" }, `The shop’s ${list} will be blank on the paper: tell ${missing.length === 1 ? "it" : "them"} under The shop.`);
}
