import { readFineness } from "../../core/measure/fineness";
import { FaultError } from "../../core/fault";
import { dayNumber, readDay } from "../../lots/calendar";
import type { FieldId } from "../../lots/fields";
import { type Given, type Input, type LotInput, converted } from "../../lots/given";
import { matchOf } from "../../lots/list";
import type { Readings } from "../../lots/net-weight";
import { isOneCell, writtenRange } from "../../workbook/cell-range";
import type { BookPort } from "../../workbook/port";
import { areaText } from "../../workbook/xlsx/address";
import { readArgument } from "../argument";
import type { Notation } from "../notation";
import { BASES, type LotKey, type TermKey } from "./lot-keys";
import type { Typed } from "./memory";
import { type Known, oneLine } from "./prefill";
import type { Located } from "./session";

/** A number or text as it counts now, with its unit where it has one. */
export interface Amount {
  readonly value: number | string;
  readonly unit?: string;
}

/** The form as it is read. */
export interface ReadLot {
  /** What is written into the row. */
  readonly input: LotInput;
  readonly ofFineness: readonly string[];
  readonly faults: ReadonlyMap<LotKey, string>;
  readonly weights: { readonly gross?: Readings; readonly tare?: Readings };
  readonly fineness?: number | string;
  readonly uncertainty?: number | string;
  readonly stamp?: number | string;
  readonly terms: Readonly<Partial<Record<TermKey, Amount>>>;
  /** The day's number. */
  readonly date?: number;
}

interface Asked {
  readonly located: Located;
  readonly known: Known;
  readonly typed: (key: LotKey) => Typed;
  readonly notation: Notation;
  readonly port: BookPort;
}

export async function readLot({ located, known, typed, notation, port }: Asked): Promise<ReadLot> {
  const faults = new Map<LotKey, string>();
  const input: Partial<Record<FieldId, Input>> = {};
  const text = (key: LotKey): string => (typed(key).texts[0] ?? "").trim();
  const has = (field: FieldId): boolean => matchOf(located.match.matches, field) !== undefined;

  const number = text("lot");
  if (has("lot")) {
    if (number === "") faults.set("lot", "Write the number of the lot");
    else input.lot = { value: lotNumber(number, known) };
  }
  for (const key of ["client", "description", "status"] as const) if (has(key) && text(key) !== "") input[key] = { value: asListed(text(key), key, known) };
  const day = readDay(text("date"));
  if (has("date") && day) input.date = { value: dayNumber(day) };

  const [gross, tare] = [await weighed("gross"), await weighed("tare")];
  if (!gross && !faults.has("gross")) faults.set("gross", "Write what the scale showed");

  const fineness = await one("fineness");
  let read: number | string | undefined;
  if (fineness) {
    read = fineness.now;
    const fault = finenessFault(fineness.now, "fineness");
    if (fault === null) input.fineness = fineness.given;
    else faults.set("fineness", fault);
  }
  const [uncertainty, stamp] = [text("fineness") === "" ? undefined : await one("uncertainty"), await one("stamp")];
  if (stamp) {
    const fault = finenessFault(stamp.now, "stamp");
    if (fault !== null) faults.set("stamp", fault);
  }
  const basis = text("basis");
  if (basis !== "" && has("finenessBasis")) input.finenessBasis = { value: basis };

  const terms: Partial<Record<TermKey, Amount>> = {};
  for (const key of known.terms) {
    const given = await one(key);
    if (!given) {
      const { byFormula } = known.prefills.get(key) ?? {};
      if (byFormula) terms[key] = byFormula;
      continue;
    }
    const unit = typed(key).unit;
    const told = unit === undefined ? {} : { unit };
    const fault = converted(key, { value: given.now, ...told }, unit ?? (key === "deduction" ? "ppt" : key === "payable" ? "fraction" : null));
    if (typeof fault === "string") faults.set(key, termFault(key, given.now, fault));
    else {
      input[key] = { ...given.given, ...told };
      terms[key] = { value: given.now, ...told };
    }
  }
  return {
    input,
    ofFineness: findings(basis, has("finenessBasis"), uncertainty?.now, stamp?.now),
    faults,
    weights: { ...(gross ? { gross } : {}), ...(tare ? { tare } : {}) },
    ...(read === undefined || faults.has("fineness") ? {} : { fineness: read }),
    ...(uncertainty ? { uncertainty: uncertainty.now } : {}),
    ...(stamp && !faults.has("stamp") ? { stamp: stamp.now } : {}),
    terms,
    ...(day ? { date: dayNumber(day) } : {}),
  };

  /** The number or text of a field, or of the cell that it names. */
  async function one(key: LotKey, typedText = text(key)): Promise<{ readonly given: Given | { readonly sheet: string; readonly cell: string }; readonly now: number | string } | null> {
    const argument = readArgument(typedText, notation);
    switch (argument.kind) {
      case "nothing":
        return null;
      case "value":
        return { given: { value: argument.value }, now: argument.value };
      case "cells": {
        const { range } = argument;
        const sheet = range.sheet ?? located.match.list.sheet;
        if (!isOneCell(range)) return fault(key, `Cannot use ${writtenRange(range, null)}: name one cell, such as Prices!B4`);
        const cell = areaText(range.area);
        const reading = await port.read({ sheet, range: cell }).then((rows) => rows[0]?.[0] ?? null, () => null);
        if (!reading) return fault(key, `Cannot find ${writtenRange(range, null)} in this workbook`);
        if (reading.error) return fault(key, `${writtenRange(range, null)} shows ${String(reading.value)}: mend that cell first`);
        if (typeof reading.value !== "number" && (typeof reading.value !== "string" || reading.value === "")) return fault(key, `${writtenRange(range, null)} is empty: name a cell that holds it`);
        return { given: { sheet, cell }, now: reading.value };
      }
      case "unreadable":
        return fault(key, argument.sentence);
      default:
        return fault(key, `Cannot read ${typedText}: write a number, or the cell that holds it`);
    }
  }
  function fault(key: LotKey, sentence: string): null {
    faults.set(key, sentence);
    return null;
  }
  async function weighed(key: "gross" | "tare"): Promise<Readings | null> {
    const { texts, unit = "g" } = typed(key);
    const values: number[] = [];
    let given: Given | { readonly sheet: string; readonly cell: string } | null = null;
    for (const reading of texts) {
      const found = await one(key, reading);
      if (!found) continue;
      if (typeof found.now !== "number") {
        fault(key, `Cannot read ${found.now} as a weight: write the number alone, its unit stands beside it`);
        continue;
      }
      values.push(found.now);
      given = found.given;
    }
    if (values.length === 0 || faults.has(key)) return null;
    if (values.some((value) => value < 0)) return fault(key, "A reading is below zero: write what the scale showed");
    const isCell = given !== null && "cell" in given && values.length === 1;
    input[key] = isCell && given !== null ? { ...given, unit } : { value: values.length === 1 ? (values[0] ?? 0) : values, unit };
    return { values, unit };
  }
}

/** A list that numbers its lots with numbers goes on with numbers. */
function lotNumber(text: string, { next, lots }: Known): string | number {
  if (next && String(next.next) === text) return next.next;
  const isNumeric = lots.length > 0 && lots.every((lot) => typeof lot.value("lot") !== "string");
  return isNumeric && /^[1-9]\d{0,14}$/.test(text) ? Number(text) : text;
}

/** A field holds one line; what the list has in several is taken as it stands there. */
function asListed(text: string, field: FieldId, { lots }: Known): string {
  const same = lots.map((lot) => lot.value(field)).findLast((value) => typeof value === "string" && oneLine(value) === text);
  return typeof same === "string" ? same : text;
}

function finenessFault(value: number | string, name: string): string | null {
  try {
    readFineness(value, name);
    return null;
  } catch (thrown) {
    if (thrown instanceof FaultError) return thrown.message;
    throw thrown;
  }
}

/** A share without its sign is asked for as the functions ask for it. */
const termFault = (key: TermKey, value: number | string, sentence: string): string =>
  key === "payable" && typeof value === "number" && value > 1.5 ? `Cannot use ${value} for payable: write ${value}% or ${Number((value / 100).toPrecision(12))}` : sentence;

function findings(basis: string, hasColumn: boolean, uncertainty: number | string | undefined, stamp: number | string | undefined): string[] {
  const by = BASES.find(({ value }) => value === basis)?.label ?? "";
  const plusMinus = uncertainty === undefined ? "" : `standard uncertainty ${String(uncertainty)}`;
  const parts = [...(basis !== "" && (!hasColumn || plusMinus !== "") ? [by] : []), ...(plusMinus === "" ? [] : [plusMinus])];
  return [...(parts.length > 0 ? [`Fineness: ${parts.join(", ")}`] : []), ...(stamp === undefined ? [] : [`Stamped ${String(stamp)}`])];
}
