import Decimal from "decimal.js";

/** Sums and products keep every digit; the precision is only a ceiling that no cell's numbers reach. */
const Exact = Decimal.clone({ precision: 100_000, toExpNeg: -9e15, toExpPos: 9e15, minE: -9e15, maxE: 9e15 });
/** For what has no exact decimal: quotients that are shown, roots, logarithms. */
const Approximate = Decimal.clone({ precision: 50 });

/**
 * An exact number: the quotient of two decimals, divided only when it is shown. Pounds to troy ounces is 175/12,
 * which no decimal holds; kept as a quotient, an exact half cent stays an exact half cent.
 */
export class Ratio {
  private constructor(
    private readonly top: Decimal,
    /** Always above zero. */
    private readonly bottom: Decimal,
  ) {}

  /** A number by its shortest text, or a decimal text. */
  static of(value: number | string | Decimal): Ratio {
    return new Ratio(new Exact(value), unit);
  }

  plus(that: Ratio): Ratio {
    if (this.bottom.eq(that.bottom)) return new Ratio(this.top.plus(that.top), this.bottom);
    return new Ratio(
      this.top.times(that.bottom).plus(that.top.times(this.bottom)),
      this.bottom.times(that.bottom),
    );
  }

  minus(that: Ratio): Ratio {
    return this.plus(that.negated());
  }

  negated(): Ratio {
    return new Ratio(this.top.negated(), this.bottom);
  }

  times(that: Ratio): Ratio {
    return new Ratio(product(this.top, that.top), product(this.bottom, that.bottom));
  }

  /** The divisor must not be zero: whoever divides checks that first. */
  over(that: Ratio): Ratio {
    const top = product(this.top, that.bottom);
    const bottom = product(this.bottom, that.top);
    return bottom.isNegative() ? new Ratio(top.negated(), bottom.negated()) : new Ratio(top, bottom);
  }

  compare(that: Ratio): number {
    return this.bottom.eq(that.bottom)
      ? this.top.cmp(that.top)
      : this.top.times(that.bottom).cmp(that.top.times(this.bottom));
  }

  isZero(): boolean {
    return this.top.isZero();
  }

  isFinite(): boolean {
    return this.top.isFinite();
  }

  isInteger(): boolean {
    return this.floor().compare(this) === 0;
  }

  floor(): Ratio {
    const whole = this.top.divToInt(this.bottom);
    const cut = whole.times(this.bottom).gt(this.top);
    return new Ratio(cut ? whole.minus(1) : whole, unit);
  }

  ceiling(): Ratio {
    return this.negated().floor().negated();
  }

  power(exponent: Ratio): Ratio {
    const n = exponent.isInteger() ? exponent.toNumber() : NaN;
    if (Math.abs(n) > EXACT_POWERS || Number.isNaN(n))
      return Ratio.of(this.decimal().pow(exponent.decimal()));
    const raised = new Ratio(this.top.pow(Math.abs(n)), this.bottom.pow(Math.abs(n)));
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
    const top = new Approximate(this.top);
    return this.bottom === unit ? top : top.div(this.bottom);
  }

  toNumber(): number {
    return this.bottom === unit ? this.top.toNumber() : this.decimal().toNumber();
  }
}

/** Beyond this a power is taken to 50 digits: the exact one would only grow longer. */
const EXACT_POWERS = 8;

const unit = new Exact(1);
const product = (a: Decimal, b: Decimal): Decimal => (a === unit ? b : b === unit ? a : a.times(b));

export const zero = Ratio.of(0);
export const one = Ratio.of(1);
