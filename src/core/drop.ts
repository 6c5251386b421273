import { ONE } from "./expression/expression";
import { formula } from "./expression/formula";
import { atomic, massRatio, molar } from "./matter";
import { count, grams, moles, share } from "./measure/quantity";

const COPPER_PER_SILVER = massRatio("drop", "Cu", "Ag");
export const SILVER_PER_COPPER = massRatio("drop", "Ag", "Cu");
const COPPER_PER_ACID = molar("copperDilute", "Cu", "HNO3").times(atomic("Cu")).named("Cu per mol of HNO3", "g/mol");

const CAUTION =
  "Silver nitrate and nitric acid burn skin and eyes, and free acid on copper gives off toxic fume: the figure plans a purchase and is no procedure; local codes and licensed practice decide";
const SOURCE = "Cu + 2 Ag⁺ → Cu²⁺ + 2 Ag; free acid by the dilute route 3 Cu + 8 HNO₃ → 3 Cu(NO₃)₂ + 2 NO + 4 H₂O";

export const copperDemand = formula(
  {
    title: "Copper that the drop consumes",
    rule: "copper for the silver, with its allowance, and what the free acid eats",
    source: SOURCE,
    caution: CAUTION,
  },
  { silver: grams, allowance: share, freeAcid: moles },
  "copper",
  grams,
  ({ silver, allowance, freeAcid }) =>
    silver.times(COPPER_PER_SILVER).times(allowance.plus(1)).plus(freeAcid.times(COPPER_PER_ACID)),
);

export const silverDropped = formula(
  {
    title: "Silver that a bar's weight loss stands for",
    rule: "copper lost, less what the free acid ate, times silver per copper",
    source: SOURCE,
    caution: CAUTION,
  },
  { copperLost: grams, freeAcid: moles },
  "silver dropped",
  grams,
  ({ copperLost, freeAcid }) => copperLost.minus(freeAcid.times(COPPER_PER_ACID)).times(SILVER_PER_COPPER),
);

export const copperBars = formula(
  { title: "Copper bars to hang", rule: "copper needed over what one bar gives before its stub is left, in whole bars" },
  { copper: grams, bar: grams, stub: share },
  "bars",
  count,
  ({ copper, bar, stub }) => {
    const used = bar.times(ONE.minus(stub)).named("copper that one bar gives", "g");
    return copper.over(used).ceiling();
  },
);
