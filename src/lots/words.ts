import { massUnits } from "../core/measure/mass";
import { volumeUnits } from "../core/measure/volume";
import { FaultError } from "../core/fault";

/** What a heading says of the measure of its column. */
export interface Measure {
  readonly kind: "mass" | "volume" | "per mass" | "money" | "percent" | "per thousand" | "karat" | "by unit column";
  /** As LOT writes the unit; null where the heading does not say, or says two things. */
  readonly unit: string | null;
  /** As the heading writes it. */
  readonly written: string;
  /** What must be asked before the unit is known. */
  readonly asks: string | null;
}

export interface Heading {
  readonly text: string;
  /** Its words without its units, small and without accents. */
  readonly words: readonly string[];
  readonly measure: Measure | null;
}

const ARTICLES = new Set(["of", "the", "du", "de", "des", "d", "l", "la", "le", "les", "et", "and"]);

export const plain = (text: string): string =>
  text.normalize("NFD").replace(/\p{M}/gu, "").toLowerCase().replace(/\s+/gu, " ").trim();

/** "R/C", "A/C" and "U/M" are one word each; "$/ozt" is three. */
const SHORT_FORMS = /\b(r|t|a|u)\s?\/\s?(c|m)\b\.?/g;

const tokens = (text: string): string[] =>
  plain(text)
    .replace(/(?:\bn\s?[°º]|№)/gu, " no ")
    .replace(/#/g, " no ")
    .replace(/(?<=\p{L})['’]d\b/gu, "d")
    .replace(SHORT_FORMS, "$1$2")
    .match(/[\p{L}\p{N}]+|[%‰$£€/]/gu) ?? [];

const CURRENCIES = new Set(["$", "£", "€", "usd", "cad", "gbp", "eur", "us", "ca", "dollars", "dollar"]);
const PERCENT = new Set(["%", "percent", "pct", "pourcent"]);
const PER_THOUSAND = new Set(["‰", "ppt", "millieme", "milliemes"]);
const KARAT = new Set(["k", "kt", "kts", "ct", "karat", "karats", "carat", "carats"]);
const PER = new Set(["/", "per", "par"]);

/** Spellings of headings that the core's table has not: those of French Canada, and dotted ones. */
const MORE: Readonly<Record<string, string>> = {
  oncetroy: "ozt", oncestroy: "ozt", ozttroy: "ozt", oztr: "ozt", troz: "ozt", troyozs: "ozt", troy: "ozt", livre: "lb", livres: "lb", litres: "L", litre: "L", gallons: "gal", ozavoirdupois: "ozav",
};
const OUNCE = "‘oz’ can be troy or avoirdupois, and they differ by 9.7 %: say ozt (troy) or ozav (avoirdupois)";
const GRAIN = "‘gr’ can be grains or grams: say gr (64.79891 mg) or g";
const UNCLEAR: Readonly<Record<string, string>> = { once: OUNCE, onces: OUNCE, gr: GRAIN, grs: GRAIN };

interface Unit {
  readonly kind: "mass" | "volume";
  readonly unit: string | null;
  readonly asks: string | null;
}

/** A unit of weight or volume, however it is spelled; undefined where the text is none. */
export function unitIn(text: string): Unit | undefined {
  const spelled = plain(text).replace(/[\s.]/g, "");
  if (spelled === "") return undefined;
  const asks = UNCLEAR[spelled];
  if (asks !== undefined) return { kind: "mass", unit: null, asks };
  const known = MORE[spelled] ?? spelled;
  const mass = massUnits.lookUp(known);
  if (mass) return { kind: "mass", unit: mass.symbol, asks: null };
  const volume = volumeUnits.lookUp(known);
  if (volume) return { kind: "volume", unit: volume.symbol, asks: null };
  return isAmbiguous(known) ? { kind: "mass", unit: null, asks: OUNCE } : undefined;
}

function isAmbiguous(text: string): boolean {
  try {
    massUnits.find(text, "unit");
    return false;
  } catch (error) {
    return error instanceof FaultError && error.fault.kind === "ambiguous";
  }
}

/** A heading taken apart: "Price (£/kg)" is the word price and money per kg. */
export function readHeading(text: string): Heading {
  const inBrackets = [...text.matchAll(/[([]([^)\]]*)[)\]]/g)].map(([, inner = ""]) => inner);
  const outside = tokens(text.replace(/[([][^)\]]*[)\]]/g, " "));
  const bracketed = inBrackets.map((inner) => ({ inner, measure: wholeMeasure(tokens(inner)) }));
  // The last one: a lower heading says more of its column than the group's above it.
  const found = bracketed.findLast(({ measure }) => measure !== null);
  const words = [...outside, ...bracketed.filter(({ measure }) => measure === null).flatMap(({ inner }) => tokens(inner))];
  if (words.length === 1 && KARAT.has(words[0] ?? "")) return { text, words: ["karat"], measure: { kind: "karat", unit: "karat", written: words[0] ?? "", asks: null } };
  const [rest, measure] = measureAtEdge(words);
  // A group is in dollars, "Terms ($) Payable %", and yet one of its columns is a share.
  if (found?.measure && (found.measure.kind !== "money" || measure === null))
    return { text, words: meaningful(words.filter((word) => !CURRENCIES.has(word))), measure: found.measure };
  if (measure) return { text, words: meaningful(rest), measure };
  return { text, words: meaningful(words), measure: found?.measure ?? null };
}

const meaningful = (words: readonly string[]): string[] => {
  const kept = words.filter((word) => !ARTICLES.has(word) && /[\p{L}\p{N}]/u.test(word));
  return kept.length > 0 ? kept : words.filter((word) => /[\p{L}\p{N}]/u.test(word));
};

/** The measure that these words are, all of them. */
function wholeMeasure(all: readonly string[]): Measure | null {
  const written = all.join(" ").replace(/ ?\/ ?/g, "/");
  if (all.length === 0) return null;
  if (/^(in )?unit$/.test(written) || /^in unite?s?$/.test(written)) return { kind: "by unit column", unit: null, written, asks: null };
  const spare = all.filter((word) => word !== "in" && word !== "en");
  const money = spare.filter((word) => CURRENCIES.has(word));
  const named = spare.filter((word) => !CURRENCIES.has(word));
  // "l" is litres where it stands alone and an article in "$/l’once".
  const others = named.length === 1 ? named : named.filter((word) => !ARTICLES.has(word));
  const per = others.findIndex((word) => PER.has(word));
  if (others.length === 0) return money.length > 0 ? { kind: "money", unit: null, written, asks: null } : null;
  const unit = unitIn(others.filter((word) => !PER.has(word) && word !== "fine" && word !== "fin").join(""));
  if (per === 0 || (money.length > 0 && per >= 0)) {
    if (unit?.kind === "mass") return { kind: "per mass", unit: unit.unit, written, asks: unit.asks };
    if (others.slice(per + 1).join(" ") === "mille" || others.slice(per + 1).join(" ") === "1000") return { kind: "per thousand", unit: "ppt", written, asks: null };
    return others.slice(per + 1).join("") === "lot" ? { kind: "money", unit: null, written, asks: null } : null;
  }
  if (money.length > 0) return null;
  if (unit) return { ...unit, written };
  if (others.length > 1) return others[0] === "fine" ? wholeMeasure(others.slice(1)) : null;
  const [only = ""] = others;
  if (PERCENT.has(only)) return { kind: "percent", unit: "%", written, asks: null };
  if (PER_THOUSAND.has(only)) return { kind: "per thousand", unit: "ppt", written, asks: null };
  return KARAT.has(only) ? { kind: "karat", unit: "karat", written, asks: null } : null;
}

/** The longest measure with which words end, else begin. */
function measureAtEdge(words: readonly string[]): readonly [readonly string[], Measure | null] {
  for (let n = Math.min(6, words.length); n > 0; n--) {
    const last = wholeMeasure(words.slice(words.length - n));
    if (last && !isWordToo(words, words.length - n, n)) return [words.slice(0, words.length - n), last];
  }
  for (let n = Math.min(4, words.length - 1); n > 0; n--) {
    const first = wholeMeasure(words.slice(0, n));
    if (first && !isWordToo(words, 0, n)) return [words.slice(n), first];
  }
  return [words, null];
}

/** "Unit" alone is a heading of its own, "Gr wt" begins with gross, and "fine" says more than a unit. */
function isWordToo(words: readonly string[], from: number, n: number): boolean {
  const piece = words.slice(from, from + n);
  if (piece.includes("fine") || piece.includes("fin")) return true;
  if (n === words.length) return piece.join(" ") === "unit" || piece.join(" ") === "in unit";
  return from === 0 && (piece.join("") === "gr" || piece.join("") === "g" || piece.join("") === "grs");
}

/** How well words say a phrase: 1 when they are it, less the more else they say, 0 when it is not among them. */
export function coverage(words: readonly string[], phrase: string): number {
  const wanted = phrase.split(" ");
  if (wanted.length > words.length) return 0;
  for (let at = 0; at + wanted.length <= words.length; at++)
    if (wanted.every((word, i) => words[at + i] === word)) return 0.5 + 0.5 * (wanted.length / words.length);
  return 0;
}
