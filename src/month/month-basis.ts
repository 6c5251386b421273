import type { ListedLot } from "../lots/listed-lot";
import type { LotPlace } from "../lots/where";
import { type LotMetal, lotMetal } from "./lot-metal";
import { measuredIn } from "./measured";
import type { Measurement, StockLine } from "./month-input";
import { monthLots } from "./month-lots";
import type { Month } from "./month-of";

/** What the list of lots says of a month. */
export interface MonthBasis {
  readonly received: readonly LotMetal[];
  /** Lots that had come in by the month's end and have no outturn. */
  readonly inProcess: readonly LotMetal[];
  /** Sentences for lots that are not counted, and why. */
  readonly remarks: readonly string[];
}

/** Told now and then; what it gives back is waited for, so that a page can be drawn. */
export type Step = (done: number, of: number) => void | Promise<void>;

const LOTS_A_STEP = 50;

/** Reads the metal of a month's lots and of those in process. */
export async function monthBasis(place: LotPlace, month: Month, measurement: Measurement, step: Step = () => undefined): Promise<MonthBasis> {
  const { received, inProcess, remarks } = monthLots(place, month);
  const measured = measuredIn(measurement);
  const lots = [...new Map([...received, ...inProcess].map((lot) => [lot.row, lot])).values()];
  const metal = new Map<number, LotMetal | string>();
  for (const [i, lot] of lots.entries()) {
    if (i % LOTS_A_STEP === 0) await step(i, lots.length);
    metal.set(lot.row, lotMetal(lot, place, measured));
  }
  const countable = (some: readonly ListedLot[]): LotMetal[] => some.flatMap(({ row }) => metal.get(row) ?? []).filter((found) => typeof found !== "string");
  return { received: countable(received), inProcess: countable(inProcess), remarks: [...remarks, ...[...metal.values()].filter((found) => typeof found === "string")] };
}

/** The lot of that number among those in process, or a sentence. */
export function lotInProcess({ inProcess }: MonthBasis, number: string): LotMetal | string {
  const found = inProcess.find(({ lot }) => String(lot.value("lot")) === number);
  return found ?? `Lot ${number} is not among the lots still in process: take the line out, or count its metal as crystal, bars or residues`;
}

/** Whether a counted line is a lot that came in this month and has not been touched: its one weighing is in received and in closing. */
export const cameInThisMonth = (line: StockLine, { received }: Pick<MonthBasis, "received">): boolean => line.kind === "lot" && received.some(({ lot }) => String(lot.value("lot")) === line.lot);
