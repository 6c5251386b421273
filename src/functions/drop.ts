import * as drop from "../core/drop";
import { answer, spilled } from "./answer";
import * as read from "./read";

/**
 * Copper that a drop consumes: for the silver, with an allowance, and for the free acid.
 * @customfunction COPPER
 * @param fine The fine silver in solution.
 * @param unit Its unit.
 * @param [allowance] Copper beyond what the reaction takes, as a share.
 * @param [freeAcid] Free nitric acid in the liquor, in mol.
 * @param [to] The unit to give the copper in.
 * @returns The copper.
 * @words how much copper cement cementation drop buy bars bus bar stoichiometric
 * @source Cu + 2 Ag⁺ → Cu²⁺ + 2 Ag; 3 Cu + 8 HNO₃ → 3 Cu(NO₃)₂ + 2 NO + 4 H₂O
 * @caution Silver nitrate and nitric acid burn skin and eyes; free acid on copper gives off toxic fume. The figure plans a purchase and is no procedure; local codes and licensed practice decide.
 * @example =LOT.COPPER(10,"lb") -> 2.94553…
 * @example =LOT.COPPER(3,"lb","13%") -> 0.998537…
 * @example =LOT.COPPER(10,"oz") -> #VALUE! Cannot use unit = "oz": an ounce can be troy or avoirdupois, and they differ by 9.7 %: write "ozt" (troy, 31.1034768 g) or "ozav" (avoirdupois, 28.349523125 g)
 */
export function copper(fine: any, unit: any, allowance?: any, freeAcid?: any, to?: any): any {
  const given = read.massUnit("unit", unit);
  return answer(
    drop.copperDemand,
    {
      silver: read.mass("fine", fine, given),
      allowance: read.single("allowance", allowance, read.shareUpToTen, read.nothing),
      freeAcid: read.single("freeAcid", freeAcid, read.fromZero, read.nothing),
    },
    read.massUnit("to", to, given),
  );
}

/**
 * Silver that the weight loss of copper bars stands for, less what free acid ate: a check on the drop from the scale.
 * @customfunction SILVERDROPPED
 * @param copperLost The weight that the bars lost.
 * @param unit Its unit.
 * @param [freeAcid] Free nitric acid that was in the liquor, in mol.
 * @param [to] The unit to give the silver in.
 * @returns The silver.
 * @words bar loss check drop scale cement yield
 * @source Cu + 2 Ag⁺ → Cu²⁺ + 2 Ag; 3 Cu + 8 HNO₃ → 3 Cu(NO₃)₂ + 2 NO + 4 H₂O
 * @caution Silver nitrate and nitric acid burn skin and eyes; local codes and licensed practice decide.
 * @example =LOT.SILVERDROPPED(1,"lb") -> 3.39496…
 */
export function silverDropped(copperLost: any, unit: any, freeAcid?: any, to?: any): any {
  const given = read.massUnit("unit", unit);
  return answer(
    drop.silverDropped,
    {
      copperLost: read.mass("copperLost", copperLost, given),
      freeAcid: read.single("freeAcid", freeAcid, read.fromZero, read.nothing),
    },
    read.massUnit("to", to, given),
  );
}

/**
 * Whole copper bars to hang when each leaves a stub.
 * @customfunction COPPERBARS
 * @param copper The copper that the drop needs.
 * @param unit Its unit.
 * @param bar The weight of one bar.
 * @param barUnit The unit of the bar's weight.
 * @param [stub] The share of a bar that is left as its stub.
 * @returns The number of bars.
 * @words how many bars hang stub bus bar copper count
 * @example =LOT.COPPERBARS(3.3,"lb",1,"lb","20%") -> 5
 */
export function copperBars(copper: any, unit: any, bar: any, barUnit: any, stub?: any): any {
  return answer(drop.copperBars, {
    copper: read.mass("copper", copper, read.massUnit("unit", unit)),
    bar: read.mass("bar", bar, read.massUnit("barUnit", barUnit)),
    stub: read.single("stub", stub, read.shareBelowOne, read.nothing),
  });
}

/**
 * First-order rate of a drop, from a lot's own readings: the line of least squares through ln(silver) over the hours.
 * @customfunction DROPRATE
 * @param hours The hours of the readings.
 * @param silver The silver in solution at each, in one unit, in a range of the same shape.
 * @returns The rate, in 1/h.
 * @words kinetics speed regression slope half-life readings test
 * @source least squares; silver drops on copper by a first-order law in silver while diffusion holds it back
 * @example =LOT.DROPRATE({0;6;12;18;24},{1;0.5;0.25;0.125;0.0625}) -> 0.115524…
 */
export function dropRate(hours: any[][], silver: any[][]): any {
  const [t, c] = read.paired(read.range("hours", hours, read.fromZero), read.range("silver", silver, read.aboveZero));
  return answer(drop.dropRate, { hours: read.withoutGaps(t, hours), silver: read.withoutGaps(c, silver) });
}

/**
 * Hours until a first-order drop is down to a target.
 * @customfunction DROPHOURS
 * @param start The silver in solution at the start.
 * @param target The silver to come to, in the same unit.
 * @param rate The rate, in 1/h.
 * @returns The hours.
 * @words how long time wait agitation finished
 * @caution Silver nitrate burns skin and eyes; a drop is done when the test says so. Local codes and licensed practice decide.
 * @example =LOT.DROPHOURS(100,0.01,0.19188) -> 48.00052…
 */
export function dropHours(start: any, target: any, rate: any): any {
  return answer(drop.dropHours, {
    start: read.single("start", start, read.aboveZero),
    target: read.single("target", target, read.aboveZero),
    rate: read.single("rate", rate, read.aboveZero),
  });
}

/**
 * Share of the silver that a first-order drop has dropped after a time.
 * @customfunction DROPPED
 * @param hours The hours.
 * @param rate The rate, in 1/h.
 * @returns The share dropped, as a fraction; format the cell as a percentage.
 * @words progress percent complete drop time
 * @caution Silver nitrate burns skin and eyes; a drop is done when the test says so. Local codes and licensed practice decide.
 * @example =LOT.DROPPED(24,0.1) -> 0.909282…
 */
export function droppedAfter(hours: any, rate: any): any {
  return answer(drop.droppedShare, {
    hours: read.single("hours", hours, read.upToTenThousand),
    rate: read.single("rate", rate, read.aboveZeroToTenThousand),
  });
}

/**
 * Silver that a salted liquor can still hold as free silver ion.
 * @customfunction SILVERLEFT
 * @param chloride The chloride left in solution, in mol/L.
 * @returns The silver, in g/L.
 * @words salt test chloride solubility Ksp complete drop
 * @source solubility product of AgCl at 25 °C, 1.77e-10 mol²/L² (CRC Handbook, from memory; OpenStax Chemistry 2e prints 1.6e-10)
 * @caution Silver nitrate burns skin and eyes; local codes and licensed practice decide.
 * @example =LOT.SILVERLEFT(0.01) -> 0.000001…
 */
export function silverLeft(chloride: any): any {
  return answer(drop.silverLeft, { chloride: read.single("chloride", chloride, read.chloride) });
}

/**
 * Salt that takes silver out of solution as chloride.
 * @customfunction SALT
 * @param silver The silver in solution.
 * @param unit Its unit.
 * @param [excess] Salt beyond what the reaction takes, as a share.
 * @param [to] The unit to give the salt in.
 * @returns The salt (NaCl).
 * @words sodium chloride last silver precipitate
 * @source Ag⁺ + NaCl → AgCl + Na⁺
 * @caution Silver nitrate burns skin and eyes; local codes and licensed practice decide.
 * @example =LOT.SALT(100,"g") -> 54.17701…
 */
export function salt(silver: any, unit: any, excess?: any, to?: any): any {
  return answer(
    drop.salt,
    {
      silver: read.mass("silver", silver, read.massUnit("unit", unit)),
      excess: read.single("excess", excess, read.shareUpToTen, read.nothing),
    },
    read.massUnit("to", to, read.gram),
  );
}

/**
 * Silver in dry silver chloride.
 * @customfunction CHLORIDESILVER
 * @param chloride The weight of the dry silver chloride.
 * @param unit Its unit.
 * @param [to] The unit to give the silver in.
 * @returns The silver.
 * @words AgCl wet work content
 * @example =LOT.CHLORIDESILVER(100,"g") -> 75.26483…
 */
export function chlorideSilver(chloride: any, unit: any, to?: any): any {
  const given = read.massUnit("unit", unit);
  return answer(drop.chlorideSilver, { chloride: read.mass("chloride", chloride, given) }, read.massUnit("to", to, given));
}

/**
 * Reagents that turn dry silver chloride to silver: a metal, or glucose in caustic soda.
 * @customfunction SILVERFROMCHLORIDE
 * @param chloride The weight of the dry silver chloride.
 * @param unit Its unit.
 * @param [reagent] What it is turned with.
 * @param [excess] Reagent beyond what the reaction takes, as a share.
 * @param [to] The unit to give the weights in.
 * @returns Three lines: the reagent, the caustic soda that goes with it, the silver that it gives.
 * @words AgCl convert zinc iron sugar lye reduce
 * @source 2 AgCl + Zn → 2 Ag + ZnCl₂; 2 AgCl + Fe → 2 Ag + FeCl₂; 2 AgCl + C₆H₁₂O₆ + 3 NaOH → 2 Ag + NaC₆H₁₁O₇ + 2 NaCl + 2 H₂O
 * @caution Caustic soda burns; zinc and iron in acid give off hydrogen, which burns. The figure plans a purchase and is no procedure; local codes and licensed practice decide.
 * @example =LOT.SILVERFROMCHLORIDE(100,"g","zinc") -> Reagent
 */
export function silverFromChloride(chloride: any, unit: any, reagent?: any, excess?: any, to?: any): any[][] {
  const given = read.massUnit("unit", unit);
  return spilled(
    answer(drop.chlorideReduction, {
      chloride: read.mass("chloride", chloride, given),
      reagent: read.reagent("reagent", reagent, read.chlorideReductants, "zinc"),
      caustic: read.alongWith(read.reagent("reagent", reagent, read.chlorideCaustic, "zinc")),
      excess: read.single("excess", excess, read.shareUpToTen, read.nothing),
      inOne: read.gramsInOne(read.massUnit("to", to, given)),
    }),
  );
}

/**
 * Reagent that drops a weight of gold from a chloride liquor.
 * @customfunction GOLDDROP
 * @param gold The gold in solution.
 * @param unit Its unit.
 * @param reagent Which reagent it is.
 * @param [excess] Reagent beyond what the reaction takes, as a share.
 * @param [to] The unit to give it in.
 * @returns The reagent.
 * @words SMB metabisulfite copperas ferrous sulfate oxalic sulfur dioxide precipitate gold
 * @source 4 HAuCl₄ + 3 Na₂S₂O₅ + 9 H₂O → 4 Au + 6 NaHSO₄ + 16 HCl; HAuCl₄ + 3 FeSO₄·7H₂O → Au + FeCl₃ + Fe₂(SO₄)₃ + HCl + 21 H₂O; 2 HAuCl₄ + 3 SO₂ + 6 H₂O → 2 Au + 3 H₂SO₄ + 8 HCl; 2 HAuCl₄ + 3 H₂C₂O₄ → 2 Au + 6 CO₂ + 8 HCl
 * @caution Gold liquors are acid, and the reagents give off sulfur dioxide or carbon dioxide. The figure plans a purchase and is no procedure; local codes and licensed practice decide.
 * @example =LOT.GOLDDROP(1,"ozt","sodium metabisulfite",0,"g") -> 22.51372…
 */
export function goldDrop(gold: any, unit: any, reagent: any, excess?: any, to?: any): any {
  return answer(
    drop.goldDrop,
    {
      gold: read.mass("gold", gold, read.massUnit("unit", unit)),
      reagent: read.reagent("reagent", reagent, read.goldReductants),
      excess: read.single("excess", excess, read.shareUpToTen, read.nothing),
    },
    read.massUnit("to", to, read.gram),
  );
}

/**
 * The plan of a drop: when to hang the bars, look in, test, lift the bars and decant.
 * @customfunction DROPPLAN
 * @param start Date and time of the start; format the times as date and time.
 * @param dropHours The hours of the drop.
 * @param settleHours The hours to settle.
 * @returns Five lines of step and time.
 * @words schedule when check times calendar batch
 * @caution Silver nitrate burns skin and eyes; a drop is done when the test says so. Local codes and licensed practice decide.
 * @example =LOT.DROPPLAN(46000.5,48,24) -> Hang the bars
 */
export function dropPlan(start: any, dropHours: any, settleHours: any): any[][] {
  return spilled(
    answer(drop.dropPlan, {
      start: read.single("start", start, read.dateTime),
      dropHours: read.single("dropHours", dropHours, read.fromZero),
      settleHours: read.single("settleHours", settleHours, read.fromZero),
    }),
  );
}
