import type { Picture } from "../workbook/port";
import type { Weight } from "./plausible";

/** A price or charge, with the unit of weight that it is for. */
export interface PerMass {
  readonly value: number;
  readonly unit: string;
}

/** A fineness as it is written: 925, "92.5%", "22k". */
export type Written = number | string;

/** Shares are written as 0.98 or "98%", a deduction as parts per thousand or with its sign. */
export interface QuoteTerms {
  readonly price: PerMass;
  /** By what share the price may go down or up. */
  readonly swing?: Written;
  readonly payable: Written;
  readonly refiningCharge?: PerMass;
  /** Per weight of the goods. */
  readonly treatmentCharge?: PerMass;
  readonly lotCharges?: number;
  readonly deduction?: Written;
}

/** What a quote is reckoned from. */
export interface Offer {
  /** Net. */
  readonly weight: Weight;
  readonly low: Written;
  readonly likely: Written;
  readonly high: Written;
  readonly terms: QuoteTerms;
  readonly payment: Payment;
  /** The unit in which metal is given back. */
  readonly metalUnit: string;
}

export type Payment = "money" | "metal" | "either";

export interface QuoteInput extends Offer {
  readonly number: string | number;
  /** The day's number. */
  readonly date: number;
  readonly days: number;
  readonly shop: { readonly name?: string; readonly address?: string; readonly currency?: string; readonly paper?: "letter" | "A4" };
  readonly client?: string;
  readonly lot?: string | number;
  readonly goods?: string;
  /** How the fineness is known: stamp, our assay. */
  readonly basis?: string;
  /** Where the price was taken from: a cell of the workbook. */
  readonly priceFrom?: string;
  /** Of the range. */
  readonly picture?: Pick<Picture, "png" | "width" | "height" | "alt">;
}

/** What of an offer a sentence is about. */
export type OfferField = "weight" | "low" | "likely" | "high" | keyof QuoteTerms;
