import { lotNames } from "../formulas/lot-calls";
import type { ListedLot } from "./listed-lot";
import type { ColumnMatch } from "./list";
import { plausibility } from "./plausible";
import type { Compared } from "./reconcile-agreement";
import { type Contradiction, about } from "./reconcile-contradiction";
import { type Terms, fineOf, payoutOverFine, possibleTerms, settlementLines } from "./reconcile-settlement";
import type { Shop } from "./shop";

/** To how many decimals a shop settles: to the cent, unless its payouts are all whole. */
export const moneyPlaces = (usual: number): number => (usual === 0 ? 0 : 2);

/** A payout against the terms of its row, or of the shop where it has none. One that is a formula of ours follows from what that formula names. */
export function comparedPayout(lot: ListedLot, matches: readonly ColumnMatch[], shop: Shop, places: number): Compared | null {
  const [cell, held] = [lot.cell("payout"), lot.value("payout")];
  if (!cell || typeof held !== "number" || lotNames(cell.reading.formula ?? "").length > 0) return null;
  const possible = possibleTerms(lot, matches, shop);
  if (typeof possible === "string") return null;
  let likeliest: { readonly amount: number; readonly terms: Terms } | null = null;
  for (const terms of possible)
    // Over the row's own fine weight, which may be rounded, or over the scale's readings: either is the agreement.
    for (const amountOf of [payoutOverFine, payoutOverNet]) {
      const amount = amountOf(lot, terms, places);
      if (amount === null) continue;
      if (isWithin(held, amount, places)) return { kind: "payout", what: "payouts", ...about(lot, cell), agrees: true, sentence: "" };
      likeliest ??= { amount, terms };
    }
  if (!likeliest) return null;
  const { amount, terms: { fromShop } } = likeliest;
  const terms = fromShop.length === 0 ? "The terms of its row give" : `The terms of its row, with the shop’s ${fromShop.join(", ")}, give`;
  return { kind: "payout", what: "payouts", ...about(lot, cell), agrees: false, sentence: `${terms} ${money(amount, places)}, and payout says ${money(held, places)}, ${differenceText(held - amount, places)}` };
}

const payoutOverNet = (lot: ListedLot, terms: Terms, places: number): number | null => settlementLines(lot, terms, places)?.at(-1)?.amount ?? null;

/** Where the terms cannot be computed, a payout above all of the metal's value is still one that cannot be. */
export function payoutAboveMetal(lot: ListedLot): Contradiction | null {
  const [cell, payout, price] = [lot.cell("payout"), lot.value("payout"), lot.value("price")];
  const fine = fineOf(lot);
  const unit = lot.cell("price")?.match.unit?.symbol;
  if (!cell || typeof payout !== "number" || payout <= 0 || !fine || typeof price !== "number" || !unit) return null;
  const [remark] = plausibility({ payout, fineWeight: fine, price: { value: price, unit } }, { today: { year: 9999, month: 12, day: 31 }, lots: [], prices: [] });
  return remark ? { kind: "payout", ...about(lot, cell), sentence: remark.sentence } : null;
}

/** A payout that its formula leaves unrounded is the amount that it rounds to. */
const isWithin = (held: number, amount: number, places: number): boolean => Math.abs(held - amount) <= (10 ** -places / 2) * (1 + 1e-6) + Math.abs(amount) * 1e-12;

const money = (value: number, places: number): string => value.toFixed(Math.max(places, 2));

const differenceText = (difference: number, places: number): string => `${Math.abs(difference).toFixed(Math.max(places, 2))} too ${difference > 0 ? "much" : "little"}`;
