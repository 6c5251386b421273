import type { BookPort, Change } from "../workbook/port";
import { readSettings, settingsChanges } from "../workbook/settings";
import type { LotMatch } from "./corrections";
import { readStored, remembered, stored } from "./remembered";
import { type SheetReading, readSheets } from "./sheet-reading";

export const LOTS_KEY = "lots";

/** Where lots live, as it was set up and as the workbook is now. */
export interface LotPlace extends LotMatch {
  readonly sheet: SheetReading;
  /** Sentences for what moved, was renamed or is gone. */
  readonly changes: readonly string[];
}

export interface Workbook {
  readonly sheets: readonly SheetReading[];
  /** Null where it was never set up; a sentence where it is no longer found. */
  readonly place: LotPlace | string | null;
}

/** Reads the workbook, and finds the place where it keeps its lots. */
export async function readWorkbook(port: BookPort): Promise<Workbook> {
  const sheets = await readSheets(port);
  const kept = (await readSettings(port)).values.get(LOTS_KEY);
  if (kept === undefined) return { sheets, place: null };
  const match = readStored(kept);
  if (!match) return { sheets, place: "What this workbook keeps of where its lots live cannot be read: set it up again" };
  const found = remembered(match, sheets);
  if (typeof found === "string") return { sheets, place: found };
  const sheet = sheets.find(({ info }) => info.name === found.list.sheet);
  return { sheets, place: sheet ? { ...found, sheet } : null };
}

/** What to write so that the workbook keeps the place. */
export const placeChanges = (port: BookPort, match: LotMatch): Promise<readonly Change[]> => settingsChanges(port, new Map([[LOTS_KEY, stored(match)]]));
