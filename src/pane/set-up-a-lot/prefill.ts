import { columnFormula } from "../../lots/column-formula";
import { dayText } from "../../lots/calendar";
import type { FieldId } from "../../lots/fields";
import { matchOf } from "../../lots/list";
import { type ListedLot, listedLots } from "../../lots/listed-lot";
import { type NextNumber, nextNumber } from "../../lots/next-number";
import type { ShopFieldId, ShopValue } from "../../lots/shop";
import { isTyped } from "../../lots/sheet-reading";
import { cellRange, writtenRange } from "../../workbook/cell-range";
import { type Notation, writtenNumber } from "../notation";
import { type LotKey, TERM_KEYS, type TermKey } from "./lot-keys";
import type { Typed } from "./memory";
import type { Located, Session } from "./session";

/** What stands in a field before anybody types, and where it comes from. */
export interface Prefill extends Typed {
  readonly from?: string;
  /** What its column's formula gives in the row above; it fills the cell when the field stays empty. */
  readonly byFormula?: { readonly value: number; readonly unit?: string };
}

export interface Known {
  readonly lots: readonly ListedLot[];
  readonly next: NextNumber | null;
  readonly prefills: ReadonlyMap<LotKey, Prefill>;
  /** The terms that the list, or a formula of ours in it, takes. */
  readonly terms: readonly TermKey[];
  /** The column that gives the payout, by a formula of the user's own or by ours. */
  readonly payout: { readonly letter: string; readonly isOurs: boolean } | null;
}

/** What the list and the shop say already of a lot that is to come. */
export function known({ sheet, match }: Located, { shop, today }: Session, notation: Notation): Known {
  const lots = listedLots(sheet, match);
  const has = (field: FieldId): boolean => matchOf(match.matches, field) !== undefined;
  const isComputed = (field: FieldId): boolean => {
    const column = matchOf(match.matches, field)?.column;
    return column !== undefined && columnFormula(sheet, match.list, column.number, match.list.lastRow + 1) !== null;
  };
  const last = lots.at(-1);
  const next = has("lot") ? nextNumber(lots.flatMap((lot) => numbered(lot)), today) : null;
  const ours = has("payout") && !isComputed("payout");
  const prefills = new Map<LotKey, Prefill>([
    ["date", { texts: [dayText(today)] }],
    ["gross", { texts: [""], unit: unitOf(last, "gross") ?? unitOf(last, "net") ?? columnUnit(match.matches, "gross") ?? columnUnit(match.matches, "net") ?? shop.scale?.unit ?? "g" }],
  ]);
  if (next) prefills.set("lot", { texts: [String(next.next)], from: `${next.because}.` });
  for (const key of TERM_KEYS) prefills.set(key, term(key));
  if (shop.assay) prefills.set("uncertainty", { texts: [shopText(shop.assay, "assay", notation)], from: "Of our assay, from The shop." });
  const column = matchOf(match.matches, "payout")?.column;
  return { lots, next, prefills, terms: TERM_KEYS.filter((key) => has(key) || ours), payout: column ? { letter: column.letter, isOurs: ours } : null };

  function term(key: TermKey): Prefill {
    const symbol = columnUnit(match.matches, key);
    const unit = PER_MASS.has(key) ? { unit: symbol ?? "ozt" } : {};
    const above = last?.cell(key)?.reading;
    if (isComputed(key)) {
      const value = above && !above.error && typeof above.value === "number" ? above.value : null;
      const shows = value === null ? "" : `, ${writtenTerm(key, value, symbol, notation)} in the row above`;
      const fraction = value === null ? null : key === "payable" && symbol === "%" ? value / 100 : value;
      return { texts: [""], ...unit, from: `Left empty, the column’s formula fills it${shows}.`, ...(fraction === null ? {} : { byFormula: { value: fraction, ...unit } }) };
    }
    const told = shop[key];
    if (told) return { texts: [shopText(told, key, notation)], ...(PER_MASS.has(key) ? { unit: told.unit ?? "ozt" } : {}), from: "From The shop." };
    const typed = above && isTyped(above) && !above.error ? above.value : null;
    if (typeof typed === "number") return { texts: [writtenTerm(key, typed, symbol, notation)], ...unit, from: "As in the row above." };
    return { texts: [""], ...unit };
  }
}

const PER_MASS: ReadonlySet<TermKey> = new Set(["price", "refiningCharge", "treatmentCharge"]);

function numbered(lot: ListedLot): { number: string | number; date?: number }[] {
  const [number, date] = [lot.value("lot"), lot.value("date")];
  return number === null ? [] : [{ number, ...(typeof date === "number" ? { date } : {}) }];
}

const unitOf = (lot: ListedLot | undefined, field: FieldId): string | undefined => lot?.weight(field)?.unit;
const columnUnit = (matches: Located["match"]["matches"], field: FieldId): string | undefined => matchOf(matches, field)?.unit?.symbol ?? undefined;

/** A share is written with its sign, whatever the scale of its column. */
function writtenTerm(key: TermKey, value: number, symbol: string | undefined, notation: Notation): string {
  if (key === "payable") return `${writtenNumber(symbol === "%" ? value : Number((value * 100).toPrecision(12)), notation)}%`;
  return `${writtenNumber(value, notation)}${key === "deduction" ? (symbol === "%" ? "%" : "‰") : ""}`;
}

/** A share or a deduction bears its sign, since a number alone would ask what it is. */
function shopText(told: ShopValue, key: ShopFieldId, notation: Notation): string {
  if ("cell" in told) {
    const range = cellRange(told.sheet, told.cell);
    return range ? writtenRange(range, null) : "";
  }
  if (typeof told.value === "string") return told.value;
  return `${writtenNumber(told.value, notation)}${(key === "deduction" || key === "assay") && told.value > 0 ? "‰" : ""}`;
}

const MOST_SUGGESTIONS = 40;

/** What stands in a column, the newest first; a text in several lines in one. */
export function suggestions(lots: readonly ListedLot[], field: FieldId): readonly string[] {
  const texts = lots.map((lot) => lot.value(field)).filter((value) => value !== null);
  return [...new Set(texts.reverse().map((text) => oneLine(String(text))))].slice(0, MOST_SUGGESTIONS);
}

export const oneLine = (text: string): string => text.replace(/\s*[\r\n]+\s*/g, " ").trim();
