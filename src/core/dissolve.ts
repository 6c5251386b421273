import { type Expression, ONE, choose, refuse } from "./expression/expression";
import { type Amount, type Quantity, formula, statement } from "./expression/formula";
import { type ReactionName, molar, molarMass, natural, atomic } from "./matter";
import { count, fineness, grams, hours, litres, litresPerHour, moles, share } from "./measure/quantity";

const ACID_CAUTION =
  "Nitric acid burns and gives off toxic nitrogen oxides: the figure plans a purchase and is no procedure; local fire, air, water and waste codes and licensed practice decide";
const AIR_CAUTION =
  "An average over a room can show that the air is not enough, never that it is: fume is drawn off where it rises; local codes and licensed practice decide";
const ROUTES =
  "dilute route 3 Ag + 4 HNO₃ → 3 AgNO₃ + NO + 2 H₂O and 3 Cu + 8 HNO₃ → 3 Cu(NO₃)₂ + 2 NO + 4 H₂O; strong route Ag + 2 HNO₃ → AgNO₃ + NO₂ + H₂O and Cu + 4 HNO₃ → Cu(NO₃)₂ + 2 NO₂ + 2 H₂O";

const molarity = (strength: Expression, density: Expression): Expression =>
  strength.times(density).times(1000).over(molarMass("HNO3")).named("molarity", "mol/L");

export const acidMolarity = formula(
  {
    title: "Molarity of nitric acid",
    rule: "mass of acid in a litre over its molar mass; the density at 20 °C is read between the rows of the table",
    source: "density: CRC Handbook of Chemistry and Physics, 102nd ed. (to 40 %), Perry's Chemical Engineers' Handbook (above; in part from memory)",
    caution: ACID_CAUTION,
  },
  { strength: share, density: { unit: "g/mL" } },
  "molarity",
  { unit: "mol/L" },
  ({ strength, density }) => molarity(strength, density),
);

/** Mol of one substance that a charge takes or gives: silver and copper each by the share of either route. */
function perMetal(of: Readonly<Record<"silver" | "copper", readonly [dilute: string, strong: string]>>) {
  const route = (dilute: ReactionName, strong: ReactionName, metal: string, [a, b]: readonly [string, string]) => ({
    dilute: molar(dilute, a, metal).over(atomic(metal)).named(`${a} per gram of ${metal}, dilute route`, "mol/g"),
    strong: molar(strong, b, metal).over(atomic(metal)).named(`${b} per gram of ${metal}, strong route`, "mol/g"),
  });
  return {
    silver: route("silverDilute", "silverStrong", "Ag", of.silver),
    copper: route("copperDilute", "copperStrong", "Cu", of.copper),
  };
}

const ACID = perMetal({ silver: ["HNO3", "HNO3"], copper: ["HNO3", "HNO3"] });
const GAS = perMetal({ silver: ["NO", "NO2"], copper: ["NO", "NO2"] });

type Symbols = Readonly<Record<"weight" | "fineness" | "no2share", Expression>>;

function charged({ weight, fineness, no2share }: Symbols, per: typeof ACID) {
  const silver = weight.times(fineness).named("silver", "g");
  const copper = weight.times(ONE.minus(fineness)).named("the rest, taken as copper", "g");
  const mixed = ({ dilute, strong }: typeof ACID.silver) =>
    dilute.times(ONE.minus(no2share)).plus(strong.times(no2share));
  return silver.times(mixed(per.silver)).plus(copper.times(mixed(per.copper)));
}

export const nitricAcid = formula(
  {
    title: "Nitric acid to dissolve a charge",
    rule: "acid for the silver and for the rest, taken as copper, by the share that dissolves by the strong route, with its excess, over the molarity; a real batch lies between a share of 0 and of 1",
    source: ROUTES,
    caution: ACID_CAUTION,
  },
  { weight: grams, fineness, strength: share, density: { unit: "g/mL" }, no2share: share, excess: share },
  "nitric acid",
  litres,
  (s) => {
    const acid = charged(s, ACID).named("acid that the metal takes", "mol");
    return acid.times(s.excess.plus(1)).over(molarity(s.strength, s.density));
  },
);

export const fume = formula(
  {
    title: "Nitrogen oxides given off",
    rule: "gas from the silver and from the rest, taken as copper, by the share that dissolves by the strong route; NO turns to NO₂ in air, so all of it counts as NO₂",
    source: ROUTES,
    caution: ACID_CAUTION,
  },
  { weight: grams, fineness, no2share: share },
  "gas",
  moles,
  (s) => charged(s, GAS),
);

export const inquartation = statement(
  {
    title: "Inquartation: metal to add so that acid can part the gold, and the acid for it",
    rule: "gold-bearing weight × (fineness − target) ÷ target is to be added; the acid is for that as silver and for the rest of the metal as copper, at least by the dilute and at most by the strong route",
    source: ROUTES,
    caution: ACID_CAUTION,
  },
  { weight: grams, fineness, target: fineness, strength: share, density: { unit: "g/mL" }, inOne: grams },
  ({ weight, fineness, target, strength, density, inOne }) => {
    const toAdd = choose(
      fineness.isAtMost(target),
      refuse({
        kind: "conflict",
        names: ["fineness", "target"],
        because: "the metal is already at or under the target, so nothing need be added",
        write: "give a target below the fineness",
      }),
      weight.times(fineness.minus(target)).over(target),
    ).named("silver to add", "g");
    const base = weight.times(ONE.minus(fineness)).named("base metal, taken as copper", "g");
    const perLitre = molarity(strength, density);
    const acid = (route: "dilute" | "strong"): Expression => toAdd.times(ACID.silver[route]).plus(base.times(ACID.copper[route])).over(perLitre);
    const cell = (name: string, quantity: Quantity, of: Expression): Amount => ({ name, quantity, of });
    return [
      [cell("to add", count, toAdd.over(inOne)), { unitOf: "inOne" }, "silver or copper to add"],
      [cell("acid, at least", litres, acid("dilute")), "L", "nitric acid, at least"],
      [cell("acid, at most", litres, acid("strong")), "L", "nitric acid, at most"],
    ];
  },
);

export const dilutionAir = formula(
  {
    title: "Air that dilutes a gas to a limit, as an average over the room",
    rule: "gas given off per hour × 10⁶ × safety factor ÷ limit: a figure to show that a room cannot be enough, not a design",
    source: "dilution ventilation, Q = G·10⁶·K ÷ limit, occupational hygiene practice",
    caution: AIR_CAUTION,
  },
  { gas: moles, hours, limit: { unit: "ppm" }, safety: count },
  "air flow",
  litresPerHour,
  ({ gas, hours, limit, safety }) => {
    const rate = gas.times(natural("molarVolume")).over(hours).named("gas per hour", "L/h");
    return rate.times(1_000_000).times(safety).over(limit);
  },
);

export const silverLoad = formula(
  {
    title: "Silver in the liquor",
    rule: "fine silver over the volume",
    caution: "Silver nitrate burns skin and eyes and stains; local codes and licensed practice decide",
  },
  { fine: grams, volume: litres },
  "load",
  { unit: "g/L" },
  ({ fine, volume }) => fine.over(volume),
);

export const vessels = formula(
  { title: "Vessels", rule: "volume over what one vessel holds at its fill, in whole vessels" },
  { volume: litres, vessel: litres, fill: share },
  "vessels",
  count,
  ({ volume, vessel, fill }) => volume.over(vessel.times(fill).named("volume in one vessel", "L")).ceiling(),
);
