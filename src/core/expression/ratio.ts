import Decimal from "decimal.js";

/** Sums and products keep every digit; the precision is only a ceiling that no cell's numbers reach. */
const Exact = Decimal.clone({ precision: 100_000, toExpNeg: -9e15, toExpPos: 9e15, minE: -9e15, maxE: 9e15 });
/** For what has no exact decimal: quotients that are shown, roots, logarithms. */
const Approximate = Decimal.clone({ precision: 50 });

/**
 * An exact number: the quotient of two decimals, divided only when it is shown. Pounds to troy ounces is 175/12,
 * which no decimal holds; kept as a quotient, an exact half cent stays an exact half cent.
 *
 * While its digits are few, as those of a scale, an assay or a price are, it is top ÷ bottom × 10^exponent in whole numbers
 * that float64 holds without a rounding; where one would not fit, decimals take over. Both say the same number.
 */
export class Ratio {
  private constructor(
    /** NaN where the decimals alone say the number. */
    private readonly top: number,
    /** Above zero. */
    private readonly bottom: number,
    private readonly exponent: number,
    private decimals: Decimals | null = null,
  ) {}

  /** A number by its shortest text, or a decimal text. */
  static of(value: number | string | Decimal): Ratio {
    if (typeof value === "number") return Ratio.ofNumber(value);
    if (typeof value === "string" && value.length <= 16 && SHORT.test(value)) return Ratio.ofNumber(Number(value));
    return Ratio.ofDecimal(new Exact(value));
  }

  /** A decimal of at most fifteen digits is the shortest text of the float64 nearest to it. */
  private static ofNumber(value: number): Ratio {
    if (Number.isSafeInteger(value)) return new Ratio(value + 0, 1, 0);
    for (let places = 1; places <= 9; places++) {
      const scale = TENS[places] as number;
      const digits = Math.round(value * scale);
      if (digits / scale === value && Math.abs(digits) < 1e15) return new Ratio(digits, 1, -places);
    }
    return Ratio.ofDecimal(new Exact(value));
  }

  private static ofDecimal(value: Decimal): Ratio {
    const places = value.isFinite() ? value.decimalPlaces() : NaN;
    const digits = places < TENS.length ? value.times(TENS[places] as number).toNumber() : NaN;
    return isExact(digits) ? new Ratio(digits + 0, 1, places === 0 ? 0 : -places) : Ratio.ofDecimals(value, unit);
  }

  private static ofDecimals(top: Decimal, bottom: Decimal): Ratio {
    return new Ratio(NaN, 1, 0, { top, bottom });
  }

  private get exact(): Decimals {
    return (this.decimals ??= {
      top: new Exact(`${this.top}e${this.exponent}`),
      bottom: this.bottom === 1 ? unit : new Exact(this.bottom),
    });
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
    const [one, other] = [this.exact, that.exact];
    if (one.bottom.eq(other.bottom)) return Ratio.ofDecimals(one.top.plus(other.top), one.bottom);
    return Ratio.ofDecimals(one.top.times(other.bottom).plus(other.top.times(one.bottom)), one.bottom.times(other.bottom));
  }

  minus(that: Ratio): Ratio {
    return this.plus(that.negated());
  }

  negated(): Ratio {
    if (isExact(this.top)) return new Ratio(0 - this.top, this.bottom, this.exponent);
    return Ratio.ofDecimals(this.exact.top.negated(), this.exact.bottom);
  }

  times(that: Ratio): Ratio {
    const small = this.timesSmall(that.top, that.bottom, that.exponent);
    if (small) return small;
    const [one, other] = [this.exact, that.exact];
    return Ratio.ofDecimals(product(one.top, other.top), product(one.bottom, other.bottom));
  }

  /** The divisor must not be zero: whoever divides checks that first. */
  over(that: Ratio): Ratio {
    const sign = that.top < 0 ? -1 : 1;
    const small = that.top === 0 ? null : this.timesSmall(sign * that.bottom, sign * that.top, -that.exponent);
    if (small) return small;
    const [one, other] = [this.exact, that.exact];
    const [above, below] = [product(one.top, other.bottom), product(one.bottom, other.top)];
    return below.isNegative() ? Ratio.ofDecimals(above.negated(), below.negated()) : Ratio.ofDecimals(above, below);
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
    const [one, other] = [this.exact, that.exact];
    return one.bottom.eq(other.bottom) ? one.top.cmp(other.top) : one.top.times(other.bottom).cmp(other.top.times(one.bottom));
  }

  isZero(): boolean {
    return Number.isNaN(this.top) ? this.exact.top.isZero() : this.top === 0;
  }

  isFinite(): boolean {
    return !Number.isNaN(this.top) || this.exact.top.isFinite();
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
    const { exact } = this;
    const whole = exact.top.divToInt(exact.bottom);
    const cut = whole.times(exact.bottom).gt(exact.top);
    return Ratio.ofDecimal(cut ? whole.minus(1) : whole);
  }

  ceiling(): Ratio {
    return this.negated().floor().negated();
  }

  power(exponent: Ratio): Ratio {
    const n = exponent.isInteger() ? exponent.toNumber() : NaN;
    if (Math.abs(n) > EXACT_POWERS || Number.isNaN(n)) return Ratio.of(this.decimal().pow(exponent.decimal()));
    let raised = one;
    for (let i = 0; i < Math.abs(n); i++) raised = raised.times(this);
    return n < 0 ? one.over(raised) : raised;
  }

  ln(): Ratio {
    return Ratio.of(this.decimal().ln());
  }

  exp(): Ratio {
    return Ratio.of(this.decimal().exp());
  }

  /** The number to 50 significant digits. */
  decimal(): Decimal {
    const top = new Approximate(this.exact.top);
    return this.exact.bottom === unit ? top : top.div(this.exact.bottom);
  }

  /** The nearest float64: one division of two that are exact is rounded once. */
  toNumber(): number {
    const [top, bottom] = this.quotient();
    if (isExact(top) && (isExact(bottom) || this.bottom === 1)) return top / bottom;
    return this.exact.bottom === unit ? this.exact.top.toNumber() : this.decimal().toNumber();
  }

  /** Top and bottom with the power of ten multiplied in. */
  private quotient(): [top: number, bottom: number] {
    return this.exponent >= 0 ? [this.top * ten(this.exponent), this.bottom] : [this.top, this.bottom * ten(-this.exponent)];
  }
}

interface Decimals {
  readonly top: Decimal;
  /** Above zero. */
  readonly bottom: Decimal;
}

const SHORT = /^-?\d{1,15}(?:\.\d{1,15})?$/;

/** The powers of ten that float64 holds exactly. */
const TENS = Array.from({ length: 23 }, (_, power) => Number(`1e${power}`));
const ten = (power: number): number => TENS[power] ?? NaN;

/** A product or sum of whole numbers that came out no larger was not rounded; NaN is neither. */
const isExact = (whole: number): boolean => whole <= Number.MAX_SAFE_INTEGER && whole >= -Number.MAX_SAFE_INTEGER;

function commonFactor(a: number, b: number): number {
  while (b !== 0) [a, b] = [b, a % b];
  return Math.abs(a);
}

/** Beyond this a power is taken to 50 digits: the exact one would only grow longer. */
const EXACT_POWERS = 8;

const unit = new Exact(1);
const product = (a: Decimal, b: Decimal): Decimal => (a === unit ? b : b === unit ? a : a.times(b));

export const zero = Ratio.of(0);
export const one = Ratio.of(1);
