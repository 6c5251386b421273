import { cellDraw as draw, cellEnergy as energy, cellHours as hoursInCell } from "../core/cell";
import * as melting from "../core/melt";
import { answer, spilled } from "./answer";
import * as read from "./read";

/**
 * Whole heats that a weight takes in a crucible.
 * @customfunction HEATS
 * @param weight The weight to melt.
 * @param unit Its unit.
 * @param capacity What the crucible holds.
 * @param capacityUnit Its unit.
 * @param [fill] The share to which it is filled, for a capacity given to the brim.
 * @returns The number of heats.
 * @words crucible melts pours furnace how many
 * @caution Hot metal and damp tools throw metal about: dry and preheat; local codes and licensed practice decide.
 * @example =LOT.HEATS(25,"kg",6,"kg") -> 5
 */
export function heats(weight: any, unit: any, capacity: any, capacityUnit: any, fill?: any): any {
  return answer(melting.heats, {
    weight: read.mass("weight", weight, read.massUnit("unit", unit)),
    capacity: read.mass("capacity", capacity, read.massUnit("capacityUnit", capacityUnit)),
    fill: read.single("fill", fill, read.shareAboveZero, read.all),
  });
}

/**
 * Whole bars from a weight, and what is left over.
 * @customfunction BARS
 * @param weight The weight to pour.
 * @param unit Its unit.
 * @param mould The weight of one bar.
 * @param mouldUnit Its unit.
 * @returns Two lines: the bars, and the remainder in the unit of the weight.
 * @words pour ingots mould remainder heel
 * @caution Hot metal and a damp mould throw metal about: dry and preheat; local codes and licensed practice decide.
 * @example =LOT.BARS(250,"ozt",100,"ozt") -> Bars
 */
export function bars(weight: any, unit: any, mould: any, mouldUnit: any): any[][] {
  const given = read.massUnit("unit", unit);
  return spilled(
    answer(melting.bars, {
      weight: read.mass("weight", weight, given),
      mould: read.mass("mould", mould, read.massUnit("mouldUnit", mouldUnit)),
      inOne: read.gramsInOne(given),
    }),
  );
}

/**
 * Hours that a cell takes for a weight of silver, by Faraday's law.
 * @customfunction CELLHOURS
 * @param fine The silver to deposit.
 * @param unit Its unit.
 * @param amps The current, in amperes.
 * @param [efficiency] The current efficiency, as a share.
 * @returns The hours.
 * @words electrolysis current time crystal Faraday electrorefining
 * @source Faraday's law with F = 96 485.332 12 C/mol (CODATA 2018)
 * @caution The electrolyte is silver nitrate in nitric acid and the current is high; local electrical and waste codes and licensed practice decide.
 * @example =LOT.CELLHOURS(1,"kg",100,"100%") -> 2.48465…
 */
export function cellHours(fine: any, unit: any, amps: any, efficiency?: any): any {
  return answer(hoursInCell, {
    fine: read.mass("fine", fine, read.massUnit("unit", unit)),
    amps: read.single("amps", amps, read.aboveZero),
    efficiency: read.single("efficiency", efficiency, read.shareAboveZero, read.cellEfficiency),
  });
}

/**
 * Energy that a cell takes for a weight of silver.
 * @customfunction CELLENERGY
 * @param fine The silver to deposit.
 * @param unit Its unit.
 * @param volts The cell voltage.
 * @param [efficiency] The current efficiency, as a share.
 * @returns The energy, in kWh.
 * @words power electricity kilowatt hours cell cost
 * @source Faraday's law with F = 96 485.332 12 C/mol (CODATA 2018)
 * @caution The electrolyte is silver nitrate in nitric acid and the current is high; local electrical and waste codes and licensed practice decide.
 * @example =LOT.CELLENERGY(1,"kg",1.5,"100%") -> 0.372697…
 */
export function cellEnergy(fine: any, unit: any, volts: any, efficiency?: any): any {
  return answer(energy, {
    fine: read.mass("fine", fine, read.massUnit("unit", unit)),
    volts: read.single("volts", volts, read.aboveZero),
    efficiency: read.single("efficiency", efficiency, read.shareAboveZero, read.cellEfficiency),
  });
}

/**
 * Silver that base metal in the bars draws out of the electrolyte; the base metal is taken as copper.
 * @customfunction CELLDRAW
 * @param weight The weight of the bars.
 * @param unit Its unit.
 * @param fineness Their silver fineness.
 * @param [to] The unit to give the silver in.
 * @returns The silver drawn out.
 * @words electrolyte depletion anode base metal replenish silver nitrate
 * @source Cu + 2 Ag⁺ → Cu²⁺ + 2 Ag
 * @caution The electrolyte is silver nitrate in nitric acid; local waste codes and licensed practice decide.
 * @example =LOT.CELLDRAW(1000,"ozt",980) -> 67.89928…
 */
export function cellDraw(weight: any, unit: any, fineness: any, to?: any): any {
  return answer(
    draw,
    { weight: read.mass("weight", weight, read.massUnit("unit", unit)), fineness: read.fineness("fineness", fineness) },
    read.massUnit("to", to, read.troyOunce),
  );
}
