import * as dissolving from "../core/dissolve";
import { answer } from "./answer";
import * as read from "./read";

/**
 * Molarity of nitric acid of a given strength, at 20 °C.
 * @customfunction ACIDMOLARITY
 * @param strength The strength by mass.
 * @returns The molarity, in mol/L.
 * @words nitric acid concentration strength mol per litre density
 * @source density at 20 °C: CRC Handbook of Chemistry and Physics, 102nd ed. (to 40 %), Perry's Chemical Engineers' Handbook (above; in part from memory)
 * @caution Nitric acid burns and gives off toxic fume; local codes and licensed practice decide.
 * @example =LOT.ACIDMOLARITY("40%") -> 7.91341…
 */
export function acidMolarity(strength: any): any {
  return answer(dissolving.acidMolarity, { strength: read.strength("strength", strength), density: read.density("strength", strength) });
}

/**
 * Volume of nitric acid that dissolves a charge; what is not silver is taken as copper. A real batch lies between a no2share of 0 and of 1.
 * @customfunction NITRIC
 * @param weight The net weight of the charge.
 * @param unit Its unit.
 * @param fineness Its silver fineness.
 * @param [strength] The strength of the acid, by mass.
 * @param [no2share] The share of the metal that dissolves by the strong route, whose gas is NO2: 0 takes the least acid, 1 the most.
 * @param [excess] Acid beyond what the metal takes, as a share.
 * @param [to] The unit of volume to give it in.
 * @returns The volume of acid.
 * @words how much acid dissolve sterling buy litres gallons
 * @source 3 Ag + 4 HNO₃ → 3 AgNO₃ + NO + 2 H₂O and Ag + 2 HNO₃ → AgNO₃ + NO₂ + H₂O; 3 Cu + 8 HNO₃ → 3 Cu(NO₃)₂ + 2 NO + 4 H₂O and Cu + 4 HNO₃ → Cu(NO₃)₂ + 2 NO₂ + 2 H₂O
 * @caution Nitric acid burns and gives off toxic nitrogen oxides. The figure plans a purchase and is no procedure; local fire, air, water and waste codes and licensed practice decide.
 * @example =LOT.NITRIC(1,"kg","sterling") -> 0.961807…
 */
export function nitric(weight: any, unit: any, fineness: any, strength?: any, no2share?: any, excess?: any, to?: any): any {
  return answer(
    dissolving.nitricAcid,
    {
      weight: read.mass("weight", weight, read.massUnit("unit", unit)),
      fineness: read.fineness("fineness", fineness),
      strength: read.strength("strength", strength, read.commonAcid),
      density: read.density("strength", strength, read.commonAcid),
      no2share: read.single("no2share", no2share, read.share, read.nothing),
      excess: read.single("excess", excess, read.shareUpToTen, read.nothing),
    },
    read.volumeUnit("to", to, read.litre),
  );
}

/**
 * Nitrogen oxides that dissolving gives off. NO turns to NO2 in air, so all of it counts as NO2.
 * @customfunction FUME
 * @param weight The net weight of the charge.
 * @param unit Its unit.
 * @param fineness Its silver fineness.
 * @param [no2share] The share of the metal that dissolves by the strong route, whose gas is NO2.
 * @returns The gas, in mol.
 * @words gas nitrogen dioxide brown fumes NOx ventilation hood
 * @source 3 Ag + 4 HNO₃ → 3 AgNO₃ + NO + 2 H₂O and Ag + 2 HNO₃ → AgNO₃ + NO₂ + H₂O; 3 Cu + 8 HNO₃ → 3 Cu(NO₃)₂ + 2 NO + 4 H₂O and Cu + 4 HNO₃ → Cu(NO₃)₂ + 2 NO₂ + 2 H₂O
 * @caution Nitrogen dioxide injures the lungs hours after it was breathed. Fume is drawn off where it rises and treated; local air codes and licensed practice decide.
 * @example =LOT.FUME(1,"kg","sterling") -> 3.64525…
 */
export function fume(weight: any, unit: any, fineness: any, no2share?: any): any {
  return answer(dissolving.fume, {
    weight: read.mass("weight", weight, read.massUnit("unit", unit)),
    fineness: read.fineness("fineness", fineness),
    no2share: read.single("no2share", no2share, read.share, read.nothing),
  });
}

/**
 * Air flow that would keep the average of a room under a limit. It can show that a room is not enough, never that it is.
 * @customfunction DILUTIONAIR
 * @param gas The gas given off, in mol.
 * @param hours The hours over which it is given off.
 * @param limit The limit, in ppm by volume.
 * @param [safety] The factor for air that does not mix evenly.
 * @param [to] The unit of flow to give it in.
 * @returns The air flow.
 * @words ventilation cfm fan fume hood exposure limit ppm
 * @source Q = G·10⁶·K ÷ limit, dilution ventilation; 24.45 L/mol at 25 °C and 1 atm
 * @caution An average over a room never says that the air is fit to breathe: fume is drawn off where it rises; local codes and licensed practice decide.
 * @example =LOT.DILUTIONAIR(1,1,1,1,"m3/h") -> 24450
 */
export function dilutionAir(gas: any, hours: any, limit: any, safety?: any, to?: any): any {
  return answer(
    dissolving.dilutionAir,
    {
      gas: read.single("gas", gas, read.aboveZero),
      hours: read.single("hours", hours, read.aboveZero),
      limit: read.single("limit", limit, read.aboveZero),
      safety: read.single("safety", safety, read.fromOne, read.justOne),
    },
    read.flowUnit("to", to),
  );
}

/**
 * Silver in a liquor, in grams per litre.
 * @customfunction SILVERLOAD
 * @param fine The fine silver in it.
 * @param unit Its unit.
 * @param volume The volume of the liquor.
 * @param volumeUnit Its unit.
 * @returns The load, in g/L.
 * @words concentration pail grams per litre solution silver nitrate
 * @caution Silver nitrate burns skin and eyes and stains; local codes and licensed practice decide.
 * @example =LOT.SILVERLOAD(1,"kg",10,"L") -> 100
 */
export function silverLoad(fine: any, unit: any, volume: any, volumeUnit: any): any {
  return answer(dissolving.silverLoad, {
    fine: read.mass("fine", fine, read.massUnit("unit", unit)),
    volume: read.volume("volume", volume, read.volumeUnit("volumeUnit", volumeUnit)),
  });
}

/**
 * Whole vessels that a volume needs at their fill.
 * @customfunction VESSELS
 * @param volume The volume.
 * @param unit Its unit.
 * @param vessel The volume of one vessel to the brim.
 * @param vesselUnit Its unit.
 * @param [fill] The share to which a vessel is filled.
 * @returns The number of vessels.
 * @words pails buckets tanks how many fill count
 * @example =LOT.VESSELS(40,"L",5,"gal") -> 3
 */
export function vessels(volume: any, unit: any, vessel: any, vesselUnit: any, fill?: any): any {
  return answer(dissolving.vessels, {
    volume: read.volume("volume", volume, read.volumeUnit("unit", unit)),
    vessel: read.volume("vessel", vessel, read.volumeUnit("vesselUnit", vesselUnit)),
    fill: read.single("fill", fill, read.shareAboveZero, read.fourFifths),
  });
}
