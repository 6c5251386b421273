import { FaultError } from "../core/fault";
import type { Answer } from "../functions/answer";
import { type Ends, type Figure, isRange } from "./batch-plan-figure";
import { Lacking, type Need } from "./batch-plan-needs";

export type PlanGroup = "Dissolving" | "Drop" | "Washing" | "Melt and cell" | "Waste";

/** One working of a line, with the end that it is for where there are two. */
export interface PlanWorking {
  readonly end: "At least" | "At most" | null;
  readonly answer: Answer;
  readonly formula: string;
}

/** A row of a line that has several. */
export interface PlanRow {
  readonly label: string;
  readonly value: number;
  /** A date and time has none. */
  readonly unit: string | null;
}

export type PlanContent =
  | { readonly kind: "ends"; readonly ends: Ends<number>; readonly unit: string; readonly workings: readonly PlanWorking[] }
  | { readonly kind: "rows"; readonly rows: readonly PlanRow[]; readonly workings: readonly PlanWorking[] }
  | { readonly kind: "lacking"; readonly needs: readonly Need[] }
  | { readonly kind: "fault"; readonly sentence: string };

export interface PlanLine {
  readonly id: string;
  readonly group: PlanGroup;
  readonly label: string;
  readonly content: PlanContent;
  /** Where the work can hurt. */
  readonly caution: string | null;
}

/** Whatever keeps a line from its figure is said in its place, and the others stand. */
export function line(group: PlanGroup, id: string, label: string, content: () => PlanContent): PlanLine {
  const found = tried(content);
  return { id, group, label, content: found, caution: cautionOf(found) };
}

function tried(content: () => PlanContent): PlanContent {
  try {
    return content();
  } catch (error) {
    if (error instanceof Lacking) return { kind: "lacking", needs: error.needs };
    if (error instanceof FaultError) return { kind: "fault", sentence: error.message };
    throw error;
  }
}

export const figures = (ends: Ends<Figure>, unit: string): PlanContent => ({
  kind: "ends",
  ends: { least: ends.least.value, most: isRange(ends) ? ends.most.value : ends.least.value },
  unit,
  workings: isRange(ends) ? [{ end: "At least", ...ends.least }, { end: "At most", ...ends.most }] : [{ end: null, ...ends.least }],
});

const cautionOf = (content: PlanContent): string | null => {
  const [first] = "workings" in content ? content.workings : [];
  return first?.answer.outline().lines.find(({ part }) => part === "caution")?.text ?? null;
};
