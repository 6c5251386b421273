import { type Expression, ONE, ZERO, choose, count as number, refuse, sum } from "./expression/expression";
import { type ResultCell, each, formula, statement } from "./expression/formula";
import { atomic, massRatio, molar, molarMass, natural } from "./matter";
import { count, dateTime, grams, gramsPerLitre, hours, moles, share } from "./measure/quantity";

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

export const dropRate = formula(
  {
    title: "First-order rate of a drop",
    rule: "the slope, with its sign turned, of the straight line of least squares through ln(silver) over the hours",
    source: "least squares; the drop of silver on copper is first order in silver while it is held back by diffusion",
  },
  { hours: each(hours), silver: each(gramsPerLitre) },
  "rate",
  { unit: "per h" },
  ({ hours, silver }) => {
    const n = number(hours).named("readings", "");
    const meanHours = sum(hours).over(n).named("mean of the hours", "h");
    const meanLog = sum(silver.ln()).over(n).named("mean of ln(silver)", "");
    const spread = sum(hours.minus(meanHours).power(2)).named("spread of the hours", "h²");
    return choose(
      spread.isAtMost(0),
      refuse({
        kind: "conflict",
        names: ["hours", "silver"],
        because: "a rate needs readings at two different hours or more",
        write: "add a reading",
      }),
      ZERO.minus(sum(hours.minus(meanHours).times(silver.ln().minus(meanLog))).over(spread)),
    );
  },
);

export const dropHours = formula(
  { title: "Hours until a drop is down to a target", rule: "ln(start ÷ target) ÷ rate, for a first-order drop", caution: CAUTION },
  { start: gramsPerLitre, target: gramsPerLitre, rate: { unit: "per h" } },
  "hours",
  hours,
  ({ start, target, rate }) =>
    choose(
      start.isAtMost(target),
      refuse({ kind: "conflict", names: ["target", "start"], because: "the silver is already at the target", write: "give a target below the start" }),
      start.over(target).ln().over(rate),
    ),
);

export const droppedShare = formula(
  { title: "Share of the silver dropped after a time", rule: "1 − exp(−rate × hours), for a first-order drop", caution: CAUTION },
  { hours, rate: { unit: "per h" } },
  "share dropped",
  share,
  ({ hours, rate }) => ONE.minus(ZERO.minus(rate.times(hours)).exp()),
);

export const silverLeft = formula(
  {
    title: "Silver that a salted liquor can still hold",
    rule: "solubility product of silver chloride over the chloride: free silver ion alone; chloride complexes hold somewhat more, the more chloride there is",
    caution: CAUTION,
  },
  { chloride: { unit: "mol/L" } },
  "silver left",
  gramsPerLitre,
  ({ chloride }) => natural("silverChloride").over(chloride).times(atomic("Ag")),
);

export const salt = formula(
  { title: "Salt that takes the silver as chloride", rule: "silver × NaCl per silver × (1 + excess)", source: "Ag⁺ + NaCl → AgCl + Na⁺", caution: CAUTION },
  { silver: grams, excess: share },
  "salt",
  grams,
  ({ silver, excess }) => silver.times(molar("salt", "NaCl", "Ag+").times(molarMass("NaCl")).over(atomic("Ag")).named("NaCl per Ag", "g/g")).times(excess.plus(1)),
);

export const chlorideSilver = formula(
  { title: "Silver in dry silver chloride", rule: "silver chloride × silver in it" },
  { chloride: grams },
  "silver",
  grams,
  ({ chloride }) => chloride.times(atomic("Ag").over(molarMass("AgCl")).named("Ag in AgCl", "g/g")),
);

export const chlorideReduction = statement(
  {
    title: "Reagents that turn silver chloride to silver",
    rule: "silver chloride × reagent per silver chloride × (1 + excess); glucose works in caustic soda, the metals do not need it",
    caution: "Caustic soda burns skin and eyes, zinc and iron in acid give off hydrogen, which burns: the figure plans a purchase and is no procedure; local codes and licensed practice decide",
  },
  { chloride: grams, reagent: { unit: "g/g" }, caustic: { unit: "g/g" }, excess: share, inOne: grams },
  ({ chloride, reagent, caustic, excess, inOne }) => {
    const withExcess = excess.plus(1);
    const silver = chloride.times(atomic("Ag").over(molarMass("AgCl")).named("Ag in AgCl", "g/g"));
    const row = (label: string, of: Expression): readonly ResultCell[] => [label, { name: label, quantity: count, of: of.over(inOne) }, { unitOf: "inOne" }];
    return [
      row("Reagent", chloride.times(reagent).times(withExcess)),
      row("Caustic soda", chloride.times(caustic).times(withExcess)),
      row("Silver that it gives", silver),
    ];
  },
);

export const goldDrop = formula(
  {
    title: "Reagent that drops gold",
    rule: "gold × reagent per gold × (1 + excess); what else the liquor holds, nitric acid above all, takes its own share",
    caution: "Gold liquors are acid and the reagents give off sulfur dioxide or carbon dioxide: the figure plans a purchase and is no procedure; local codes and licensed practice decide",
  },
  { gold: grams, reagent: { unit: "g/g" }, excess: share },
  "reagent",
  grams,
  ({ gold, reagent, excess }) => gold.times(reagent).times(excess.plus(1)),
);

const HOURS_IN_A_DAY = 24;

export const dropPlan = statement(
  {
    title: "Plan of a drop",
    rule: "hang the bars at the start, look in half-way, test and lift the bars when the drop is to be done, decant when it has settled",
    source: "common practice, no source: some 48 h under air agitation, then 24 h to settle",
    caution: CAUTION,
  },
  { start: dateTime, dropHours: hours, settleHours: hours },
  ({ start, dropHours, settleHours }) => {
    const at = (label: string, hoursLater: Expression): readonly ResultCell[] => [
      label,
      { name: label, quantity: dateTime, of: start.plus(hoursLater.over(HOURS_IN_A_DAY)) },
    ];
    return [
      at("Hang the bars", ZERO),
      at("Look in", dropHours.over(2)),
      at("Test for silver", dropHours),
      at("Lift the bars", dropHours),
      at("Decant", dropHours.plus(settleHours)),
    ];
  },
);
