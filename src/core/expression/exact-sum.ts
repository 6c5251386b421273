import { Ratio, zero } from "./ratio";

/** Weights of scales in millionths are whole numbers that float64 adds without a rounding. */
const PARTS = 1e6;
const FEW_DIGITS = 1e15;
const FULL = 2 ** 52;

/** The exact sum of the decimals that many cells' numbers stand for. */
export class ExactSum {
  private parts = 0;
  private rest = zero;

  add(number: number): void {
    const parts = Math.round(number * PARTS);
    if (parts / PARTS === number && Math.abs(parts) < FEW_DIGITS) {
      this.parts += parts;
      if (Math.abs(this.parts) >= FULL) this.carry();
    } else this.rest = this.rest.plus(Ratio.of(number));
  }

  get sum(): Ratio {
    this.carry();
    return this.rest;
  }

  private carry(): void {
    this.rest = this.rest.plus(Ratio.of(this.parts).over(A_MILLION));
    this.parts = 0;
  }
}

const A_MILLION = Ratio.of(PARTS);
