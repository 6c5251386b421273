import type { Written } from "../review";
import type { LineDraft } from "./line-draft";

/** What was typed for one month. */
export interface MonthDraft {
  opening: string;
  openingUncertainty: string;
  counted: LineDraft[];
  shipped: LineDraft[];
}

/** How well the shop measures, as it was typed; null where nothing was typed yet. */
export interface MeasurementDraft {
  scale: string;
  unit: string;
  assay: string;
  bias: string;
  weighInBias: string;
}

/** Kept while the program runs and stored nowhere: what was written stands in the month's sheet. */
export const memory = {
  month: null as string | null,
  drafts: new Map<string, MonthDraft>(),
  measurement: null as MeasurementDraft | null,
  written: null as Written | null,
};

export function draftOf(month: string): MonthDraft {
  const known = memory.drafts.get(month);
  if (known) return known;
  const fresh: MonthDraft = { opening: "", openingUncertainty: "", counted: [], shipped: [] };
  memory.drafts.set(month, fresh);
  return fresh;
}

export function measurementOf(): MeasurementDraft {
  return (memory.measurement ??= { scale: "", unit: "g", assay: "", bias: "", weighInBias: "" });
}
