import { copperBars as bars, copperDemand, silverDropped as dropped } from "../core/drop";
import { answer } from "./answer";
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
 * @example =LOT.COPPER(10,"lb") -> 2.945539092335572
 * @example =LOT.COPPER(3,"lb","13%") -> 0.9985377523017589
 * @example =LOT.COPPER(10,"oz") -> #VALUE! Cannot use unit = "oz": an ounce can be troy or avoirdupois, and they differ by 9.7 %: write "ozt" (troy, 31.1034768 g) or "ozav" (avoirdupois, 28.349523125 g)
 */
export function copper(fine: any, unit: any, allowance?: any, freeAcid?: any, to?: any): any {
  const given = read.massUnit("unit", unit);
  return answer(
    copperDemand,
    {
      silver: read.mass("fine", fine, given),
      allowance: read.single("allowance", allowance, read.shareUpTo(10), read.nothing),
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
 * @example =LOT.SILVERDROPPED(1,"lb") -> 3.394964279735625
 */
export function silverDropped(copperLost: any, unit: any, freeAcid?: any, to?: any): any {
  const given = read.massUnit("unit", unit);
  return answer(
    dropped,
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
  return answer(bars, {
    copper: read.mass("copper", copper, read.massUnit("unit", unit)),
    bar: read.mass("bar", bar, read.massUnit("barUnit", barUnit)),
    stub: read.single("stub", stub, read.shareUpTo(1, { below: true }), read.nothing),
  });
}
