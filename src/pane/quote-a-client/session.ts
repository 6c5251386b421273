import type { Day } from "../../lots/calendar";
import { type ListedLot, listedLots } from "../../lots/listed-lot";
import type { NumberedLot } from "../../lots/next-number";
import { paperNumbers } from "../../lots/paper-number";
import { type Shop, readShop } from "../../lots/shop";
import { readWorkbook } from "../../lots/where";
import type { BookPort } from "../../workbook/port";

/** The workbook as it was read last. */
export interface Session {
  readonly shop: Shop;
  /** Newest first. */
  readonly lots: readonly ListedLot[];
  /** Why there are none to choose from. */
  readonly noLots: string | null;
  readonly quotes: readonly NumberedLot[];
  readonly today: Day;
}

export async function readSession(port: BookPort): Promise<Session> {
  const { sheets, place } = await readWorkbook(port);
  const now = new Date();
  const lots = place !== null && typeof place !== "string" ? [...listedLots(place.sheet, place)].reverse() : [];
  return {
    shop: await readShop(port),
    lots,
    noLots: noLots(place, lots),
    quotes: paperNumbers("Quote", sheets),
    today: { year: now.getFullYear(), month: now.getMonth() + 1, day: now.getDate() },
  };
}

function noLots(place: unknown, lots: readonly ListedLot[]): string | null {
  if (lots.length > 0) return null;
  if (typeof place === "string") return `${place}. You can quote from scratch all the same.`;
  return place === null
    ? "Where this workbook lists its lots is not known yet: Set up a lot finds it. You can quote from scratch all the same."
    : "No lot is in the list yet. You can quote from scratch all the same.";
}
