import { sum } from "./expression/expression";
import { each, formula } from "./expression/formula";
import { amount } from "./measure/quantity";

export const unaccounted = formula(
  {
    title: "Unaccounted metal",
    rule: "opening + received − shipped − closing, all in one unit; above zero metal is missing, below zero there is more than the books say",
    source: "material unaccounted for: (beginning inventory + receipts) − (removals + ending inventory)",
  },
  { opening: each(amount), received: each(amount), shipped: each(amount), closing: each(amount) },
  "unaccounted",
  amount,
  ({ opening, received, shipped, closing }) => sum(opening).plus(sum(received)).minus(sum(shipped)).minus(sum(closing)),
);
