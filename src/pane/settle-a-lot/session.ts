import type { Day } from "../../lots/calendar";
import { type ListedLot, listedLots } from "../../lots/listed-lot";
import type { NumberedLot } from "../../lots/next-number";
import { paperNumbers } from "../../lots/paper-number";
import { isSettled } from "../../lots/settled";
import type { Settling } from "../../lots/settlement";
import { type Shop, readShop, withCells } from "../../lots/shop";
import type { SheetReading } from "../../lots/sheet-reading";
import { type LotPlace, readWorkbook } from "../../lots/where";
import type { BookPort } from "../../workbook/port";

/** The workbook as it was read last. */
export interface Session {
  /** As it was told, with the cells that it names. */
  readonly told: Shop;
  /** With what those cells hold. */
  readonly shop: Shop;
  readonly sheets: readonly SheetReading[];
  readonly place: LotPlace | null;
  /** Those that are not settled first, and of each kind the newest first. */
  readonly lots: readonly ListedLot[];
  /** Why there are none to choose from. */
  readonly noLots: string | null;
  readonly statements: readonly NumberedLot[];
  readonly today: Day;
  /** Of one weighing and of one assay; absent where the shop has not told both. */
  readonly uncertainty: Settling["uncertainty"];
}

export async function readSession(port: BookPort): Promise<Session> {
  const { sheets, place } = await readWorkbook(port);
  const now = new Date();
  const found = place !== null && typeof place !== "string" ? place : null;
  const all = found ? [...listedLots(found.sheet, found)].reverse() : [];
  const lots = [...all.filter((lot) => !isSettled(lot)), ...all.filter(isSettled)];
  const told = await readShop(port);
  const shop = withCells(told, sheets);
  return {
    told,
    shop,
    uncertainty: uncertaintyOf(shop),
    sheets,
    place: found,
    lots,
    noLots: typeof place === "string" ? place : !found ? "Where this workbook lists its lots is not known yet: set up a lot first, which finds the place and keeps it." : lots.length === 0 ? "No lot is in the list yet: set up a lot first." : null,
    statements: paperNumbers("Statement", sheets),
    today: { year: now.getFullYear(), month: now.getMonth() + 1, day: now.getDate() },
  };
}

function uncertaintyOf({ scale, assay }: Shop): Settling["uncertainty"] {
  if (!scale || !assay || !("value" in scale) || !("value" in assay) || typeof scale.value !== "number") return undefined;
  return { scale: { value: scale.value, unit: scale.unit ?? "g" }, assay: typeof assay.value === "number" ? `${assay.value}‰` : assay.value };
}
