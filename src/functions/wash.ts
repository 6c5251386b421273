import * as washing from "../core/wash";
import { answer } from "./answer";
import * as read from "./read";

/**
 * Concentration that is left after rinsing by decanting.
 * @customfunction RINSED
 * @param start The concentration at the start.
 * @param retained The liquid that stays behind at each decanting.
 * @param rinse The rinse water added each time, in the same unit.
 * @param rinses How many rinses.
 * @returns The concentration, in the unit of the start.
 * @words wash water decant cement silver dilution left
 * @source washing by decantation, xₙ = x₀ (u ÷ (u + v))ⁿ
 * @example =LOT.RINSED(20,50,450,3) -> 0.02
 */
export function rinsed(start: any, retained: any, rinse: any, rinses: any): any {
  return answer(washing.rinsed, {
    start: read.single("start", start, read.fromZero),
    retained: read.single("retained", retained, read.aboveZero),
    rinse: read.single("rinse", rinse, read.aboveZero),
    rinses: read.single("rinses", rinses, read.wholeNumber),
  });
}

/**
 * Whole rinses by decanting that bring a concentration to a target.
 * @customfunction RINSES
 * @param start The concentration at the start.
 * @param target The concentration to come to, in the same unit.
 * @param retained The liquid that stays behind at each decanting.
 * @param rinse The rinse water added each time, in the same unit.
 * @returns The number of rinses.
 * @words wash how many times decant water
 * @source washing by decantation, xₙ = x₀ (u ÷ (u + v))ⁿ
 * @example =LOT.RINSES(20,0.02,50,450) -> 3
 */
export function rinses(start: any, target: any, retained: any, rinse: any): any {
  return answer(washing.rinses, {
    start: read.single("start", start, read.aboveZero),
    target: read.single("target", target, read.aboveZero),
    retained: read.single("retained", retained, read.aboveZero),
    rinse: read.single("rinse", rinse, read.aboveZero),
  });
}

/**
 * Copper in the spent liquor: what came with the alloy and what the drop put in.
 * @customfunction SPENTCOPPER
 * @param silver The silver dropped.
 * @param silverUnit Its unit.
 * @param copper The copper that was in the charge.
 * @param copperUnit Its unit.
 * @param volume The volume of the spent liquor.
 * @param volumeUnit Its unit.
 * @returns The copper, in g/L.
 * @words waste liquor blue copper nitrate concentration
 * @source Cu + 2 Ag⁺ → Cu²⁺ + 2 Ag
 * @caution Spent liquor is acid and holds copper: it is treated as waste by local water and waste codes and licensed practice.
 * @example =LOT.SPENTCOPPER(0.925,"kg",0.075,"kg",10,"L") -> 34.74623…
 */
export function spentCopper(silver: any, silverUnit: any, copper: any, copperUnit: any, volume: any, volumeUnit: any): any {
  return answer(washing.spentCopper, {
    silver: read.mass("silver", silver, read.massUnit("silverUnit", silverUnit), read.fromZero),
    copper: read.mass("copper", copper, read.massUnit("copperUnit", copperUnit), read.fromZero),
    volume: read.volume("volume", volume, read.volumeUnit("volumeUnit", volumeUnit)),
  });
}

/**
 * Iron that takes the copper out of a spent liquor again.
 * @customfunction IRON
 * @param copper The copper in the liquor.
 * @param unit Its unit.
 * @param [allowance] Iron beyond what the reaction takes, as a share.
 * @param [to] The unit to give the iron in.
 * @returns The iron.
 * @words steel scrap copper recovery waste treatment cement copper
 * @source Fe + Cu²⁺ → Fe²⁺ + Cu
 * @caution Spent liquor is acid and holds metals; iron in it gives off hydrogen, which burns. Local water and waste codes and licensed practice decide.
 * @example =LOT.IRON(1,"kg") -> 0.878812…
 */
export function iron(copper: any, unit: any, allowance?: any, to?: any): any {
  const given = read.massUnit("unit", unit);
  return answer(
    washing.ironDemand,
    {
      copper: read.mass("copper", copper, given),
      allowance: read.single("allowance", allowance, read.shareUpToTen, read.nothing),
    },
    read.massUnit("to", to, given),
  );
}

/**
 * Soda ash or caustic soda that neutralises free nitric acid.
 * @customfunction SODA
 * @param freeAcid The free nitric acid, in mol.
 * @param [as] Which soda it is.
 * @param [to] The unit to give it in.
 * @returns The weight of soda.
 * @words neutralise sodium carbonate hydroxide lye caustic soda ash waste
 * @source Na₂CO₃ + 2 HNO₃ → 2 NaNO₃ + CO₂ + H₂O; NaOH + HNO₃ → NaNO₃ + H₂O
 * @caution Neutralising is hot and foams, caustic soda burns. Local water and waste codes and licensed practice decide.
 * @example =LOT.SODA(10,"NaOH") -> 0.399967…
 */
export function soda(freeAcid: any, as?: any, to?: any): any {
  return answer(
    washing.soda,
    {
      freeAcid: read.single("freeAcid", freeAcid, read.aboveZero),
      soda: read.reagent("as", as, read.neutralisers, "Na2CO3"),
    },
    read.massUnit("to", to, read.kilogram),
  );
}
