import { type Piece, binds, whole } from "../core/expression/notation";
import { number } from "../core/expression/native";
import { Ratio, one, zero } from "../core/expression/ratio";
import { fail, quoted } from "../core/fault";
import { FINENESS_WANTS, readFineness, scales } from "../core/measure/fineness";

/** Turns one cell into an exact number, or throws. Its `wants` is what the check enforces, the error says and the page prints. */
export interface Reader {
  readonly wants: string;
  read(cell: unknown, name: string): Ratio;
  /** The same reading of a cell's address in a spreadsheet; null where the address alone cannot say it. */
  native(cell: Piece, holds: unknown): Piece | null;
  /** The same over a whole range, inside a SUMPRODUCT. */
  nativeEach(range: Piece): Piece;
}

/** A reader that long columns can be read with in float64. */
export interface QuickReader extends Reader {
  /** The same of a number in float64, NaN where it must be read exactly. */
  fast(cell: number): number;
  /** Numbers that the fast reading takes as they stand, both ends included: a loop that knows them need not ask. */
  readonly plain: { readonly least: number; readonly most: number };
}

const LARGEST = 1e15;

interface Bounds {
  readonly least?: number;
  readonly most?: number;
  /** What else the number must be. */
  readonly besides?: (value: number) => boolean;
}

/** The decimal of a cell and its float64 stand on the same side of every bound that a reader has. */
function numberReader(wants: string, { least = -Infinity, most = Infinity, besides }: Bounds = {}): QuickReader {
  const fits = (x: number): boolean => x >= least && x <= most && (besides?.(x) ?? true);
  return {
    wants,
    read(cell, name) {
      if (typeof cell !== "number" || !Number.isFinite(cell) || !fits(cell)) return unfit(name, cell, wants);
      return Math.abs(cell) <= LARGEST ? Ratio.of(cell) : unfit(name, cell, `${wants}, at most 1e15 in size`);
    },
    native: (cell) => cell,
    nativeEach: (range) => range,
    fast: (cell) => (fits(cell) && Math.abs(cell) <= LARGEST ? cell : NaN),
    plain: besides ? nowhere : { least: Math.max(least, -LARGEST), most: Math.min(most, LARGEST) },
  };
}

/** For a reader of which every number must be asked. */
const nowhere: QuickReader["plain"] = { least: Infinity, most: -Infinity };
const ABOVE_ZERO = Number.MIN_VALUE;

const unfit = (name: string, cell: unknown, wants: string): never => fail({ kind: "unfit", name, got: quoted(cell), wants });

export const anyNumber = numberReader("a number");
export const aboveZero = numberReader("a number above 0", { least: ABOVE_ZERO });
export const fromZero = numberReader("a number from 0 up", { least: 0 });

/** Above this a number is taken for a percentage written without its sign. */
const LARGEST_SHARE = 1.5;

/** A share: 0.98, "98%" or a cell formatted as a percentage. 98 alone is not 98 % and is refused. */
function shareUpTo(most: number, options: { readonly below?: boolean; readonly aboveZero?: boolean } = {}): QuickReader {
  const wants = `a share ${options.aboveZero ? "above" : "from"} 0 ${options.below ? "and below" : "to"} ${most}, or a text such as "98%"`;
  const fits = (x: number): boolean => (options.aboveZero ? x > 0 : x >= 0) && (options.below ? x < most : x <= most);
  const reader: QuickReader = {
    wants,
    read(cell, name) {
      const percent = typeof cell === "string" ? /^\s*(\d{1,15}(?:\.\d{0,15})?)\s*%\s*$/.exec(cell)?.[1] : undefined;
      const share =
        percent !== undefined ? Ratio.of(percent).times(scales["%"])
        : typeof cell === "number" && Number.isFinite(cell) ? Ratio.of(cell)
        : unfit(name, cell, wants);
      if (percent === undefined && share.toNumber() > LARGEST_SHARE)
        return fail({ kind: "ambiguous", name, got: quoted(cell), because: "could be a share or a percentage", write: asPercent(cell) });
      return fits(share.toNumber()) ? share : unfit(name, cell, wants);
    },
    native: (cell, holds) =>
      typeof holds === "string" ? whole(`IF(${cell.text}=${literalText(holds)},${number(reader.read(holds, "share")).text},${cell.text})`) : cell,
    nativeEach: (range) => range,
    fast: (cell) => (fits(cell) && cell <= LARGEST_SHARE ? cell : NaN),
    plain: options.below ? nowhere : { least: options.aboveZero ? ABOVE_ZERO : 0, most: Math.min(most, LARGEST_SHARE) },
  };
  return reader;
}

export const share = shareUpTo(1);
export const shareAboveZero = shareUpTo(1, { aboveZero: true });
export const shareBelowOne = shareUpTo(1, { below: true });
export const shareUpToTen = shareUpTo(10);

const asPercent = (cell: unknown): string =>
  typeof cell === "number" && cell < 1e6 ? `"${cell}%" or ${Number((cell / 100).toPrecision(12))}` : '"98%" or 0.98';

/** The fraction that a written fineness stands for. */
export const finenessReader: Reader = {
  wants: FINENESS_WANTS,
  read: (cell, name) =>
    typeof cell === "number" || typeof cell === "string"
      ? readFineness(cell, name).fraction
      : unfit(name, cell, FINENESS_WANTS),
  native(cell, holds) {
    // To a spreadsheet any text is above any number, and yet it counts with one such as 92.5%: that must not pass for ‰.
    const byNumber = `IF(${cell.text}<=1,${cell.text},IF(${cell.text}<100,NA(),IF(${cell.text}<=1000,${cell.text}/1000,NA())))`;
    if (typeof holds !== "string") return whole(byNumber);
    const fraction = readFineness(holds, "fineness").fraction.toNumber();
    return whole(`IF(${cell.text}=${literalText(holds)},${fraction},${byNumber})`);
  },
  nativeEach: (range) => ({ text: `${range.text}/(1+999*(${range.text}>1))/(${range.text}<=1000)`, binds: binds.product }),
};

/** The same in parts per thousand, for a range of assays. */
export const perThousandFineness: Reader = {
  ...finenessReader,
  read: (cell, name) => finenessReader.read(cell, name).over(scales.ppt),
  // Assays are counted, so that an empty cell among them must not pass for one of 0 ‰.
  nativeEach: (range) => ({ text: `${range.text}*1000/(1+999*(${range.text}>1))/(${range.text}<=1000)/(${range.text}<>"")`, binds: binds.product }),
};

/** A fineness that something is divided by. */
export const finenessAboveZero: Reader = {
  ...finenessReader,
  wants: FINENESS_WANTS.replace("from 0 to 1", "above 0 up to 1"),
  read(cell, name) {
    const fraction = finenessReader.read(cell, name);
    return fraction.isZero() ? unfit(name, cell, finenessAboveZero.wants) : fraction;
  },
};

const PLACES = /^\s*([0-6])\s*(half-even)?\s*$/i;
const PLACES_WANTS = 'a whole number of decimals from 0 to 6, or a text such as "2 half-even"';

function placesParts(cell: unknown, name: string): { places: Ratio; toEven: Ratio } {
  const [, places, even] = (typeof cell === "number" || typeof cell === "string" ? PLACES.exec(String(cell)) : null) ?? [];
  if (places === undefined) return unfit(name, cell, PLACES_WANTS);
  return { places: Ratio.of(places), toEven: even ? one : zero };
}

/** To how many decimals money is rounded. */
export const places: QuickReader = {
  wants: PLACES_WANTS,
  read: (cell, name) => placesParts(cell, name).places,
  native: (cell, holds) => (typeof holds === "string" ? number(placesParts(holds, "decimals").places) : cell),
  nativeEach: (range) => range,
  fast: (cell) => (Number.isInteger(cell) && cell >= 0 && cell <= 6 ? cell : NaN),
  plain: nowhere,
};

/** 1 where the decimals ask for half-even rounding, else 0. */
export const halfEvenReader: QuickReader = {
  wants: PLACES_WANTS,
  read: (cell, name) => placesParts(cell, name).toEven,
  native: (_, holds) => number(typeof holds === "string" ? placesParts(holds, "decimals").toEven : zero),
  nativeEach: (range) => range,
  fast: () => 0,
  plain: nowhere,
};

/** Hours and rates stand in an exponent, where larger numbers say nothing. */
export const upToTenThousand = numberReader("a number from 0 to 10000", { least: 0, most: 10_000 });
export const aboveZeroToTenThousand = numberReader("a number above 0 up to 10000", { least: ABOVE_ZERO, most: 10_000 });
export const fromOne = numberReader("a number from 1 up", { least: 1 });
export const wholeNumber = numberReader("a whole number from 0 to 10000", { least: 0, most: 10_000, besides: Number.isInteger });
/** Above this chloride, complexes take silver back into solution and the solubility product alone says too little. */
export const chloride = numberReader("mol/L, above 0 up to 0.1", { least: ABOVE_ZERO, most: 0.1 });
/** Day numbers before March 1900 count a day that never was. */
export const dateTime = numberReader("a date, from March 1900 on (a cell formatted as date or date and time)", { least: 61, besides: (x) => x < 2_958_466 });

/** A coverage factor. */
export const coverage = numberReader("a coverage factor, above 0 up to 10", { least: ABOVE_ZERO, most: 10 });

const PER_THOUSAND = /^\s*(\d{1,15}(?:\.\d{0,15})?)\s*(%|‰)\s*$/;
const PER_THOUSAND_WANTS = 'parts per thousand, 0 or from 0.1 to 999, or a text with its scale such as "5‰" or "0.5%"';

/** A deduction in parts per thousand; a number so small that it may have been meant as a fraction is refused. */
export const perThousand: Reader = {
  wants: PER_THOUSAND_WANTS,
  read(cell, name) {
    const [, digits, sign] = typeof cell === "string" ? (PER_THOUSAND.exec(cell) ?? []) : [];
    const value =
      digits !== undefined ? Ratio.of(digits).times(sign === "%" ? scales["%"] : scales.ppt)
      : typeof cell === "number" && Number.isFinite(cell) ? Ratio.of(cell).times(scales.ppt)
      : unfit(name, cell, PER_THOUSAND_WANTS);
    if (digits === undefined && value.compare(zero) > 0 && value.compare(SMALLEST_DEDUCTION) < 0)
      return fail({ kind: "ambiguous", name, got: quoted(cell), because: "could be a fraction or ‰", write: '"5‰" or "0.5%"' });
    return value.compare(zero) >= 0 && value.compare(one) < 0 ? value : unfit(name, cell, PER_THOUSAND_WANTS);
  },
  native: (cell, holds) => (typeof holds === "string" ? null : whole(`IF(${cell.text}<1000,${cell.text}/1000,NA())`)),
  nativeEach: (range) => range,
};
const SMALLEST_DEDUCTION = Ratio.of("0.0001");

export const literalText = (text: string): string => `"${text.replaceAll('"', '""')}"`;
