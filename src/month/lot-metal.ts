import { type ListedLot } from "../lots/listed-lot";
import { matchOf } from "../lots/list";
import { netWeight as netText } from "../lots/lot-formula";
import { netWeight } from "../lots/net-weight";
import { Operands } from "../lots/operands";
import type { FieldId } from "../lots/fields";
import type { LotPlace } from "../lots/where";
import type { Measured } from "./measured";
import { onSheet } from "./month-places";
import { type Term, call, cell, inUnit, literal, outcome, over } from "./term";

/** The fine metal of a lot, in troy ounces, over the cells of the user's own list. */
export interface LotMetal {
  readonly lot: ListedLot;
  readonly fine: Term;
  readonly uncertainty: Term;
  /** Null where the list has no column for it, or its unit is not known. */
  readonly out: Outturn | null;
}

export interface Outturn {
  /** The cell that is empty until the lot is finished. */
  readonly from: Term;
  readonly isThere: boolean;
  readonly fine: Term;
  readonly uncertainty: Term;
}

interface Weighed {
  readonly weight: Term;
  readonly unit: Term;
}

const WHOLE = literal(1);
const K = literal(1);
const OZT = literal("ozt");

/** The metal of a lot, or the sentence that says why it cannot be counted. */
export function lotMetal(lot: ListedLot, place: LotPlace, measured: Measured): LotMetal | string {
  const net = netOf(lot, place);
  const fineness = finenessOf(lot, place);
  const own = weighed(lot, place, "fineWeight");
  const fine = own ? inUnit(own.weight, own.unit, "ozt") : net && fineness ? call("FINEWEIGHT", net.weight, net.unit, fineness) : null;
  if (!fine) return `${named(lot)} ${whyNone(lot)}`;
  const uncertainty = net && fineness ? uncertaintyOf(net, fineness, measured) : own ? uncertaintyOf(own, WHOLE, measured) : null;
  const fault = [fine, uncertainty].flatMap((term) => (term ? outcome(term) : [])).find((found) => typeof found === "string");
  if (typeof fault === "string" || !uncertainty) return `${named(lot)} cannot be counted: ${String(fault)}`;
  return { lot, fine, uncertainty, out: outturnOf(lot, place, measured) };
}

export const uncertaintyOf = ({ weight, unit }: Weighed, fineness: Term, { scale, scaleUnit, assay }: Measured): Term =>
  call("FINEU", inUnit(weight, unit, scaleUnit), scale, literal(scaleUnit), fineness, over(assay, 1000), K, OZT);

const named = (lot: ListedLot): string => `Row ${lot.row} (${lot.value("lot") ?? "no number"})`;

function whyNone(lot: ListedLot): string {
  const hasWeight = typeof lot.value("net") === "number" || typeof lot.value("gross") === "number" || typeof lot.value("fineWeight") === "number";
  const error = (["fineWeight", "net", "fineness"] as const).map((field) => lot.cell(field)).find((held) => held?.reading.error);
  if (error) return `shows ${String(error.reading.value)} in ${error.address}, and is not counted: mend that cell`;
  if (!hasWeight) return "has no weight, and is not counted";
  return lot.value("fineness") === null ? "has no fineness and no fine weight, and is not counted" : "has a weight whose unit is not known, and is not counted: say the unit under Set up a lot";
}

/** A weight above zero with its unit, in a cell of the list. */
function weighed(lot: ListedLot, place: LotPlace, field: FieldId): Weighed | null {
  const held = lot.weight(field);
  const at = lot.cell(field);
  if (!held || !at || held.value <= 0) return null;
  return { weight: cell(onSheet(place.list.sheet, at.address), held.value), unit: cell(unitText(lot, place, field), held.unit) };
}

/** The unit column's cell where there is one: the formula then follows it. */
function unitText(lot: ListedLot, place: LotPlace, field: FieldId): string {
  const own = lot.cell("unit");
  const held = lot.weight(field)?.unit ?? "";
  return own && matchOf(place.matches, field)?.unit?.from === "unit column" ? onSheet(place.list.sheet, own.address) : literal(held).text;
}

function netOf(lot: ListedLot, place: LotPlace): Weighed | null {
  const own = weighed(lot, place, "net");
  if (own) return own;
  const [gross, tare] = [lot.weight("gross"), lot.weight("tare")];
  if (!gross) return null;
  const matches = place.matches.filter(({ field }) => field !== "net");
  const operands = new Operands({ sheet: "", row: lot.row, matches, given: {}, rowUnit: null, present: new Set(matches.map(({ field }) => field)), table: null, prefix: onSheet(place.list.sheet, "A1").slice(0, -"A1".length) });
  const net = netWeight({ values: [gross.value], unit: gross.unit }, tare && { values: [tare.value], unit: tare.unit });
  const text = netText(operands);
  return net && text && net.value > 0 ? { weight: cell(text.text, net.value), unit: cell(text.unit, net.unit) } : null;
}

const PARTS: Readonly<Record<string, number>> = { ppt: 1000, "%": 100, karat: 24 };

/** As a fraction, whatever the column holds. */
function finenessOf(lot: ListedLot, place: LotPlace): Term | null {
  const at = lot.cell("fineness");
  const held = lot.value("fineness");
  if (!at || held === null) return null;
  const written = cell(onSheet(place.list.sheet, at.address), held);
  const symbol = matchOf(place.matches, "fineness")?.unit?.symbol ?? "";
  if (typeof held === "string") return call("FINENESS", written, literal("fraction"));
  if (symbol === "fraction" || (held >= 0 && held <= 1)) return written;
  const parts = PARTS[symbol] ?? (held >= 100 ? 1000 : undefined);
  return parts === undefined ? call("FINENESS", written, literal("fraction")) : over(written, parts);
}

function outturnOf(lot: ListedLot, place: LotPlace, measured: Measured): Outturn | null {
  const at = lot.cell("outturn");
  if (!at) return null;
  const held = weighed(lot, place, "outturn");
  const symbol = matchOf(place.matches, "outturn")?.unit?.symbol;
  if (!held && (symbol === null || symbol === undefined)) return null;
  const from = held?.weight ?? cell(onSheet(place.list.sheet, at.address), "");
  const out = held ?? { weight: from, unit: literal(symbol ?? "") };
  return { from, isThere: held !== null, fine: inUnit(out.weight, out.unit, "ozt"), uncertainty: uncertaintyOf(out, WHOLE, measured) };
}
