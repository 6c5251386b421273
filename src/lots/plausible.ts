import { massUnits } from "../core/measure/mass";
import { type Day, dayNumber, dayOf, dayText } from "./calendar";
import type { FieldId } from "./fields";

/** What is known of a lot, for looking at it with a sober eye. */
export interface LotFacts {
  readonly lot?: string | number;
  /** The day's number. */
  readonly date?: number;
  readonly gross?: Weight;
  readonly tare?: Weight;
  readonly net?: Weight;
  /** Parts of metal in one. */
  readonly fineness?: number;
  /** What the goods are stamped, in one. */
  readonly stamp?: number;
  readonly fineWeight?: Weight;
  readonly outturn?: Weight;
  readonly price?: { readonly value: number; readonly unit: string };
  readonly payable?: number;
  readonly payout?: number;
  readonly pails?: { readonly litres: number; readonly count: number; readonly holds: number; readonly fill: number };
}

export interface Weight {
  readonly value: number;
  readonly unit: string;
}

export interface Surroundings {
  readonly today: Day;
  /** The numbers of the lots that are there already. */
  readonly lots: readonly (string | number)[];
  /** Prices of earlier lots, per troy ounce. */
  readonly prices: readonly number[];
}

export interface PlausibilityRemark {
  readonly about: readonly FieldId[];
  readonly sentence: string;
}

const GRAMS_PER_OZT = 31.1034768;
const grams = ({ value, unit }: Weight): number | null => {
  const size = massUnits.lookUp(unit)?.size.toNumber();
  return size === undefined ? null : value * size;
};
const heavier = (a: Weight | undefined, b: Weight | undefined, by = 1): boolean => {
  const [one, other] = [a && grams(a), b && grams(b)];
  return typeof one === "number" && typeof other === "number" && one > other * by * (1 + 1e-9);
};
const text = ({ value, unit }: Weight): string => `${short(value)} ${unit}`;
const short = (value: number): string => String(Number(value.toPrecision(6)));

/** What looks odd about a lot. None of it blocks anything. */
export function plausibility(facts: LotFacts, around: Surroundings): PlausibilityRemark[] {
  return [...weights(facts), ...finenesses(facts), ...prices(facts, around), ...payouts(facts), ...pails(facts), ...numbers(facts, around), ...dates(facts, around)];
}

const remark = (about: readonly FieldId[], sentence: string): PlausibilityRemark => ({ about, sentence });

function weights({ gross, tare, net, fineWeight, outturn }: LotFacts): PlausibilityRemark[] {
  const found: PlausibilityRemark[] = [];
  if (net && gross && heavier(net, gross)) found.push(remark(["net", "gross"], `Net (${text(net)}) is above gross (${text(gross)}): are they swapped?`));
  if (tare && gross && heavier(tare, gross)) found.push(remark(["tare", "gross"], `Tare (${text(tare)}) is above gross (${text(gross)}): are they swapped, or in another unit?`));
  else if (tare && gross && heavier(tare, gross, 0.8)) found.push(remark(["tare", "gross"], `Tare (${text(tare)}) is more than four fifths of gross (${text(gross)}): little metal is left; look at the units`));
  if (gross && tare && net) {
    const [g, t, n] = [grams(gross), grams(tare), grams(net)];
    if (g !== null && t !== null && n !== null && t < g && Math.abs(g - t - n) > 0.005 * g) found.push(remark(["gross", "tare", "net"], `Gross less tare is ${short((g - t) / (n / net.value || 1))} ${net.unit}, and net says ${text(net)}`));
  }
  const metal = net ?? gross;
  if (fineWeight && metal && heavier(fineWeight, metal)) found.push(remark(["fineWeight", "net"], `Fine weight (${text(fineWeight)}) is above the weight of the goods (${text(metal)}): look at the units`));
  if (outturn && fineWeight && heavier(outturn, fineWeight, 1.005)) found.push(remark(["outturn", "fineWeight"], `Outturn (${text(outturn)}) is above the fine weight that was charged (${text(fineWeight)}): a higher fineness, another lot's metal, or a unit`));
  return found;
}

/** Stamps are met within a few parts per thousand; solder and mixed goods bring the whole down by more. */
const FAR_FROM_STAMP = 0.015;

function finenesses({ fineness, stamp }: LotFacts): PlausibilityRemark[] {
  if (fineness === undefined) return [];
  const ppt = (fraction: number): string => `${short(fraction * 1000)} ‰`;
  if (stamp !== undefined && Math.abs(fineness - stamp) > FAR_FROM_STAMP)
    return [remark(["fineness"], `Fineness ${ppt(fineness)} is far from the stamp (${ppt(stamp)}): ${fineness < stamp ? "solder, filled handles or plate bring it down; melt and assay decide" : "finer than stamped is rare; look at the assay"}`)];
  if (fineness > 0 && fineness < 0.2) return [remark(["fineness"], `Fineness ${ppt(fineness)} is low for silver goods: plate, or a number on another scale?`)];
  return [];
}

/** Per what else a price may be, with how many troy ounces that holds. */
const OTHER_UNITS = ["lb", "kg", "g", "dwt"].map((unit) => ({ unit, ozt: (massUnits.lookUp(unit)?.size.toNumber() ?? 1) / GRAMS_PER_OZT }));
/** Silver seldom moves by more than this between two lots of one list. */
const SWING = 1.35;

function prices({ price }: LotFacts, { prices: earlier }: Surroundings): PlausibilityRemark[] {
  if (!price || earlier.length === 0) return [];
  const size = massUnits.lookUp(price.unit)?.size.toNumber();
  if (size === undefined) return [];
  const usual = median(earlier);
  const perOunce = (price.value * GRAMS_PER_OZT) / size;
  const times = perOunce / usual;
  if (!(times > 0) || (times < SWING && times > 1 / SWING)) return [];
  const here = `Price ${short(price.value)} per ${price.unit}`;
  const likely = OTHER_UNITS.find(({ ozt }) => times / ozt < SWING && ozt / times < SWING);
  const compared = `${short(times)} times the usual ${short(usual)} per ozt`;
  return [remark(["price"], likely ? `${here} is ${compared}: it looks like a price per ${likely.unit}` : `${here} is ${compared}: look at it and its unit`)];
}

function median(numbers: readonly number[]): number {
  const sorted = [...numbers].sort((a, b) => a - b);
  const middle = Math.floor(sorted.length / 2);
  return sorted.length % 2 === 1 ? (sorted[middle] ?? 0) : ((sorted[middle - 1] ?? 0) + (sorted[middle] ?? 0)) / 2;
}

function payouts({ payout, fineWeight, price, payable }: LotFacts): PlausibilityRemark[] {
  const found: PlausibilityRemark[] = [];
  const weight = fineWeight && grams(fineWeight);
  const size = price && massUnits.lookUp(price.unit)?.size.toNumber();
  if (payout !== undefined && typeof weight === "number" && price && size !== undefined) {
    const worth = (weight / size) * price.value;
    if (payout > worth + 0.005) found.push(remark(["payout"], `Payout ${payout.toFixed(2)} is above the metal's value, ${worth.toFixed(2)}: look at fine weight, price and terms`));
  }
  if (payout !== undefined && payout < 0) found.push(remark(["payout"], `Payout ${payout.toFixed(2)} is below zero: the client would owe it; the charges exceed the metal`));
  if (payable !== undefined && payable > 1) found.push(remark(["payable"], `Payable ${short(payable * 100)} % is more than all of the metal`));
  if (payable !== undefined && payable > 0 && payable < 0.5) found.push(remark(["payable"], `Payable ${short(payable * 100)} % is less than half of the metal: is it a charge rather than a share?`));
  return found;
}

function pails({ pails: vessels }: LotFacts): PlausibilityRemark[] {
  if (!vessels) return [];
  const room = vessels.count * vessels.holds * vessels.fill;
  return vessels.litres > room * (1 + 1e-9)
    ? [remark(["acid"], `${short(vessels.litres)} L is over the fill of ${vessels.count} ${vessels.count === 1 ? "pail" : "pails"} (${short(room)} L at ${short(vessels.fill * 100)} %): take more pails, since dissolving foams and rises`)]
    : [];
}

function numbers({ lot }: LotFacts, { lots }: Surroundings): PlausibilityRemark[] {
  if (lot === undefined) return [];
  const same = (a: string | number): string => String(a).trim().toLowerCase();
  return lots.some((other) => same(other) === same(lot)) ? [remark(["lot"], `Lot number ${lot} is in the list already: two lots under one number cannot be told apart`)] : [];
}

const YEAR = 366;

function dates({ date }: LotFacts, { today }: Surroundings): PlausibilityRemark[] {
  if (date === undefined) return [];
  const now = dayNumber(today);
  if (Math.floor(date) > now) return [remark(["date"], `The date ${dayText(dayOf(date))} lies in the future`)];
  return now - date > YEAR ? [remark(["date"], `The date ${dayText(dayOf(date))} is more than a year ago`)] : [];
}
