import { sum } from "./expression/expression";
import { each, formula } from "./expression/formula";
import { amount, grams, money } from "./measure/quantity";

export const price = formula(
  { title: "A price per another unit of weight", rule: "price times the weight of the one unit over that of the other" },
  { price: money, from: grams, to: grams },
  "price",
  money,
  ({ price, from, to }) => price.times(to).over(from),
);

export const wearCost = formula(
  {
    title: "Cost of wear",
    rule: "the share of a consumable's price that this use takes from its life; not rounded, since many small ones are added up",
  },
  { price: money, life: amount, use: amount },
  "cost",
  money,
  ({ price, life, use }) => price.times(use).over(life),
);

export const lotCost = formula(
  { title: "Cost of a lot", rule: "each quantity times its price, added up, rounded once to cents" },
  { quantities: each(amount), prices: each(money) },
  "cost",
  money,
  ({ quantities, prices }) => sum(quantities.times(prices)).round(2, "half away from zero"),
);
