import { choose, constant } from "./expression/expression";
import { formula } from "./expression/formula";
import { massRatio } from "./matter";
import { count, grams, gramsPerLitre, litres, moles, share } from "./measure/quantity";

const WASTE_CAUTION =
  "Spent liquor and wash water are acid and hold metals: they are treated as waste by local water and waste codes and licensed practice; the figure plans a purchase and is no procedure";

export const rinsed = formula(
  { title: "Left after rinsing by decanting", rule: "start × (retained ÷ (retained + rinse)) to the power of the rinses", source: "washing by decantation, xₙ = x₀ (u ÷ (u + v))ⁿ" },
  { start: gramsPerLitre, retained: litres, rinse: litres, rinses: count },
  "concentration",
  gramsPerLitre,
  ({ start, retained, rinse, rinses }) => start.times(retained.over(retained.plus(rinse)).named("left by one rinse", "").power(rinses)),
);

export const rinses = formula(
  { title: "Rinses to a target", rule: "the whole rinses after which start × (retained ÷ (retained + rinse))ⁿ is no more than the target", source: "washing by decantation, xₙ = x₀ (u ÷ (u + v))ⁿ" },
  { start: gramsPerLitre, target: gramsPerLitre, retained: litres, rinse: litres },
  "rinses",
  count,
  ({ start, target, retained, rinse }) => {
    const left = retained.over(retained.plus(rinse)).named("left by one rinse", "");
    // Logarithms are never exact; the whole number that they point to is tried itself.
    const near = target.over(start).ln().over(left.ln()).minus(constant("0.000000001")).ceiling().max(0).named("nearest whole rinses", "");
    return choose(start.times(left.power(near)).isAtMost(target), near, near.plus(1));
  },
);

export const spentCopper = formula(
  {
    title: "Copper in the spent liquor",
    rule: "copper that came with the alloy and what the drop put in, over the volume",
    source: "Cu + 2 Ag⁺ → Cu²⁺ + 2 Ag",
    caution: WASTE_CAUTION,
  },
  { silver: grams, copper: grams, volume: litres },
  "copper",
  gramsPerLitre,
  ({ silver, copper, volume }) => silver.times(massRatio("drop", "Cu", "Ag")).plus(copper).over(volume),
);

export const ironDemand = formula(
  { title: "Iron that takes the copper out", rule: "copper × iron per copper × (1 + allowance)", source: "Fe + Cu²⁺ → Fe²⁺ + Cu", caution: WASTE_CAUTION },
  { copper: grams, allowance: share },
  "iron",
  grams,
  ({ copper, allowance }) => copper.times(massRatio("iron", "Fe", "Cu")).times(allowance.plus(1)),
);

export const soda = formula(
  {
    title: "Soda that neutralises free acid",
    rule: "free acid × soda per mol of acid",
    caution: `Neutralising is hot and foams. ${WASTE_CAUTION}`,
  },
  { freeAcid: moles, soda: { unit: "g/mol" } },
  "soda",
  grams,
  ({ freeAcid, soda }) => freeAcid.times(soda),
);
