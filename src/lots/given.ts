import { FaultError } from "../core/fault";
import { Ratio } from "../core/expression/ratio";
import { readFineness, scales } from "../core/measure/fineness";
import { massUnits } from "../core/measure/mass";
import { volumeUnits } from "../core/measure/volume";
import type { UnitTable } from "../core/measure/unit-table";
import type { CellContent } from "../workbook/port";
import { dayNumber, readDay } from "./calendar";
import { type FieldId, type Kind, fieldOf } from "./fields";

/** What the user gives for a field. */
export interface Given {
  /** Several numbers are readings of the scale, which add up. */
  readonly value: number | string | readonly number[];
  /** The unit of a weight or volume; of a price, the one that it is for. */
  readonly unit?: string;
}

/** A cell of the workbook that holds it, such as today's price. */
export interface GivenCell {
  readonly sheet: string;
  readonly cell: string;
  readonly unit?: string;
}

export type Input = Given | GivenCell;
export type LotInput = Readonly<Partial<Record<FieldId, Input>>>;

export const isCellGiven = (input: Input): input is GivenCell => "cell" in input;

export interface Converted {
  readonly content: CellContent;
  /** What was given, where the cell shows it in another way. */
  readonly note: string | null;
}

/** An input as the column holds it, or a sentence why it cannot be. `symbol` is the column's unit or scale. */
export function converted(field: FieldId, given: Given, symbol: string | null): Converted | string {
  const { kind, title } = fieldOf(field);
  try {
    return convert(kind, title, given, symbol);
  } catch (error) {
    if (error instanceof FaultError) return error.message;
    throw error;
  }
}

function convert(kind: Kind, title: string, given: Given, symbol: string | null): Converted | string {
  const { value } = given;
  switch (kind) {
    case "mass":
      return weighed(title, given, symbol, massUnits);
    case "volume":
      return weighed(title, given, symbol, volumeUnits);
    case "per mass":
      return priced(title, given, symbol);
    case "fineness":
      return typeof value === "object" ? unreadable(title, "a fineness") : finenessOn(value, symbol);
    case "share":
      return sharedOn(title, value, symbol);
    case "per thousand":
      return perThousandOn(title, value, symbol);
    case "date":
      return dated(title, value);
    case "money":
    case "count":
      return typeof value === "number" && Number.isFinite(value) ? { content: value, note: null } : unreadable(title, "a number");
    default:
      return typeof value === "object" ? unreadable(title, "one text") : { content: value, note: null };
  }
}

const unreadable = (title: string, wants: string): string => `Cannot use what was given for ${title.toLowerCase()}: it must be ${wants}`;

function weighed(title: string, { value, unit }: Given, symbol: string | null, table: UnitTable): Converted | string {
  const readings = typeof value === "number" ? [value] : typeof value === "object" ? value : [];
  if (readings.length === 0 || readings.some((reading) => !Number.isFinite(reading))) return unreadable(title, "a number, or several readings");
  const sum = readings.reduce((total, reading) => total.plus(Ratio.of(reading)), Ratio.of(0));
  const written = `${readings.join(" + ")} ${unit ?? symbol ?? ""}`.trim();
  const several = readings.length > 1 ? `Readings: ${written}` : null;
  if (unit === undefined && symbol !== null) return { content: sum.toNumber(), note: several };
  if (unit === undefined || symbol === null) return `Say the unit of ${title.toLowerCase()} before a number is written`;
  const [from, to] = [table.find(unit, "unit"), table.find(symbol, "unit")];
  if (from.symbol === to.symbol) return { content: sum.toNumber(), note: several };
  return { content: sum.times(from.size).over(to.size).toNumber(), note: several ?? `Given: ${written}` };
}

function priced(title: string, { value, unit }: Given, symbol: string | null): Converted | string {
  if (typeof value !== "number" || !Number.isFinite(value)) return unreadable(title, "a number");
  if (symbol === null) return `Say per what the ${title.toLowerCase()} is (ozt, lb, kg or g) before a number is written`;
  const [from, to] = [massUnits.find(unit ?? symbol, "unit"), massUnits.find(symbol, "unit")];
  if (from.symbol === to.symbol) return { content: value, note: null };
  return { content: Ratio.of(value).times(to.size).over(from.size).toNumber(), note: `Given: ${value} per ${from.symbol}` };
}

function finenessOn(value: number | string, symbol: string | null): Converted | string {
  if (symbol === null) return "Say on what scale the fineness column is (‰, %, karat or as written) before a number is written";
  const { fraction } = readFineness(value, "fineness");
  if (symbol === "as written") return { content: value, note: null };
  const scale = (Object.keys(scales) as (keyof typeof scales)[]).find((one) => one === symbol);
  if (!scale) return `Cannot write a fineness in ${symbol}: choose ppt, %, fraction or karat`;
  const content = fraction.over(scales[scale]).toNumber();
  return { content, note: Number(value) === content ? null : `Given: ${value}` };
}

/** A share from 0 to 1, read from 0.98 or "98%". */
export function readShare(value: Given["value"]): Ratio | null {
  const percent = typeof value === "string" ? /^\s*(\d{1,9}(?:[.,]\d{1,9})?)\s*%\s*$/.exec(value)?.[1] : undefined;
  if (percent !== undefined) return Ratio.of(percent.replace(",", ".")).over(Ratio.of(100));
  return typeof value === "number" && value >= 0 && value <= 1.5 ? Ratio.of(value) : null;
}

function sharedOn(title: string, value: Given["value"], symbol: string | null): Converted | string {
  const share = readShare(value);
  if (!share) return unreadable(title, 'a share from 0 to 1, or a text such as "98%"');
  return { content: (symbol === "%" ? share.times(Ratio.of(100)) : share).toNumber(), note: null };
}

/** Parts per thousand, read from 5, "5‰" or "0.5%". */
export function readPerThousand(value: Given["value"]): Ratio | null {
  const [, digits, sign] = typeof value === "string" ? (/^\s*(\d{1,9}(?:\.\d{1,9})?)\s*([%‰])\s*$/.exec(value) ?? []) : [];
  if (digits !== undefined) return Ratio.of(digits).times(Ratio.of(sign === "%" ? 10 : 1));
  return typeof value === "number" && value >= 0 ? Ratio.of(value) : null;
}

function perThousandOn(title: string, value: Given["value"], symbol: string | null): Converted | string {
  const parts = readPerThousand(value);
  if (!parts) return unreadable(title, 'parts per thousand, or a text such as "5‰" or "0.5%"');
  return { content: (symbol === "%" ? parts.over(Ratio.of(10)) : parts).toNumber(), note: null };
}

function dated(title: string, value: Given["value"]): Converted | string {
  if (typeof value === "number" && value >= 61) return { content: value, note: null };
  const day = typeof value === "string" ? readDay(value) : null;
  return day ? { content: dayNumber(day), note: null } : unreadable(title, "a day, such as 2026-03-02");
}
