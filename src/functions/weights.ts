import * as weigh from "../core/weigh";
import { inquartation } from "../core/dissolve";
import { answer, spilled } from "./answer";
import * as read from "./read";

/**
 * A weight in another unit.
 * @customfunction WEIGHT
 * @param value The weight.
 * @param from Its unit.
 * @param to The unit to give it in.
 * @returns The weight in the other unit.
 * @words convert pounds grams troy avoirdupois ounces pennyweight grains kilogram
 * @source 1 lb = 453.59237 g and 1 ozt = 31.1034768 g, both exact: NIST Special Publication 811, appendix B.8
 * @example =LOT.WEIGHT(1,"lb","ozt") -> 14.58333…
 * @example =LOT.WEIGHT(7000,"gr","lb") -> 1
 * @example =LOT.WEIGHT(5,"oz","g") -> #VALUE! Cannot use from = "oz": an ounce can be troy or avoirdupois, and they differ by 9.7 %: write "ozt" (troy, 31.1034768 g) or "ozav" (avoirdupois, 28.349523125 g)
 */
export function weight(value: any, from: any, to: any): any {
  return answer(weigh.weight, { weight: read.mass("value", value, read.massUnit("from", from)) }, read.massUnit("to", to));
}

/**
 * A volume in another unit. A bare gallon is the US liquid gallon.
 * @customfunction VOLUME
 * @param value The volume.
 * @param from Its unit.
 * @param to The unit to give it in.
 * @returns The volume in the other unit.
 * @words convert litres liters gallons pail millilitre cubic feet
 * @source NIST Special Publication 811, appendix B.8
 * @example =LOT.VOLUME(5,"gal","L") -> 18.92705892
 * @example =LOT.VOLUME(1,"ft3","L") -> 28.316846592
 */
export function volume(value: any, from: any, to: any): any {
  const given = read.single("value", value, read.aboveZero);
  return answer(weigh.volume, { volume: read.withUnit(given, read.volumeUnit("from", from)) }, read.volumeUnit("to", to));
}

/**
 * A fineness on another scale.
 * @customfunction FINENESS
 * @param value The fineness as it is written.
 * @param [to] The scale to give it on.
 * @returns The fineness.
 * @words karat carat percent purity stamp mark sterling millesimal
 * @example =LOT.FINENESS("22k") -> 916.66666…
 * @example =LOT.FINENESS("sterling","%") -> 92.5
 * @example =LOT.FINENESS(0.75,"karat") -> 18
 * @example =LOT.FINENESS(92.5) -> #VALUE! Cannot use value = 92.5: could be %, karat or ‰: write "92.5%" or 925
 */
export function fineness(value: any, to?: any): any {
  return answer(weigh.finenessOf, { fineness: read.fineness("value", value) }, read.finenessScale("to", to));
}

/**
 * The fineness of a named standard.
 * @customfunction STANDARD
 * @param name The name of the standard.
 * @returns The fineness, in parts per thousand.
 * @words sterling coin Britannia hallmark stamp mark legal gold platinum palladium
 * @source Hallmarking Convention (legal standards); 16 CFR 23.5(b) (sterling, coin); ISO 9202 series as commonly quoted (830, 417)
 * @example =LOT.STANDARD("sterling") -> 925
 * @example =LOT.STANDARD("coin") -> 900
 */
export function standard(name: any): any {
  return answer(weigh.finenessOf, { fineness: read.standard("name", name) }, read.partsPerThousand);
}

/**
 * Fine weight: net weight times fineness.
 * @customfunction FINEWEIGHT
 * @param weight The net weight.
 * @param unit Its unit.
 * @param fineness The fineness.
 * @param [to] The unit to give the fine weight in.
 * @returns The fine weight.
 * @words pure silver content contained metal sterling fine ounces assay
 * @example =LOT.FINEWEIGHT(7500,"g",925) -> 223.04580…
 * @example =LOT.FINEWEIGHT(100,"ozt","sterling") -> 92.5
 * @example =LOT.FINEWEIGHT(100,"ozt",92.5) -> #VALUE! Cannot use fineness = 92.5: could be %, karat or ‰: write "92.5%" or 925
 */
export function fineWeight(weight: any, unit: any, fineness: any, to?: any): any {
  return answer(
    weigh.fineWeight,
    {
      weight: read.mass("weight", weight, read.massUnit("unit", unit)),
      fineness: read.fineness("fineness", fineness),
    },
    read.massUnit("to", to, read.troyOunce),
  );
}

/**
 * Net weight that holds a given fine weight.
 * @customfunction GROSSWEIGHT
 * @param fine The fine weight.
 * @param unit Its unit.
 * @param fineness The fineness of the alloy.
 * @param [to] The unit to give the net weight in.
 * @returns The net weight.
 * @words alloy weight from fine bars needed
 * @example =LOT.GROSSWEIGHT(92.5,"ozt",925) -> 100
 */
export function grossWeight(fine: any, unit: any, fineness: any, to?: any): any {
  const given = read.massUnit("unit", unit);
  return answer(
    weigh.grossWeight,
    { fine: read.mass("fine", fine, given), fineness: read.fineness("fineness", fineness, read.finenessAboveZero) },
    read.massUnit("to", to, given),
  );
}

/**
 * Fineness of a melt of several parts, from their weights in one unit and their finenesses.
 * @customfunction MELTFINENESS
 * @param weights The weights of the parts, all in one unit.
 * @param finenesses Their finenesses, in a range of the same shape.
 * @returns The fineness, in parts per thousand.
 * @words average mix blend alligation pooled mean melt together
 * @example =LOT.MELTFINENESS({8;20;10},{"22k";"21k";"18k"}) -> 850.87719…
 */
export function meltFineness(weights: any[][], finenesses: any[][]): any {
  const [w, f] = read.paired(
    read.range("weights", weights, read.aboveZero),
    read.range("finenesses", finenesses, read.finenessReader),
  );
  return answer(weigh.meltFineness, { weights: w, finenesses: f }, read.partsPerThousand);
}

/**
 * Weight of metal to add so that a melt comes to a target fineness.
 * @customfunction ALLOYADD
 * @param weight The weight of the melt.
 * @param unit Its unit.
 * @param fineness Its fineness.
 * @param target The fineness it should have.
 * @param [added] The fineness of what is added.
 * @returns The weight to add, in the unit given.
 * @words dilute upgrade copper add alligation lower raise karat
 * @example =LOT.ALLOYADD(6,"ozt","24k","16k") -> 3
 * @example =LOT.ALLOYADD(450,"g",0.9,0.925,1) -> 150
 */
export function alloyAdd(weight: any, unit: any, fineness: any, target: any, added?: any): any {
  const given = read.massUnit("unit", unit);
  return answer(
    weigh.alloyAddition,
    {
      weight: read.mass("weight", weight, given),
      fineness: read.fineness("fineness", fineness),
      target: read.fineness("target", target),
      added: read.fineness("added", added, read.finenessReader, read.nothing),
    },
    given,
  );
}

/**
 * Silver or copper to add to gold-bearing metal so that acid can part it, and the nitric acid that parting then takes, what is added being silver.
 * @customfunction INQUART
 * @param weight The weight of the gold-bearing metal.
 * @param unit Its unit.
 * @param fineness Its gold fineness.
 * @param [target] The gold fineness at which parting acid reaches all of the base.
 * @param [strength] The strength of the acid, by mass.
 * @returns Three lines: the weight to add in the unit given, and the acid in litres at least (gas all NO) and at most (gas all NO2).
 * @words gold parting quartation karat scrap part silver nitric acid
 * @source silver and copper in nitric acid by the dilute and the strong route; what was in the metal beside gold is taken as copper
 * @caution Parting uses hot nitric acid and gives off toxic brown fume: the figure plans a purchase and is no procedure; local codes and licensed practice decide.
 * @example =LOT.INQUART(100,"g","18k") -> 200
 */
export function inquart(weight: any, unit: any, fineness: any, target?: any, strength?: any): any[][] {
  const given = read.massUnit("unit", unit);
  return spilled(
    answer(inquartation, {
      weight: read.mass("weight", weight, given),
      fineness: read.fineness("fineness", fineness),
      target: read.fineness("target", target, read.finenessAboveZero, read.quarter),
      strength: read.strength("strength", strength, read.commonAcid),
      density: read.density("strength", strength, read.commonAcid),
      inOne: read.gramsInOne(given),
    }),
  );
}

/**
 * Expanded uncertainty of a fine weight, from the standard uncertainties of weight and fineness, taken as independent.
 * @customfunction FINEU
 * @param weight The net weight.
 * @param uWeight Its standard uncertainty, in the same unit.
 * @param unit The unit of both.
 * @param fineness The fineness.
 * @param uFineness Its standard uncertainty, on the scale in which the fineness is written.
 * @param [k] The coverage factor.
 * @param [to] The unit to give the uncertainty in.
 * @returns The expanded uncertainty of the fine weight.
 * @words error tolerance plus minus accuracy scale assay coverage
 * @source JCGM 100:2008 (GUM), 5.1.2 and 6.2.1
 * @example =LOT.FINEU(1000,0,"ozt",925,1) -> 2
 */
export function fineU(weight: any, uWeight: any, unit: any, fineness: any, uFineness: any, k?: any, to?: any): any {
  const given = read.massUnit("unit", unit);
  return answer(
    weigh.fineWeightUncertainty,
    {
      weight: read.mass("weight", weight, given),
      uWeight: read.mass("uWeight", uWeight, given, read.fromZero),
      fineness: read.fineness("fineness", fineness),
      uFineness: read.onScaleOf("uFineness", uFineness, fineness),
      k: read.single("k", k, read.coverage, read.twoSigma),
    },
    read.massUnit("to", to, read.troyOunce),
  );
}
