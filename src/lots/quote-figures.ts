import { blamed } from "../catalogue/blamed";
import { find } from "../catalogue/catalogue";
import type { Entry } from "../catalogue/entry";
import { Ratio, one } from "../core/expression/ratio";
import { FaultError, quoted, sentence } from "../core/fault";
import { converted, readShare } from "./given";
import type { Offer, OfferField, PerMass, QuoteTerms, Written } from "./quote";

/** For the low, the likely and the high fineness. */
export type Three<T = number> = readonly [low: T, likely: T, high: T];

export interface PriceCase {
  /** Per troy ounce. */
  readonly price: number;
  readonly payouts: Three;
  /** In the unit asked for; null where the charges leave none. */
  readonly metal: Three<number | null>;
}

export interface QuoteFigures {
  /** In parts per thousand. */
  readonly fineness: Three;
  /** In troy ounces. */
  readonly fine: Three;
  readonly down: PriceCase;
  readonly quoted: PriceCase;
  readonly up: PriceCase;
}

/** Says what of an offer cannot be reckoned with. */
export class OfferFault extends Error {
  constructor(
    sentence: string,
    readonly fields: readonly OfferField[],
  ) {
    super(sentence);
    this.name = "OfferFault";
  }
}

/** The terms as numbers, prices and the refining charge per troy ounce, the treatment charge per unit of the goods' weight. */
export interface ReadTerms {
  readonly price: number;
  readonly swing: Ratio;
  readonly payable: number;
  readonly refiningCharge: number;
  readonly treatmentCharge: number;
  readonly lotCharges: number;
  /** In parts per thousand. */
  readonly deduction: number;
}

/** Every figure of a quote, by the functions that its sheet computes with; throws an OfferFault. */
export function quoteFigures(offer: Offer): QuoteFigures {
  const terms = readTerms(offer);
  const { low, likely, high, metalUnit } = offer;
  const three = <T>(of: (fineness: Written, field: OfferField) => T): Three<T> => [of(low, "low"), of(likely, "likely"), of(high, "high")];
  const settled = (price: number): Three<Settled> => three((fineness, field) => settledLot(offer, terms, price, fineness, field));
  const asQuoted = settled(terms.price);
  const priceCase = (price: number): PriceCase => {
    const lots = settled(price);
    const metal = (i: 0 | 1 | 2): number | null => {
      const [{ payable }, { value, payout }] = [lots[i], asQuoted[i]];
      const charges = cents(value - payout);
      return cents(payable * price - charges) > 0 ? Number(call("METALRETURN", {}, payable, "ozt", 1, charges, price, metalUnit)) : null;
    };
    return { price, payouts: [lots[0].payout, lots[1].payout, lots[2].payout], metal: [metal(0), metal(1), metal(2)] };
  };
  const moved = (factor: Ratio): PriceCase => priceCase(Ratio.of(terms.price).times(factor).toNumber());
  return {
    fineness: three((fineness, field) => Number(call("FINENESS", { value: field }, fineness))),
    fine: [asQuoted[0].fine, asQuoted[1].fine, asQuoted[2].fine],
    down: moved(one.minus(terms.swing)),
    quoted: priceCase(terms.price),
    up: moved(one.plus(terms.swing)),
  };
}

interface Settled {
  /** In troy ounces. */
  readonly fine: number;
  readonly payable: number;
  readonly value: number;
  readonly payout: number;
}

function settledLot({ weight }: Offer, terms: ReadTerms, price: number, fineness: Written, field: OfferField): Settled {
  const { payable, refiningCharge, treatmentCharge, lotCharges, deduction } = terms;
  const lines = call("SETTLEMENT", { net: "weight", unit: "weight", fineness: field }, weight.value, weight.unit, fineness, price, payable, refiningCharge, treatmentCharge, lotCharges, deduction);
  const amount = (name: string): number => Number((lines as readonly (readonly unknown[])[]).find(([label]) => label === name)?.[1]);
  return { fine: amount("Fine weight"), payable: amount("Payable fine weight"), value: amount("Metal value"), payout: amount("Payout") };
}

/** The terms as numbers; throws an OfferFault where they cannot be read, or where they do not go with the goods. */
export function readTerms(offer: Offer): ReadTerms {
  const { weight, low, likely, high, terms: { swing = 0, payable, lotCharges = 0, deduction = 0, ...rates } } = offer;
  const price = perMass("price", rates.price, "ozt");
  const refiningCharge = perMass("refiningCharge", rates.refiningCharge, "ozt");
  call("QUOTE", GOODS, weight.value, weight.unit, low, likely, high, price, payable, refiningCharge, lotCharges, swing);
  const parts = converted("deduction", { value: deduction }, "ppt");
  if (typeof parts === "string") throw new OfferFault(parts, ["deduction"]);
  return {
    price,
    swing: share("swing", swing),
    payable: share("payable", payable).toNumber(),
    refiningCharge,
    treatmentCharge: perMass("treatmentCharge", rates.treatmentCharge, weight.unit),
    lotCharges,
    deduction: Number(parts.content),
  };
}

const GOODS = { weight: "weight", unit: "weight", low: "low", likely: "likely", high: "high", swing: "swing" } as const;

function share(field: OfferField, written: Written): Ratio {
  const read = readShare(written);
  if (read) return read;
  throw new OfferFault(sentence({ kind: "unfit", name: field, got: quoted(written), wants: 'a share from 0 to 1, or a text such as "98%"' }), [field]);
}

function perMass(field: keyof QuoteTerms, given: PerMass | undefined, unit: string): number {
  if (!given || given.unit === unit) return given?.value ?? 0;
  return Number(call("PRICE", { price: field, fromUnit: field, toUnit: "weight" }, given.value, given.unit, unit));
}

/** Calls a function of the catalogue; `fields` says what of the offer its arguments are. */
function call(id: string, fields: Readonly<Record<string, OfferField>>, ...cells: readonly unknown[]): unknown {
  const entry = find(id) as Entry;
  try {
    return entry.call(...cells).value();
  } catch (thrown) {
    if (!(thrown instanceof FaultError)) throw thrown;
    throw new OfferFault(thrown.message, blamed(thrown.fault, entry.parameters).flatMap((name) => fields[name] ?? (isTerm(name) ? [name] : [])));
  }
}

const isTerm = (name: string): name is keyof QuoteTerms => ["price", "payable", "refiningCharge", "treatmentCharge", "lotCharges", "deduction"].includes(name);

const cents = (money: number): number => Math.round(money * 100) / 100;
