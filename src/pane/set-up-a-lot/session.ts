import type { Day } from "../../lots/calendar";
import { type Corrected, type LotMatch, corrected } from "../../lots/corrections";
import { type Found, findLots } from "../../lots/find";
import type { LotList } from "../../lots/list";
import type { Site } from "../../lots/lot-changes";
import { OWN_UNITS, freeSheetName, ownList } from "../../lots/own-list";
import { type Shop, readShop } from "../../lots/shop";
import { type LotPlace, type Workbook, readWorkbook } from "../../lots/where";
import type { SheetReading } from "../../lots/sheet-reading";
import type { BookPort, NamedPlace } from "../../workbook/port";
import type { Draft, PlaceChoice } from "./memory";

/** The workbook as it was read last. */
export interface Session {
  readonly workbook: Workbook;
  readonly found: Found;
  readonly names: readonly NamedPlace[];
  readonly shop: Shop;
  readonly today: Day;
}

export async function readSession(port: BookPort): Promise<Session> {
  const workbook = await readWorkbook(port);
  const now = new Date();
  return {
    workbook,
    found: findLots(workbook.sheets),
    names: await port.names(),
    shop: await readShop(port),
    today: { year: now.getFullYear(), month: now.getMonth() + 1, day: now.getDate() },
  };
}

export const keptPlace = ({ workbook: { place } }: Session): LotPlace | null => (place !== null && typeof place !== "string" ? place : null);

/** The place that was chosen, or else the kept one, or the likeliest. */
export function choiceOf(session: Session, { place }: Draft): PlaceChoice | null {
  if (place?.kind === "new" || (place && sourceOf(session, place))) return place;
  if (keptPlace(session)) return { kind: "kept" };
  const [first] = session.found.proposals;
  return first ? { kind: "found", sheet: first.list.sheet, headingRow: first.list.headingRow } : null;
}

interface Source {
  readonly sheet: SheetReading;
  readonly match: LotMatch;
  readonly remarks: readonly string[];
}

/** A list that stands in the workbook. */
function sourceOf(session: Session, choice: PlaceChoice): Source | null {
  const kept = keptPlace(session);
  if (choice.kind === "kept") return kept && { sheet: kept.sheet, match: kept, remarks: [] };
  if (choice.kind === "new") return null;
  const proposal = session.found.proposals.find(({ list }) => list.sheet === choice.sheet && list.headingRow === choice.headingRow);
  const sheet = session.workbook.sheets.find(({ info }) => info.name === choice.sheet);
  return proposal && sheet ? { sheet, match: proposal, remarks: proposal.remarks } : null;
}

export interface Located extends Site {
  readonly choice: PlaceChoice;
  /** Before the user's corrections. */
  readonly base: LotMatch;
  readonly remarks: readonly string[];
  /** Corrections that could not be done. */
  readonly refusals: readonly string[];
}

/** The place with the user's corrections; null while none is chosen. */
export function locate(session: Session, draft: Draft): Located | null {
  const choice = choiceOf(session, draft);
  if (!choice) return null;
  const { workbook, names } = session;
  if (choice.kind === "new") {
    const { name, unit } = newSheetOf(session, draft);
    const { change, sheet, place } = ownList(name, unit);
    return { choice, base: place, sheets: [...workbook.sheets, sheet], names, sheet, match: place, headings: [], tableRange: null, made: change, remarks: [], refusals: [] };
  }
  const source = sourceOf(session, choice);
  if (!source) return null;
  const match: Corrected = corrected(source.match, draft.corrections, source.sheet, true);
  return { choice, base: source.match, sheets: workbook.sheets, names, sheet: source.sheet, match, headings: match.writes, tableRange: match.tableRange, made: null, remarks: source.remarks, refusals: match.refusals };
}

/** Name and unit of weight of a sheet that is to be made. */
export function newSheetOf({ workbook, shop }: Session, { newSheet }: Draft): { readonly name: string; readonly unit: string } {
  const usual = shop.scale?.unit;
  return { name: newSheet.name ?? freeSheetName(workbook.sheets.map(({ info }) => info.name)), unit: newSheet.unit ?? OWN_UNITS.find((unit) => unit === usual) ?? "g" };
}

/** "‘Lots’, rows 5 to 12" */
export function placeText({ sheet, table, rows, headingRow }: LotList): string {
  const where = table === null ? `‘${sheet}’` : `‘${sheet}’, table ‘${table}’`;
  const [first, last] = [rows[0], rows.at(-1)];
  if (first === undefined || last === undefined) return `${where}, below row ${headingRow}`;
  return first === last ? `${where}, row ${first}` : `${where}, rows ${first} to ${last}`;
}
