import { fourFifths, shareAboveZero, single } from "../functions/read";
import { type PlanCells, less, product } from "./batch-plan-cells";
import { figure } from "./batch-plan-figure";
import { pailsNeeded } from "./batch-plan-lines";
import { Lacking, needed, told } from "./batch-plan-needs";
import { FaultError } from "../core/fault";
import type { LotFacts } from "./plausible";

/** How full the pails are. */
export interface PailsFilled {
  readonly count: number;
  /** To the brim, in the unit of the plan. */
  readonly holds: number;
  readonly unit: string;
  /** The share of the brim to which one is filled. */
  readonly fill: number;
  /** The share of the brim to which the liquor stands. */
  readonly least: number;
  readonly most: number;
}

/** Silver left in the liquor, hour by hour. */
export interface DropCurve {
  readonly unit: "g/L" | "share";
  readonly points: readonly { readonly hours: number; readonly left: number }[];
  /** When it is tested and the bars are lifted. */
  readonly test: number;
  readonly decant: number | null;
}

/** Null where the plan does not know enough for the picture. */
function where<T>(picture: () => T): T | null {
  try {
    return picture();
  } catch (error) {
    if (error instanceof Lacking || error instanceof FaultError) return null;
    throw error;
  }
}

export const pailsFilled = (cells: PlanCells): PailsFilled | null =>
  where(() => {
    const { shop, choices, volumeUnit } = cells;
    const { pail } = needed(shop, "pail");
    const holds = figure("VOLUME", pail.cell, pail.unit, volumeUnit).value;
    const count = choices.pails ?? pailsNeeded(cells).most.value;
    const fill = single("fill", told(shop, "pailFill")?.cell ?? null, shareAboveZero, fourFifths).read().toNumber();
    const { least, most } = cells.liquor();
    const level = (volume: unknown): number => Number(volume) / (count * holds);
    return { count, holds, unit: volumeUnit, fill, least: level(least.holds), most: level(most.holds) };
  });

/** For the remark on a pail over its fill, in litres. */
export function pailFacts({ count, holds, unit, fill, most }: PailsFilled): LotFacts {
  const litres = (volume: number): number => figure("VOLUME", volume, unit, "L").value;
  return { pails: { litres: litres(most * count * holds), count, holds: litres(holds), fill } };
}

/** More of them would not be seen. */
const STEPS = 40;

export const dropCurve = (cells: PlanCells): DropCurve | null =>
  where(() => {
    const { dropRate } = needed(cells.shop, "dropRate");
    const test = Number(cells.hours().most.holds);
    const start = where(cells.load)?.most.value ?? null;
    const settle = told(cells.shop, "settleHours")?.cell.holds;
    const leftAfter = (hours: number): number => less(1, figure("DROPPED", hours, dropRate.cell).value);
    const points = Array.from({ length: STEPS + 1 }, (_, step) => test * (step / STEPS)).map((hours) => ({ hours, left: product(leftAfter(hours), start ?? 1) }));
    return { unit: start === null ? "share" : "g/L", points, test, decant: typeof settle === "number" ? test + settle : null };
  });
