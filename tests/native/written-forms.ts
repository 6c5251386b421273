import massUnits from "../../shared/tables/mass-units.json";
import standards from "../../shared/tables/fineness-standards.json";
import volumeUnits from "../../shared/tables/volume-units.json";
import type { Random } from "../random";

/**
 * Arguments as people write them. Plain ones are numbers and the units' own symbols: what a twin can read from a cell
 * whose content it is not told.
 */
export interface Writer {
  readonly r: Random;
  readonly plain: boolean;
}

export const weight = ({ r }: Writer): number =>
  r.pick([() => r.decimal(0.05, 50, 3), () => r.decimal(1, 5000, 2), () => r.whole(1, 500)])();
export const volume = ({ r }: Writer): number => r.pick([() => r.decimal(0.2, 60, 1), () => r.whole(1, 200)])();

export const massUnit = (w: Writer): string => unit(w, massUnits.units);
export const volumeUnit = (w: Writer): string => unit(w, volumeUnits.units);

function unit({ r, plain }: Writer, units: Readonly<Record<string, { readonly spellings: readonly string[] }>>): string {
  const symbol = r.pick(Object.keys(units));
  return plain || r.chance(0.5) ? symbol : sloppy(r, r.pick(units[symbol]?.spellings ?? []));
}

/** Case and blanks do not count. */
function sloppy(r: Random, spelling: string): string {
  const cased = r.pick([spelling, spelling.toUpperCase(), spelling.slice(0, 1).toUpperCase() + spelling.slice(1)]);
  const gap = cased.length > 3 && r.chance(0.4) ? r.whole(1, cased.length - 1) : 0;
  return gap ? `${cased.slice(0, gap)} ${cased.slice(gap)}` : cased;
}

/** A fineness of so many parts per thousand, in one of its written forms. */
export function writtenFineness({ r, plain }: Writer, ppt: number): number | string {
  const fraction = thousandth(ppt);
  const numbers = ppt >= 100 ? [ppt, fraction] : [fraction];
  if (plain || r.chance(0.4)) return r.pick(numbers);
  return r.pick([`${ppt}‰`, `${ppt}/1000`, `${ppt} / 1000`, `${thousandth(ppt * 100)} %`, `${thousandth(ppt * 100)}%`, String(fraction)]);
}

export const thousandth = (x: number): number => Number((x / 1000).toFixed(9)) ;

export function fineness(w: Writer): number | string {
  const { r, plain } = w;
  if (!plain && r.chance(0.15)) return `${r.decimal(8, 24, 1)}${r.pick(["k", " kt", "K", " karat", "ct"])}`;
  if (!plain && r.chance(0.15)) return sloppy(r, r.pick(r.pick(standards.standards).spellings));
  return writtenFineness(w, r.decimal(300, 999, r.whole(0, 1)));
}

/** A share up to one, with so many decimals of a percent. */
export function share({ r, plain }: Writer, lowPercent = 0, highPercent = 100): number | string {
  const percent = r.decimal(lowPercent, highPercent, r.whole(0, 2));
  return plain || r.chance(0.6) ? Number((percent / 100).toFixed(6)) : `${percent}${r.pick(["%", " %"])}`;
}

/** An argument that may be left out. */
export const perhaps = <T>({ r }: Writer, make: () => T): T | null => (r.chance(0.4) ? null : make());

/** Decimals for money, now and then with half-even rounding. */
export const decimals = ({ r, plain }: Writer): number | string | null =>
  r.pick<number | string | null>(plain ? [null, 2, 0, 3] : [null, 2, 0, 3, "2 half-even", "2", "1 HALF-EVEN"]);

export const money = ({ r }: Writer): number => r.pick([() => r.decimal(0, 500, 2), () => r.whole(0, 80)])();

/** A price that makes ties likely: whole and half cents over whole and half ounces. */
export const price = ({ r }: Writer): number => r.pick([() => r.decimal(18, 45, 2), () => r.whole(20, 40), () => r.decimal(20, 40, 3), () => r.whole(40, 80) / 2])();

/** One column of a few cells, or two beside each other. */
export const range = <T>({ r }: Writer, make: () => T, options: { readonly rows?: number; readonly columns?: number } = {}): readonly (readonly T[])[] => {
  const columns = options.columns ?? r.pick([1, 1, 2]);
  return Array.from({ length: options.rows ?? r.whole(1, 5) }, () => Array.from({ length: columns }, make));
};
