import type { Month } from "./month-of";

/** Metal that was counted or shipped, as it was written down. */
export type StockLine =
  /** Its own uncertainty is a share of its fine metal; without one it is that of one weighing and one assay. */
  | { readonly kind: "metal"; readonly what: string; readonly weight: number; readonly unit: string; readonly fineness: number | string; readonly uncertainty: number | null }
  /** By test: its volume times what a litre holds, and how far the test can be off as a share of that. */
  | { readonly kind: "liquor"; readonly what: string; readonly litres: number; readonly gramsPerLitre: number; readonly uncertainty: number }
  /** A lot that still lies there as it came: it is counted with the weight and fineness that the list has. */
  | { readonly kind: "lot"; readonly lot: string };

/** How well the shop measures. All are standard uncertainties. */
export interface Measurement {
  /** Of one weighing. */
  readonly scale: { readonly value: number; readonly unit: string };
  /** Of one assay, in parts per thousand. */
  readonly assay: number;
  /** What one scale has in all of its weighings, as a share. */
  readonly bias: number;
  /** The same of the scale on which lots are weighed in, where it is not the one that weighs the rest. */
  readonly weighInBias: number | null;
}

export interface MonthInput extends Measurement {
  readonly month: Month;
  /** In troy ounces; null reads the closing of the month before from its sheet. */
  readonly opening: { readonly fine: number; readonly uncertainty: number } | null;
  readonly counted: readonly StockLine[];
  readonly shipped: readonly StockLine[];
}
