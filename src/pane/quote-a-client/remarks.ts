import { readFineness } from "../../core/measure/fineness";
import { FaultError } from "../../core/fault";
import { massUnits } from "../../core/measure/mass";
import type { FieldId } from "../../lots/fields";
import type { ListedLot } from "../../lots/listed-lot";
import { type LotFacts, plausibility } from "../../lots/plausible";
import { readTerms } from "../../lots/quote-figures";
import type { QuoteKey } from "./quote-keys";
import type { Shown } from "./preview";
import type { Session } from "./session";

/** What looks odd about an offer, by the field that it is about. None of it blocks anything. */
export function remarksOf({ offer, figures }: Shown, number: string, { lots, quotes, today }: Session): ReadonlyMap<QuoteKey, string> {
  const facts: LotFacts = {
    net: offer.weight,
    ...fractionOf(offer.likely),
    fineWeight: { value: figures.fine[1], unit: "ozt" },
    price: offer.terms.price,
    payable: readTerms(offer).payable,
    payout: figures.quoted.payouts[1],
  };
  const remarks = new Map<QuoteKey, string>();
  for (const { about, sentence } of plausibility(facts, { today, lots: [], prices: earlierPrices(lots) })) {
    const key = about.flatMap((field) => KEYS[field] ?? [])[0];
    if (key && !remarks.has(key)) remarks.set(key, sentence);
  }
  if (quotes.some((quote) => String(quote.number).trim().toLowerCase() === number.trim().toLowerCase())) remarks.set("number", `Quote ${number} is in the workbook already: two quotes under one number cannot be told apart`);
  return remarks;
}

const KEYS: Readonly<Partial<Record<FieldId, QuoteKey>>> = { net: "weight", fineness: "likely", fineWeight: "weight", price: "price", payable: "payable", payout: "lotCharges" };

function fractionOf(fineness: number | string): Pick<LotFacts, "fineness"> {
  try {
    return { fineness: readFineness(fineness, "fineness").fraction.toNumber() };
  } catch (thrown) {
    if (thrown instanceof FaultError) return {};
    throw thrown;
  }
}

/** Per troy ounce. */
function earlierPrices(lots: readonly ListedLot[]): number[] {
  const ounce = massUnits.find("ozt", "unit").size;
  return lots.flatMap((lot) => {
    const value = lot.value("price");
    const size = massUnits.lookUp(lot.cell("price")?.match.unit?.symbol ?? "ozt")?.size;
    return typeof value === "number" && value > 0 && size ? [value * ounce.over(size).toNumber()] : [];
  });
}
