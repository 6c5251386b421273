import Decimal from "decimal.js";

/** For what has no exact decimal: quotients that are shown, roots, logarithms. */
const Approximate = Decimal.clone({ precision: 50, toExpNeg: -9e15, toExpPos: 9e15, minE: -9e15, maxE: 9e15 });

/**
 * An exact number: top ÷ bottom × 10^exponent in whole numbers, divided only when it is shown. Pounds to troy ounces is
 * 175/12, which no decimal holds; kept as a quotient, an exact half cent stays an exact half cent.
 *
 * While its digits are few, as those of a scale, an assay or a price are, float64 holds the whole numbers without a rounding;
 * where one would not fit, wide ones take over. Both say the same number.
 */
export class Ratio {
  private static readonly notFinite = new Ratio(NaN, 1, 0);

  private constructor(
    /** NaN where only wide whole numbers say the number. */
    private readonly top: number,
    /** Above zero. */
    private readonly bottom: number,
    private readonly exponent: number,
    private wide: Wide | null = null,
  ) {}

  /** A number by its shortest text, or a decimal text. */
  static of(value: number | string): Ratio {
    return typeof value === "number" ? Ratio.ofNumber(value) : Ratio.ofText(value);
  }

  /** A decimal of at most fifteen digits is the shortest text of the float64 nearest to it. */
  private static ofNumber(value: number): Ratio {
    if (Number.isSafeInteger(value)) return new Ratio(value + 0, 1, 0);
    for (let places = 1; places <= 9; places++) {
      const scale = TENS[places] as number;
      const digits = Math.round(value * scale);
      if (digits / scale === value && Math.abs(digits) < 1e15) return new Ratio(digits, 1, -places);
    }
    return Number.isFinite(value) ? Ratio.ofText(String(value)) : Ratio.notFinite;
  }

  private static ofText(text: string): Ratio {
    const [, sign, whole = "", fraction = "", power = "0"] = DECIMAL.exec(text) ?? [];
    if (sign === undefined) throw new Error(`${text} is no decimal`);
    return Ratio.ofWide(BigInt(sign + whole + fraction), 1n, Number(power) - fraction.length);
  }

  /** A result to 50 digits. What is beyond all cells' numbers is infinite, or nothing. */
  private static ofDecimal(value: Decimal): Ratio {
    if (!value.isFinite() || value.e > FARTHEST) return Ratio.notFinite;
    return value.isZero() || value.e < -FARTHEST ? zero : Ratio.ofText(value.toExponential());
  }

  private static ofWide(top: bigint, bottom: bigint, exponent: number): Ratio {
    if (top <= MOST && top >= -MOST && bottom <= MOST) return new Ratio(Number(top), Number(bottom), exponent);
    return new Ratio(NaN, 1, exponent, { top, bottom });
  }

  private get whole(): Wide {
    return (this.wide ??= { top: BigInt(this.top), bottom: BigInt(this.bottom) });
  }

  plus(that: Ratio): Ratio {
    if (that.top === 0) return this;
    if (this.top === 0) return that;
    const exponent = Math.min(this.exponent, that.exponent);
    const a = this.top * ten(this.exponent - exponent);
    const b = that.top * ten(that.exponent - exponent);
    if (this.bottom === that.bottom) {
      if (isExact(a) && isExact(b) && isExact(a + b)) return new Ratio(a + b, this.bottom, exponent);
    } else {
      const [x, y, bottom] = [a * that.bottom, b * this.bottom, this.bottom * that.bottom];
      if (isExact(x) && isExact(y) && isExact(x + y) && isExact(bottom)) return new Ratio(x + y, bottom, exponent);
    }
    const [one, other] = [this.whole, that.whole];
    const [x, y] = [this.topAt(exponent), that.topAt(exponent)];
    if (one.bottom === other.bottom) return Ratio.ofWide(x + y, one.bottom, exponent);
    return Ratio.ofWide(x * other.bottom + y * one.bottom, one.bottom * other.bottom, exponent);
  }

  minus(that: Ratio): Ratio {
    return this.plus(that.negated());
  }

  negated(): Ratio {
    if (isExact(this.top)) return new Ratio(0 - this.top, this.bottom, this.exponent);
    return Ratio.ofWide(-this.whole.top, this.whole.bottom, this.exponent);
  }

  times(that: Ratio): Ratio {
    const small = this.timesSmall(that.top, that.bottom, that.exponent);
    if (small) return small;
    const [one, other] = [this.whole, that.whole];
    return Ratio.ofWide(one.top * other.top, one.bottom * other.bottom, this.exponent + that.exponent);
  }

  /** The divisor must not be zero: whoever divides checks that first. */
  over(that: Ratio): Ratio {
    const sign = that.top < 0 ? -1 : 1;
    const small = that.top === 0 ? null : this.timesSmall(sign * that.bottom, sign * that.top, -that.exponent);
    if (small) return small;
    const [one, other] = [this.whole, that.whole];
    const [above, below] = [one.top * other.bottom, one.bottom * other.top];
    return below < 0n ? Ratio.ofWide(-above, -below, this.exponent - that.exponent) : Ratio.ofWide(above, below, this.exponent - that.exponent);
  }

  /** Null where float64 does not hold it, even after what both have in common is taken out. */
  private timesSmall(top: number, bottom: number, exponent: number): Ratio | null {
    let above = this.top * top;
    let below = this.bottom * bottom;
    if (Number.isNaN(above) || Number.isNaN(below)) return null;
    if (!isExact(above) || !isExact(below)) {
      const a = commonFactor(this.top, bottom);
      const b = commonFactor(top, this.bottom);
      above = (this.top / a) * (top / b);
      below = (this.bottom / b) * (bottom / a);
      if (!isExact(above) || !isExact(below)) return null;
    }
    return new Ratio(above + 0, below, this.exponent + exponent);
  }

  compare(that: Ratio): number {
    const exponent = Math.min(this.exponent, that.exponent);
    const a = this.top * ten(this.exponent - exponent) * that.bottom;
    const b = that.top * ten(that.exponent - exponent) * this.bottom;
    if (isExact(a) && isExact(b)) return Math.sign(a - b);
    const [x, y] = [this.topAt(exponent) * that.whole.bottom, that.topAt(exponent) * this.whole.bottom];
    return x < y ? -1 : x > y ? 1 : 0;
  }

  isZero(): boolean {
    return this.top === 0;
  }

  isFinite(): boolean {
    return this !== Ratio.notFinite;
  }

  isInteger(): boolean {
    return this.floor().compare(this) === 0;
  }

  floor(): Ratio {
    const [top, bottom] = this.quotient();
    if (isExact(top) && isExact(bottom)) {
      const rest = top % bottom;
      return new Ratio((top - rest) / bottom - (rest < 0 ? 1 : 0) + 0, 1, 0);
    }
    const { top: over, bottom: under } = this.wideQuotient();
    const towardZero = over / under;
    return Ratio.ofWide(over < 0n && towardZero * under !== over ? towardZero - 1n : towardZero, 1n, 0);
  }

  ceiling(): Ratio {
    return this.negated().floor().negated();
  }

  power(exponent: Ratio): Ratio {
    const n = exponent.isInteger() ? exponent.toNumber() : NaN;
    if (Math.abs(n) > EXACT_POWERS || Number.isNaN(n)) return Ratio.ofDecimal(this.decimal().pow(exponent.decimal()));
    let raised = one;
    for (let i = 0; i < Math.abs(n); i++) raised = raised.times(this);
    return n < 0 ? one.over(raised) : raised;
  }

  ln(): Ratio {
    return Ratio.ofDecimal(this.decimal().ln());
  }

  exp(): Ratio {
    return Ratio.ofDecimal(this.decimal().exp());
  }

  /** The number to 50 significant digits. */
  decimal(): Decimal {
    const top = new Approximate(`${this.whole.top}e${this.exponent}`);
    return this.whole.bottom === 1n ? top : top.div(String(this.whole.bottom));
  }

  /** The nearest float64: one division of two that are exact is rounded once. */
  toNumber(): number {
    const [top, bottom] = this.quotient();
    if (isExact(top) && (isExact(bottom) || (this.bottom === 1 && bottom <= LARGEST_TEN))) return top / bottom;
    const { top: over, bottom: under } = this.wideQuotient();
    return (nearest(over, under) ?? this.decimal().toNumber()) + 0;
  }

  /** Top and bottom with the power of ten multiplied in. */
  private quotient(): [top: number, bottom: number] {
    return this.exponent >= 0 ? [this.top * ten(this.exponent), this.bottom] : [this.top, this.bottom * ten(-this.exponent)];
  }

  private wideQuotient(): Wide {
    const { top, bottom } = this.whole;
    return this.exponent >= 0 ? { top: top * wideTen(this.exponent), bottom } : { top, bottom: bottom * wideTen(-this.exponent) };
  }

  /** The top for a smaller exponent. */
  private topAt(exponent: number): bigint {
    return this.exponent === exponent ? this.whole.top : this.whole.top * wideTen(this.exponent - exponent);
  }
}

interface Wide {
  readonly top: bigint;
  /** Above zero. */
  readonly bottom: bigint;
}

/** As the General Decimal Arithmetic Specification writes it. */
const DECIMAL = /^([+-]?)(?=\.?\d)(\d*)(?:\.(\d*))?(?:e([+-]?\d+))?$/i;

/** The powers of ten that float64 holds exactly. */
const TENS = Array.from({ length: 23 }, (_, power) => Number(`1e${power}`));
const LARGEST_TEN = TENS[22] as number;
const ten = (power: number): number => TENS[power] ?? NaN;

const WIDE_TENS = Array.from({ length: 64 }, (_, power) => 10n ** BigInt(power));
const wideTen = (power: number): bigint => WIDE_TENS[power] ?? 10n ** BigInt(power);

const MOST = BigInt(Number.MAX_SAFE_INTEGER);

/** A product or sum of whole numbers that came out no larger was not rounded; NaN is neither. */
const isExact = (whole: number): boolean => whole <= Number.MAX_SAFE_INTEGER && whole >= -Number.MAX_SAFE_INTEGER;

function commonFactor(a: number, b: number): number {
  while (b !== 0) [a, b] = [b, a % b];
  return Math.abs(a);
}

/** More bits than the 53 of a float64, so that its own rounding is the only one. */
const BITS = 68;
const MOST_SHIFT = 1000;

/** The float64 nearest to a quotient; null where it would be too small to have all its digits. */
function nearest(top: bigint, bottom: bigint): number | null {
  const size = top < 0n ? -top : top;
  const shift = BITS - (bitsOf(size) - bitsOf(bottom));
  if (shift > MOST_SHIFT) return null;
  const [over, under] = shift >= 0 ? [size << BigInt(shift), bottom] : [size, bottom << BigInt(-shift)];
  const quotient = over / under;
  // A last bit stands for all that is left out, so that it counts against a half.
  const bits = Number(quotient * under === over ? quotient : quotient | 1n) * 2 ** -shift;
  return top < 0n ? -bits : bits;
}

/** To one bit. */
function bitsOf(whole: bigint): number {
  const size = Number(whole);
  return size < Infinity ? Math.ceil(Math.log2(size)) : whole.toString(16).length * 4;
}

/** Beyond this a power is taken to 50 digits: the exact one would only grow longer. */
const EXACT_POWERS = 8;

/** Powers of ten far beyond those of a cell's number, and of what a few of them multiplied come to. */
const FARTHEST = 5000;

export const zero = Ratio.of(0);
export const one = Ratio.of(1);
