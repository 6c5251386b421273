import type { ChoiceId } from "../../../lots/batch-plan-needs";

/** What was typed for a batch, as it stands in its fields. */
export interface TypedChoices {
  readonly texts: Map<ChoiceId, string>;
  waterUnit: string;
  takesCopperOut: boolean;
  /** The lines whose working is open. */
  readonly open: Set<string>;
}

const kept = new Map<string, TypedChoices>();

/** Kept while the page lives, so that a step back, or a pane that was closed, loses nothing; a lot without a number has nothing to be known by. */
export function typedChoices(lot: string, waterUnit: string): TypedChoices {
  const typed = kept.get(lot) ?? { texts: new Map(), waterUnit, takesCopperOut: false, open: new Set() };
  if (lot !== "") kept.set(lot, typed);
  return typed;
}
