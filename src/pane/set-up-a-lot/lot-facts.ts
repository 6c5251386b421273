import { massUnits } from "../../core/measure/mass";
import { matchOf } from "../../lots/list";
import { type LotFacts, type PlausibilityRemark, type Surroundings, plausibility } from "../../lots/plausible";
import { find } from "../../catalogue/catalogue";
import { type Figures, fractionOf } from "./figures";
import type { LotKey } from "./lot-keys";
import type { Known } from "./prefill";
import type { ReadLot } from "./read-lot";
import type { Located, Session } from "./session";
import { type Readings, sumOf } from "../../lots/net-weight";

/** What looks odd about the lot that is being set up. */
export function remarksOn(read: ReadLot, { net, fine, payout }: Figures, located: Located, known: Known, { today }: Session): readonly PlausibilityRemark[] {
  const { input, weights, terms } = read;
  const lot = input.lot && "value" in input.lot && typeof input.lot.value !== "object" ? input.lot.value : undefined;
  const price = terms.price && typeof terms.price.value === "number" ? { value: terms.price.value, unit: terms.price.unit ?? "ozt" } : undefined;
  const payable = terms.payable ? shareOf(terms.payable.value) : null;
  const facts: LotFacts = {
    ...(lot === undefined ? {} : { lot }),
    ...(read.date === undefined ? {} : { date: read.date }),
    ...(weights.gross ? { gross: sum(weights.gross) } : {}),
    ...(weights.tare ? { tare: sum(weights.tare) } : {}),
    ...(net ? { net } : {}),
    ...(read.fineness === undefined ? {} : { fineness: fractionOf(read.fineness) }),
    ...(read.stamp === undefined ? {} : { stamp: fractionOf(read.stamp) }),
    ...(fine === null ? {} : { fineWeight: { value: fine, unit: "ozt" } }),
    ...(price ? { price } : {}),
    ...(payable === null ? {} : { payable }),
    ...(payout === null ? {} : { payout }),
  };
  return plausibility(facts, surroundings(located, known, today));
}

const sum = (readings: Readings): { value: number; unit: string } => ({ value: sumOf(readings).toNumber(), unit: readings.unit });

const shareOf = (value: number | string): number | null => {
  const percent = typeof value === "string" ? /^([\d.]+)\s*%$/.exec(value)?.[1] : undefined;
  return percent !== undefined ? Number(percent) / 100 : typeof value === "number" ? value : null;
};

function surroundings({ match }: Located, { lots }: Known, today: Session["today"]): Surroundings {
  const unit = matchOf(match.matches, "price")?.unit?.symbol;
  const isKnown = unit !== undefined && unit !== null && massUnits.lookUp(unit) !== undefined;
  const prices = isKnown ? lots.flatMap((lot) => perOunce(lot.value("price"), unit)) : [];
  return { today, lots: lots.flatMap((lot) => lot.value("lot") ?? []), prices: prices.slice(-RECENT) };
}

const RECENT = 50;

function perOunce(price: number | string | null, unit: string): number[] {
  if (typeof price !== "number" || !(price > 0)) return [];
  const told = find("PRICE")?.call(price, unit, "ozt").value();
  return typeof told === "number" ? [told] : [];
}

/** The field of the form beside which a remark stands. */
export function besideField({ about }: PlausibilityRemark, shown: (key: LotKey) => boolean): LotKey | null {
  const keys = about.map((field): LotKey => (field === "net" || field === "fineWeight" ? "gross" : field === "payout" ? "price" : (field as LotKey)));
  return keys.find(shown) ?? null;
}
