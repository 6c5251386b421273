import type { Picture } from "../workbook/port";
import type { Weight } from "./plausible";
import type { OfferField, Payment, QuoteTerms, Written } from "./quote";

/** The exchange of assays; where one side alone has assayed, that one holds. */
export interface Assays {
  readonly ours?: Written;
  readonly theirs?: Written;
  readonly limit?: Written;
  readonly umpire?: Written;
}

/** Fine metal that was found again, in whatever units it was weighed. */
export interface Found {
  readonly outturn?: Weight;
  /** Cement silver that was dropped; left out where all of it was worked up. */
  readonly dropped?: Weight;
  readonly liquor?: Weight;
  readonly stubs?: Weight;
  readonly residues?: Weight;
}

/** What a lot is settled from. */
export interface Settling {
  /** Net. */
  readonly weight: Weight;
  readonly assays: Assays;
  readonly terms: Omit<QuoteTerms, "swing">;
  readonly payment: Exclude<Payment, "either">;
  readonly metalUnit: string;
  readonly found: Found;
  /** Standard uncertainties of one weighing and of one assay, where the shop has told them. */
  readonly uncertainty?: { readonly scale: Weight; readonly assay: Written };
}

export interface StatementInput extends Settling {
  readonly number: string | number;
  /** The day's number. */
  readonly date: number;
  readonly shop: { readonly name?: string; readonly address?: string; readonly currency?: string; readonly paper?: "letter" | "A4" };
  readonly client?: string;
  readonly lot?: string | number;
  readonly goods?: string;
  /** What the scale showed, where the net weight is their difference. */
  readonly scale?: { readonly gross: Weight; readonly tare: Weight };
  /** What was quoted at the likely fineness, and in which quote. */
  readonly quoted?: { readonly payout: number; readonly quote?: string };
  readonly priceFrom?: string;
  /** Where the silver went. */
  readonly picture?: Pick<Picture, "png" | "width" | "height" | "alt">;
}

/** What of a settlement a sentence is about. */
export type SettleField = Exclude<OfferField, "low" | "likely" | "high" | "swing"> | keyof Assays | keyof Found;
