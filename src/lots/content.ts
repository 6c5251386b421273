import { readFineness } from "../core/measure/fineness";
import type { Kind } from "./fields";
import type { Measure } from "./words";
import { unitIn } from "./words";
import type { CellReading } from "../workbook/port";
import { isFilled } from "./sheet-reading";

/** What the cells of a column hold, counted. */
export interface Content {
  readonly filled: number;
  readonly formulas: number;
  /** Those that do not show as dates. */
  readonly numbers: readonly number[];
  readonly texts: readonly string[];
  /** Numbers that show as dates, and texts that are dates. */
  readonly dates: number;
  readonly percents: number;
}

export function contentOf(cells: readonly CellReading[]): Content {
  const filled = cells.filter((cell) => isFilled(cell) && cell.value !== "" && cell.value !== null && !cell.error);
  const others = filled.filter(({ value, numberFormat }) => typeof value !== "number" || !isDateFormat(numberFormat));
  return {
    filled: filled.length,
    formulas: filled.filter(({ formula }) => formula !== null).length,
    numbers: others.map(({ value }) => value).filter((value) => typeof value === "number"),
    texts: others.map(({ value }) => value).filter((value) => typeof value === "string").map((text) => text.trim()),
    dates: filled.filter(isDate).length,
    percents: others.filter(({ value, numberFormat }) => typeof value === "number" && isPercentFormat(numberFormat)).length,
  };
}

const shape = (format: string): string => format.replace(/"[^"]*"|\\.|\[(?!h+\]|m+\]|s+\])[^\]]*\]/gi, "");
export const isDateFormat = (format: string | undefined): boolean => format !== undefined && /[dy]|m{3}/i.test(shape(format)) && !/[0#]/.test(shape(format).replace(/\.0+/g, ""));
export const isPercentFormat = (format: string | undefined): boolean => format !== undefined && shape(format).includes("%");

const DATE_TEXT = /^(?:\d{4}-\d{1,2}-\d{1,2}|\d{1,2}[/.-]\d{1,2}[/.-]\d{2,4}|\d{1,2}[ -]\p{L}{3,9}\.?[ -]\d{2,4})$/u;

export function isDate({ value, numberFormat }: CellReading): boolean {
  if (typeof value === "number") return isDateFormat(numberFormat);
  return typeof value === "string" && DATE_TEXT.test(value.trim());
}

/** How well cells fit what a field holds: from −1 (they contradict it) through 0 (nothing is known) to 1. */
export interface Fit {
  readonly fit: number;
  /** "cells hold numbers" */
  readonly says: string;
  /** A sentence where something about the cells is to be asked. */
  readonly asks?: string;
}

const says = (fit: number, words: string, asks?: string): Fit => ({ fit, says: `cells hold ${words}`, ...(asks === undefined ? {} : { asks }) });
const NOTHING: Fit = { fit: 0, says: "its cells are empty so far" };
const share = (part: number, of: Content): number => (of.filled === 0 ? 0 : part / of.filled);

export function fitOf(kind: Kind, content: Content, measure: Measure | null): Fit {
  if (content.filled === 0) return NOTHING;
  switch (kind) {
    case "number of a lot":
      return lotNumbers(content);
    case "date":
      return dates(content);
    case "name":
    case "text":
      return words(kind, content);
    case "unit":
      return share(content.texts.filter((text) => unitIn(text)?.kind === "mass").length, content) > 0.6 ? says(1, `units such as ${quote(content.texts[0])}`) : says(-1, `${what(content)}, not units`);
    case "fineness":
      return finenesses(content, measure);
    case "share":
      return shares(content, measure);
    default:
      return numbers(kind, content);
  }
}

const quote = (text: string | undefined): string => `‘${(text ?? "").slice(0, 24)}’`;

function what(content: Content): string {
  if (share(content.dates, content) > 0.5) return "dates";
  if (share(content.percents, content) > 0.5) return "percentages";
  if (share(content.numbers.length, content) > 0.5) return "numbers";
  return content.texts.length > 0 ? `texts such as ${quote(content.texts[0])}` : "nothing that can be counted";
}

function lotNumbers(content: Content): Fit {
  const { texts, numbers } = content;
  const codes = texts.filter((text) => /\d/.test(text) && text.length <= 24 && text.split(/\s+/).length <= 3);
  const whole = numbers.filter((n) => Number.isInteger(n) && n >= 0);
  if (share(codes.length + whole.length, content) < 0.6) return says(-1, `${what(content)}, not numbers of lots`);
  const distinct = new Set([...codes, ...whole.map(String)]).size / (codes.length + whole.length);
  const example = codes[0] ?? String(whole[0]);
  if (distinct < 0.6) return says(-0.5, `${quote(example)} and the like, many of them twice`);
  return says(codes.length >= whole.length ? 1 : 0.5, `numbers of lots such as ${quote(example)}`);
}

function dates(content: Content): Fit {
  if (share(content.dates, content) > 0.6) return says(1, "dates");
  const serial = content.numbers.filter((n) => n > 36_000 && n < 73_000);
  return share(serial.length, content) > 0.8
    ? says(0.3, "numbers that could be dates", "Its cells hold plain numbers: are they dates?")
    : says(-1, `${what(content)}, not dates`);
}

function words(kind: Kind, content: Content): Fit {
  const spoken = content.texts.filter((text) => /\p{L}/u.test(text)).length;
  if (share(spoken, content) > 0.5) return says(0.5, "texts");
  return says(kind === "name" && share(content.numbers.length + content.texts.length, content) > 0.5 ? -0.2 : -0.8, what(content));
}

function numbers(kind: Kind, content: Content): Fit {
  const { texts } = content;
  const written = texts.find((text) => /^[\d.,\s]+\s*\p{L}{1,8}$/u.test(text));
  if (share(content.numbers.length, content) < 0.6)
    return written && kind === "mass" && share(texts.length, content) > 0.5
      ? says(-0.4, `texts such as ${quote(written)}`, "Its cells hold a number and a unit in one text: LOT needs the number alone")
      : says(-1, `${what(content)}, not numbers`);
  if (share(content.percents, content) > 0.5) return says(-1, "percentages");
  if (kind === "count" && content.numbers.some((n) => !Number.isInteger(n))) return says(-0.6, "numbers with decimals");
  const odd = texts.length > 0 ? `Some cells hold texts such as ${quote(texts[0])} where a number belongs` : undefined;
  return says(0.6, kind === "count" ? "whole numbers" : "numbers", odd);
}

function finenesses(content: Content, measure: Measure | null): Fit {
  const { numbers, texts } = content;
  const readable = texts.filter((text) => reads(text)).length + numbers.filter((n) => n > 0 && n <= 1000).length;
  if (share(readable, content) < 0.6) return says(-0.9, `${what(content)}, not finenesses`);
  if (numbers.length === 0) return says(1, `finenesses such as ${quote(texts[0])}`);
  const example = `finenesses such as ${String(numbers[0])}`;
  const between = numbers.filter((n) => n > 1 && n < 100).length;
  if (between > 0 && measure === null)
    return says(0.3, example, `Its numbers (such as ${String(numbers.find((n) => n > 1 && n < 100))}) could be %, karat or ‰: say which`);
  const fixed = numbers.filter((n) => (n >= 100 && Number.isInteger(n)) || n <= 1 || (measure?.kind === "percent" && n < 100)).length;
  return says(fixed / numbers.length > 0.5 ? 0.9 : 0.4, example);
}

function reads(text: string): boolean {
  try {
    readFineness(text, "fineness");
    return true;
  } catch {
    return false;
  }
}

function shares(content: Content, measure: Measure | null): Fit {
  if (share(content.percents, content) > 0.5) return says(1, "percentages");
  const { numbers } = content;
  const texts = content.texts.filter((text) => /^\d+([.,]\d+)?\s*%$/.test(text)).length;
  if (texts > 0 && share(texts, content) > 0.5) return says(0.8, `percentages such as ${quote(content.texts[0])}`);
  if (share(numbers.length, content) < 0.6) return says(-1, `${what(content)}, not shares`);
  if (numbers.every((n) => n >= 0 && n <= 1.5)) return says(0.8, "shares from 0 to 1");
  if (numbers.every((n) => n > 1.5 && n <= 150))
    return says(0.5, `numbers such as ${String(numbers[0])}`, measure?.kind === "percent" ? undefined : `Its numbers (such as ${String(numbers[0])}) are taken for percentages: is 100 the whole?`);
  return says(-0.8, "numbers that are no shares");
}
