import { evaluate } from "../../explaining/evaluate";
import { readReferences } from "../../explaining/references";
import { expression } from "../../formulas/expression";
import { formulaInText } from "../../formulas/formula-in-text";
import { type Mended, mend } from "../../formulas/mend";
import { unknownName } from "../../formulas/nearest-name";
import type { WorkbookReading } from "../../workbook/file-reading";
import type { CellReading, CellWrite } from "../../workbook/port";
import { type Spot, addressOf } from "../../workbook/xlsx/address";
import type { FindingKind } from "./kinds";

/** A cell with something wrong in it. */
export interface Finding {
  readonly sheet: string;
  readonly cell: string;
  readonly kind: FindingKind;
  /** As it stands in the cell, or the text that may be one. */
  readonly formula: string;
  /** What the cell shows now, as a text. */
  readonly shows: string;
  readonly sentence: string;
  /** What repairs it; null where only its owner can. */
  readonly write: CellWrite | null;
}

/** What may hold one of our functions; a cheap look before the careful one. */
export const mayBeOurs = ({ formula, value }: CellReading): boolean => MAYBE.test(formula ?? (typeof value === "string" ? value : ""));
const MAYBE = /=[^]*LOT[._]/i;

/** What is wrong with a cell; "fine" where nothing is, null where it holds no function of ours. */
export async function findingIn(sheet: string, spot: Spot, reading: CellReading, port: WorkbookReading, decimal: "." | ","): Promise<Finding | "fine" | null> {
  const cell = addressOf(spot);
  const shows = String(reading.value ?? "");
  const found = (kind: FindingKind, sentence: string, formula: string | null): Finding => ({ sheet, cell, kind, formula: reading.formula ?? shows, shows, sentence, write: formula === null ? null : written(sheet, cell, formula, reading) });
  if (reading.formula === null) return asText(shows, decimal, found);
  const mended = mend(reading.formula);
  if (!mended.isOurs) return null;
  const [kind] = KIND_ORDER.filter((one) => mended.slips.has(one));
  if (kind !== undefined) return found(kind, slipSentence(mended), mended.formula);
  const [unknown] = mended.unknown;
  if (unknown !== undefined) return found("unknown", unknownName(unknown), null);
  if (!reading.error) return "fine";
  switch (shows) {
    case "#NAME?":
      return reading.message ? found("name", reading.message, null) : found("anew", "", reading.formula);
    case "#BUSY!":
    case "#GETTING_DATA":
      return found("busy", "", reading.formula);
    case "#VALUE!":
    case "#N/A":
      return wrongValue({ sheet, spot }, reading, port, found);
    default:
      return found("other", reading.message ?? OTHERS[shows] ?? "Look at what the formula reads, and at what stands around our function in it", null);
  }
}

const KIND_ORDER = ["near", "prefix", "at", "letters"] as const;

type Found = (kind: FindingKind, sentence: string, formula: string | null) => Finding;

const slipSentence = ({ taken, unknown }: Mended): string =>
  [...taken.map((one) => `${one.from} is taken for ${one.for}`), ...unknown.map((name) => `${name} stays: nothing of ours resembles it`)].join("; ");

/** A text that is a formula of ours, with no function in it that is none. */
function asText(text: string, decimal: "." | ",", found: Found): Finding | null {
  const read = formulaInText(text, decimal);
  if (!read) return null;
  if ("fault" in read) return mend(text.replace(/^[^=]*/, "")).isOurs ? found("text", read.fault, null) : null;
  const mended = mend(read.formula);
  return mended.isOurs ? found("text", slipSentence(mended), mended.formula) : null;
}

/** In a cell formatted as text a formula would become a text again when it is next edited. */
const written = (sheet: string, cell: string, content: string, { numberFormat }: CellReading): CellWrite => ({ sheet, cell, content, ...(numberFormat === "@" ? { numberFormat: "General" } : {}) });

/** The host's own words where it has some; Excel keeps them to itself, so there the formula is worked out. */
async function wrongValue(on: { readonly sheet: string; readonly spot: Spot }, { value, formula, message }: CellReading, port: WorkbookReading, found: Found): Promise<Finding> {
  const kind = value === "#N/A" ? "missing" : "value";
  if (message) return found(kind, message, null);
  const text = formula ?? "";
  const worked = evaluate(expression(text.slice(1)), await readReferences(text, on, port));
  if (worked.kind === "error") return found(kind, worked.sentence, null);
  if (worked.kind === "known") return found("stale", "", text);
  return found(kind, `The spreadsheet alone computes ${worked.texts.join(" and ")}: put it into a cell of its own to see whether the fault is there`, null);
}

const OTHERS: Readonly<Record<string, string>> = {
  "#SPILL!": "The cells that its result would fill are not empty: empty them, or put the formula elsewhere",
  "#REF!": "It names a cell that is gone: name the right one in its place",
  "#DIV/0!": "Something around our function divides by zero or by an empty cell",
  "#NULL!": "Two ranges in it have no cell in common: look for a blank where a comma belongs",
};
