import { find } from "../catalogue/catalogue";
import { Ratio } from "../core/expression/ratio";
import { FaultError } from "../core/fault";
import type { FieldId } from "./fields";
import type { ListedLot } from "./listed-lot";
import { type ColumnMatch, matchOf } from "./list";
import { netWeight } from "./net-weight";
import { offScale } from "./reconcile-scale";
import type { Shop, ShopFieldId } from "./shop";

/** A lot's own numbers as the cell functions take them. */
export interface Weighed {
  readonly value: number;
  readonly unit: string;
}

type Cell = number | string | null;

/** What one of our functions gives for these cells; null where it cannot compute. */
export function computed(id: string, ...cells: readonly Cell[]): number | null {
  const value = values(id, ...cells);
  return typeof value === "number" ? value : null;
}

function values(id: string, ...cells: readonly Cell[]): unknown {
  const entry = find(id);
  if (!entry) throw new Error(`There is no function ${id}`);
  try {
    return entry.call(...Array.from({ length: entry.arity }, (_, i) => cells[i] ?? null)).value();
  } catch (thrown) {
    if (thrown instanceof FaultError) return null;
    throw thrown;
  }
}

export const inUnit = ({ value, unit }: Weighed, to: string): number | null => (unit === to ? value : value === 0 ? 0 : computed("WEIGHT", value, unit, to));

/** The net weight of the row, or where it has none, gross less tare. */
export function netOf(lot: ListedLot): Weighed | null {
  const own = lot.weight("net");
  return own ?? grossLessTare(lot);
}

export function grossLessTare(lot: ListedLot): Weighed | null {
  const [gross, tare] = [lot.weight("gross"), lot.weight("tare")];
  if (!gross || (tare === null && lot.value("tare") !== null)) return null;
  return netWeight({ values: [gross.value], unit: gross.unit }, tare && { values: [tare.value], unit: tare.unit });
}

const SIGNS: Readonly<Record<string, string>> = { ppt: "‰", "%": "%", karat: "k" };

/** As the cell functions read it, whatever scale its column is on. */
export function finenessOf(lot: ListedLot): number | string | null {
  const [held, symbol] = [lot.value("fineness"), lot.cell("fineness")?.match.unit?.symbol ?? ""];
  if (typeof held !== "number") return held;
  if (offScale(lot, "fineness") !== null) return null;
  const sign = SIGNS[symbol];
  return sign === undefined ? held : `${held}${sign}`;
}

/** The fine weight of the row, or where it has none, what net weight and fineness hold. */
export const fineOf = (lot: ListedLot): Weighed | null => lot.weight("fineWeight") ?? fineFromNet(lot);

export function fineFromNet(lot: ListedLot): Weighed | null {
  const [net, fineness] = [netOf(lot), finenessOf(lot)];
  if (!net || fineness === null) return null;
  const value = computed("FINEWEIGHT", net.value, net.unit, fineness, "ozt");
  return value === null ? null : { value, unit: "ozt" };
}

/** The terms of a lot, as its row has them, or the shop where it has none. */
export interface Terms {
  /** Per troy ounce. */
  readonly price: number;
  readonly payable: number | string;
  /** Per troy ounce. */
  readonly refiningCharge: number;
  readonly treatmentCharge: Weighed | null;
  readonly lotCharges: number;
  readonly deduction: number | string | null;
  /** What came from the shop, such as "payable share". */
  readonly fromShop: readonly string[];
}

/** The terms by which a lot may have been settled, the likelier first; what is lacking where they are not whole. */
export function possibleTerms(lot: ListedLot, matches: readonly ColumnMatch[], shop: Shop): readonly Terms[] | string {
  const whole = termsOf(lot, matches, shop);
  if (typeof whole === "string" || whole.fromShop.length === 0) return typeof whole === "string" ? whole : [whole];
  // An empty cell may also mean that there is no such charge.
  const own = termsOf(lot, matches, {});
  return typeof own === "string" ? [whole] : [whole, own];
}

function termsOf(lot: ListedLot, matches: readonly ColumnMatch[], shop: Shop): Terms | string {
  const unread = (["refiningCharge", "treatmentCharge", "lotCharges"] as const).find((field) => typeof lot.value(field) === "string" || lot.cell(field)?.reading.error);
  if (unread) return `no number in ${lot.cell(unread)?.address ?? ""}`;
  const fromShop: string[] = [];
  const orShop = <T>(own: T | null, field: ShopFieldId, words: string, read: (shop: Shop) => T | null): T | null => {
    const told = own === null && lot.value(field as FieldId) === null ? read(shop) : null;
    if (told !== null) fromShop.push(words);
    return own ?? told;
  };
  const price = orShop(perOunce(lot, "price"), "price", "price", perOunceOf("price"));
  if (price === null) return "no price";
  const payable = orShop(shareOf(lot, "payable"), "payable", "payable share", shareTold("payable"));
  if (payable === null && matchOf(matches, "payable")) return "no payable share";
  return {
    price,
    payable: payable ?? 1,
    refiningCharge: orShop(perOunce(lot, "refiningCharge"), "refiningCharge", "refining charge", perOunceOf("refiningCharge")) ?? 0,
    treatmentCharge: orShop(treatmentOf(lot), "treatmentCharge", "treatment charge", ({ treatmentCharge }) => weighedOf(treatmentCharge)),
    lotCharges: orShop(numberOf(lot.value("lotCharges")), "lotCharges", "lot charges", ({ lotCharges }) => numberOf(lotCharges && "value" in lotCharges ? lotCharges.value : null)) ?? 0,
    deduction: orShop(shareOf(lot, "deduction"), "deduction", "minimum deduction", shareTold("deduction")),
    fromShop,
  };
}

const numberOf = (held: number | string | null | undefined): number | null => (typeof held === "number" ? held : null);

function weighedOf(told: Shop[ShopFieldId]): Weighed | null {
  return told && "value" in told && typeof told.value === "number" && told.value !== 0 && told.unit !== undefined ? { value: told.value, unit: told.unit } : null;
}

const perOunceOf = (field: "price" | "refiningCharge") => (shop: Shop): number | null => {
  const told = weighedOf(shop[field]);
  return told && (told.unit === "ozt" ? told.value : computed("PRICE", told.value, told.unit, "ozt"));
};

const shareTold = (field: "payable" | "deduction") => (shop: Shop): number | string | null => {
  const told = shop[field];
  return told && "value" in told ? told.value : null;
};

function treatmentOf(lot: ListedLot): Weighed | null {
  const [held, unit] = [lot.value("treatmentCharge"), lot.cell("treatmentCharge")?.match.unit?.symbol];
  return typeof held === "number" && held !== 0 && unit ? { value: held, unit } : null;
}

/** A price or charge per troy ounce, whatever its column is per. */
function perOunce(lot: ListedLot, field: "price" | "refiningCharge"): number | null {
  const [held, unit] = [lot.value(field), lot.cell(field)?.match.unit?.symbol];
  if (typeof held !== "number" || !unit) return null;
  return unit === "ozt" ? held : computed("PRICE", held, unit, "ozt");
}

function shareOf(lot: ListedLot, field: "payable" | "deduction"): number | string | null {
  const [held, symbol] = [lot.value(field), lot.cell(field)?.match.unit?.symbol ?? ""];
  if (typeof held !== "number") return held;
  if (field === "payable" && offScale(lot, field) !== null) return null;
  return symbol === "%" ? `${held}%` : held;
}

/** A line of a settlement in money. */
export interface MoneyLine {
  readonly label: string;
  readonly amount: number;
}

/** The settlement over net weight and fineness, its money lines in their order; the last is the payout. */
export function settlementLines(lot: ListedLot, terms: Terms, places: number): readonly MoneyLine[] | null {
  const [net, fineness] = [netOf(lot), finenessOf(lot)];
  if (!net || fineness === null) return null;
  const treatment = terms.treatmentCharge ? computed("PRICE", terms.treatmentCharge.value, terms.treatmentCharge.unit, net.unit) : 0;
  if (treatment === null) return null;
  return moneyLines(values("SETTLEMENT", net.value, net.unit, fineness, terms.price, terms.payable, terms.refiningCharge, treatment, terms.lotCharges, terms.deduction, places));
}

/** The same over the row's own fine weight; null where a term goes by the net weight. */
export function settlementLinesOverFine(lot: ListedLot, terms: Terms, places: number): readonly MoneyLine[] | null {
  const fine = lot.weight("fineWeight");
  if (!fine || terms.treatmentCharge || goesByFineness(terms)) return null;
  return moneyLines(values("SETTLEMENT", fine.value, fine.unit, 1, terms.price, terms.payable, terms.refiningCharge, 0, terms.lotCharges, null, places));
}

const goesByFineness = ({ deduction }: Terms): boolean => deduction !== null && deduction !== 0;

function moneyLines(rows: unknown): readonly MoneyLine[] | null {
  if (!Array.isArray(rows)) return null;
  return (rows as unknown[][]).flatMap(([label, amount, unit]) => (unit === "money" && typeof amount === "number" ? [{ label: String(label), amount }] : []));
}

/** The payout over the row's own fine weight; null where a term needs the net weight's fineness, or something is missing. */
export function payoutOverFine(lot: ListedLot, terms: Terms, places: number): number | null {
  const fine = lot.weight("fineWeight");
  if (!fine || goesByFineness(terms)) return null;
  const charges = lotChargesWithTreatment(lot, terms);
  return charges === null ? null : computed("PAYOUT", fine.value, fine.unit, terms.price, terms.payable, terms.refiningCharge, charges, places);
}

function lotChargesWithTreatment(lot: ListedLot, { treatmentCharge, lotCharges }: Terms): number | null {
  if (!treatmentCharge) return lotCharges;
  const net = netOf(lot);
  const weight = net && inUnit(net, treatmentCharge.unit);
  return weight === null ? null : Ratio.of(treatmentCharge.value).times(Ratio.of(weight)).plus(Ratio.of(lotCharges)).toNumber();
}

/** Whether a list has the columns that a settlement needs, or the shop makes up for them. */
export const hasTerms = (matches: readonly ColumnMatch[], shop: Shop): boolean => {
  const has = (field: FieldId): boolean => matchOf(matches, field) !== undefined;
  return (has("price") || perOunceOf("price")(shop) !== null) && (has("fineWeight") || (has("fineness") && (has("net") || has("gross"))));
};
