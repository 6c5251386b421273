import { result } from "../core/expression/formula";
import { payout as payoutFormula } from "../core/payout";
import { spilled } from "./answer";
import { copper } from "./drop";
import { eachRow } from "./each-row";
import { payout } from "./payout";
import * as read from "./read";
import { recovery } from "./recovery";
import { fineWeight } from "./weights";

/**
 * Fine weights along columns: each argument is a column, or one value for all rows.
 * @customfunction FINEWEIGHTS
 * @param weight The net weights.
 * @param unit Their unit.
 * @param fineness Their finenesses.
 * @param [to] The unit to give the fine weights in.
 * @returns A column of fine weights; an empty row stays empty, a row with a mistake shows its own error.
 * @words pure silver column list lots many rows
 * @example =LOT.FINEWEIGHTS({100;200},"ozt",{925;900}) -> 92.5
 */
export function fineWeights(weight: any[][], unit: any[][], fineness: any[][], to?: any[][]): any[][] {
  return spilled(
    eachRow({
      names: ["weight", "unit", "fineness", "to"],
      arguments: [weight, unit, fineness, to],
      single: fineWeight,
    }),
  );
}

/**
 * Copper for drops along columns: each argument is a column, or one value for all rows.
 * @customfunction COPPERS
 * @param fine The fine silver in solution.
 * @param unit Its unit.
 * @param [allowance] Copper beyond what the reaction takes, as a share.
 * @param [freeAcid] Free nitric acid in the liquor, in mol.
 * @param [to] The unit to give the copper in.
 * @returns A column of copper weights; an empty row stays empty, a row with a mistake shows its own error.
 * @words cement cementation column list lots many rows
 * @caution Silver nitrate and nitric acid burn skin and eyes; free acid on copper gives off toxic fume. The figure plans a purchase and is no procedure; local codes and licensed practice decide.
 * @example =LOT.COPPERS({10;20},"lb") -> 2.94553…
 */
export function coppers(fine: any[][], unit: any[][], allowance?: any[][], freeAcid?: any[][], to?: any[][]): any[][] {
  return spilled(
    eachRow({
      names: ["fine", "unit", "allowance", "freeAcid", "to"],
      arguments: [fine, unit, allowance, freeAcid, to],
      single: copper,
    }),
  );
}

/**
 * Recoveries along columns: each argument is a column, or one value for all rows.
 * @customfunction RECOVERIES
 * @param fineOut The fine weights that came out.
 * @param fineIn The fine weights that went in, in the same unit.
 * @returns A column of recoveries as fractions; an empty row stays empty, a row with a mistake shows its own error.
 * @words yield outturn column list lots many rows
 * @example =LOT.RECOVERIES({98;49},{100;50}) -> 0.98
 */
export function recoveries(fineOut: any[][], fineIn: any[][]): any[][] {
  return spilled(
    eachRow({
      names: ["fineOut", "fineIn"],
      arguments: [fineOut, fineIn],
      single: recovery,
    }),
  );
}

/**
 * Payouts along columns, to the same cent as PAYOUT: each argument is a column, or one value for all rows.
 * @customfunction PAYOUTS
 * @param fine The fine weights.
 * @param unit Their unit.
 * @param price The price per troy ounce of fine metal.
 * @param [payable] The share of the fine weight that is paid for.
 * @param [refiningCharge] The refining charge per troy ounce of payable fine weight.
 * @param [lotCharges] The charges for the lot as a whole.
 * @param [decimals] To how many decimals it is rounded, half away from zero; "2 half-even" rounds ties to the even digit.
 * @returns A column of payouts in money; an empty row stays empty, a row with a mistake shows its own error.
 * @words pay client settle money column list lots many rows
 * @example =LOT.PAYOUTS({100;50},"ozt",24.5,"97.5%",0.5,25) -> 2315
 */
export function payouts(
  fine: any[][],
  unit: any[][],
  price: any[][],
  payable?: any[][],
  refiningCharge?: any[][],
  lotCharges?: any[][],
  decimals?: any[][],
): any[][] {
  return spilled(
    eachRow({
      names: ["fine", "unit", "price", "payable", "refiningCharge", "lotCharges", "decimals"],
      arguments: [fine, unit, price, payable, refiningCharge, lotCharges, decimals],
      single: payout,
      quick: ([, one]) => {
        const factor = read.ouncesIn(one);
        return factor === null
          ? null
          : {
              expression: result(payoutFormula).of,
              inputs: {
                fine: { argument: 0, reader: read.aboveZero, factor },
                price: { argument: 2, reader: read.fromZero },
                payable: { argument: 3, reader: read.share, otherwise: 1 },
                refiningCharge: { argument: 4, reader: read.fromZero, otherwise: 0 },
                lotCharges: { argument: 5, reader: read.fromZero, otherwise: 0 },
                decimals: { argument: 6, reader: read.places, otherwise: 2 },
                halfToEven: { argument: 6, reader: read.halfEvenReader, otherwise: 0 },
              },
            };
      },
    }),
  );
}
