import { type CellRange, readCellRange } from "../workbook/cell-range";
import { readDate } from "./date";
import { type Notation, writtenNumber, writtenText } from "./notation";

/** What stands in a field of the form. */
export type Argument =
  | { readonly kind: "nothing" }
  | { readonly kind: "value"; readonly value: number | string }
  /** A date is written by the functions of the spreadsheet, so that the formula stays readable. */
  | { readonly kind: "date"; readonly value: number; readonly written: (notation: Notation) => string }
  | { readonly kind: "list"; readonly rows: readonly (readonly (number | string)[])[] }
  | { readonly kind: "cells"; readonly range: CellRange }
  | { readonly kind: "unreadable"; readonly sentence: string };

/**
 * Reads what was typed: a number, a text with or without quotation marks, a list in braces, or cells. `choices` are the
 * texts that the argument itself knows, since m3 is a unit there and a cell elsewhere.
 */
export function readArgument(typed: string, notation: Notation, choices: readonly string[] = []): Argument {
  const text = typed.trim().replace(/^=\s*/, "");
  if (text === "") return { kind: "nothing" };
  if (choices.includes(text)) return { kind: "value", value: text };
  if (text.startsWith('"')) return quotedText(text);
  if (text.startsWith("{")) return list(text, notation);
  const number = readNumber(text, notation);
  if (number) return number;
  const range = readCellRange(text);
  if (range) return { kind: "cells", range };
  const date = readDate(text);
  if (date) return { kind: "date", ...date };
  return refusal(text, typed) ?? { kind: "value", value: withPoint(text, notation) };
}

const unreadable = (sentence: string): Argument => ({ kind: "unreadable", sentence });

const TEXT = /^"((?:[^"]|"")*)"$/;

function quotedText(text: string): Argument {
  const inside = TEXT.exec(text)?.[1];
  return inside === undefined
    ? unreadable(`Cannot read ${text}: a text in quotation marks ends with one, and one inside it is written twice`)
    : { kind: "value", value: inside.replaceAll('""', '"') };
}

const NUMBER = { ".": /^[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?$/i, ",": /^[+-]?(?:\d+,?\d*|,\d+)(?:e[+-]?\d+)?$/i } as const;
const FOREIGN = /^[+-]?\d[\d.,]*$/;

function readNumber(text: string, { decimal }: Notation): Argument | null {
  const plain = text.replace(/^[−–]/, "-");
  if (NUMBER[decimal].test(plain)) {
    const value = Number(plain.replace(",", "."));
    return Number.isFinite(value) ? { kind: "value", value } : unreadable(`Cannot use ${text}: it is too large for a spreadsheet number`);
  }
  if (!FOREIGN.test(plain)) return null;
  const name = decimal === "." ? "a point" : "a comma";
  return unreadable(`Cannot read ${text}: write ${name} before the decimals and nothing between the thousands, as in ${writtenNumber(1234.5, { decimal })}`);
}

/** "97,5%" is how a share is written where the decimal is a comma; the functions read "97.5%". */
const withPoint = (text: string, { decimal }: Notation): string => (decimal === "," ? text.replace(/^(\d+),(\d+)(?=\s*(?:%|‰|[a-z]|\/))/i, "$1.$2") : text);

function refusal(text: string, typed: string): Argument | null {
  if (/^\$?[a-z]{1,3}:\$?[a-z]{1,3}$/i.test(text)) return unreadable(`Cannot read a whole column: name its rows too, as in ${text.split(":").join("2:")}99`);
  if (text.includes("!")) return unreadable(`Cannot read ${text} as a cell: write it as Sheet2!B4, and a sheet with blanks in its name as 'My sheet'!B4`);
  if (typed.trim().startsWith("=") || /^[\p{L}.\d]+\(.*\)$/u.test(text))
    return unreadable(`Cannot compute a formula here: put it in a cell and name that cell, as in B4`);
  return null;
}

function list(text: string, notation: Notation): Argument {
  const rows = text.endsWith("}") ? split(text.slice(1, -1), ";").map((row) => split(row, notation.column).map((item) => readItem(item, notation))) : [];
  const [first] = rows;
  const complete = rows.every((row) => row.length === first?.length && row.every((item) => item !== null));
  return first && complete
    ? { kind: "list", rows: rows as (number | string)[][] }
    : unreadable(`Cannot read the list ${text}: write numbers, or texts in quotation marks, as in ${`{${writtenNumber(2.5, notation)};1}`}`);
}

function readItem(item: string, notation: Notation): number | string | null {
  const read = item.trim().startsWith('"') ? quotedText(item.trim()) : readNumber(item.trim(), notation);
  return read?.kind === "value" ? read.value : null;
}

/** Cuts a text at a sign, but not within quotation marks. */
function split(text: string, at: string): string[] {
  const items = [""];
  let quoted = false;
  for (const letter of text) {
    if (letter === '"') quoted = !quoted;
    if (letter === at && !quoted) items.push("");
    else items[items.length - 1] += letter;
  }
  return items;
}

export const writtenItem = (item: number | string, notation: Notation): string =>
  typeof item === "number" ? writtenNumber(item, notation) : writtenText(item);

export const writtenList = (rows: readonly (readonly (number | string)[])[], notation: Notation): string =>
  `{${rows.map((row) => row.map((item) => writtenItem(item, notation)).join(notation.column)).join(";")}}`;
