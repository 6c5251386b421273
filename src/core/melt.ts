import { formula, statement } from "./expression/formula";
import { count, grams, share } from "./measure/quantity";

const HOT = "Hot metal and a damp mould throw metal about: dry and preheated tools, face and body covered; local codes and licensed practice decide";

export const heats = formula(
  { title: "Heats for a crucible", rule: "weight over what one heat holds, in whole heats; the fill is for a capacity given to the brim", caution: HOT },
  { weight: grams, capacity: grams, fill: share },
  "heats",
  count,
  ({ weight, capacity, fill }) => weight.over(capacity.times(fill).named("weight in one heat", "g")).ceiling(),
);

export const bars = statement(
  { title: "Bars from a weight", rule: "whole bars that the weight fills, and what is left over", caution: HOT },
  { weight: grams, mould: grams, inOne: grams },
  ({ weight, mould, inOne }) => {
    const whole = weight.over(mould).floor().named("whole bars", "");
    return [
      ["Bars", { name: "bars", quantity: count, of: whole }, ""],
      ["Remainder", { name: "remainder", quantity: count, of: weight.minus(whole.times(mould)).over(inOne) }, { unitOf: "inOne" }],
    ];
  },
);
