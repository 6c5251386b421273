import { Ratio, one } from "./ratio";

/** Rounding is named at the call, never a mode set somewhere else. */
export type Rounding = "half away from zero" | "half to even" | "down";

const half = Ratio.of("0.5");
const two = Ratio.of(2);

export function round(value: Ratio, places: number, rounding: Rounding): Ratio {
  const scale = Ratio.of(`1e${places}`);
  const negative = value.compare(Ratio.of(0)) < 0;
  const scaled = (negative ? value.negated() : value).times(scale);
  const whole = scaled.floor();
  const rounded = roundsUp(whole, scaled.minus(whole), rounding) ? whole.plus(one) : whole;
  return (negative ? rounded.negated() : rounded).over(scale);
}

function roundsUp(whole: Ratio, rest: Ratio, rounding: Rounding): boolean {
  switch (rounding) {
    case "down":
      return false;
    case "half away from zero":
      return rest.compare(half) >= 0;
    case "half to even": {
      const side = rest.compare(half);
      return side > 0 || (side === 0 && !whole.over(two).isInteger());
    }
  }
}
