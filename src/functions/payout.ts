import * as pay from "../core/payout";
import { answer, spilled } from "./answer";
import * as read from "./read";

/**
 * Payout to the client, rounded once. Below zero the client owes.
 * @customfunction PAYOUT
 * @param fine The fine weight.
 * @param unit Its unit.
 * @param price The price per troy ounce of fine metal.
 * @param [payable] The share of the fine weight that is paid for.
 * @param [refiningCharge] The refining charge per troy ounce of payable fine weight.
 * @param [lotCharges] The charges for the lot as a whole.
 * @param [decimals] To how many decimals it is rounded, half away from zero; "2 half-even" rounds ties to the even digit.
 * @returns The payout in money.
 * @words pay client settle money owed cheque value terms
 * @example =LOT.PAYOUT(100,"ozt",24.5,"97.5%",0.5,25) -> 2315
 * @example =LOT.PAYOUT(10,"ozt",24,98) -> #VALUE! Cannot use payable = 98: could be a share or a percentage: write "98%" or 0.98
 */
export function payout(
  fine: any,
  unit: any,
  price: any,
  payable?: any,
  refiningCharge?: any,
  lotCharges?: any,
  decimals?: any,
): any {
  return answer(pay.payout, {
    fine: read.massInTroyOunces("fine", fine, read.massUnit("unit", unit)),
    price: read.single("price", price, read.fromZero),
    payable: read.single("payable", payable, read.share, read.all),
    refiningCharge: read.single("refiningCharge", refiningCharge, read.fromZero, read.nothing),
    lotCharges: read.single("lotCharges", lotCharges, read.fromZero, read.nothing),
    decimals: read.single("decimals", decimals, read.places, read.twoPlaces),
    halfToEven: read.roundsToEven("decimals", decimals),
  });
}

/**
 * The settlement statement, line by line; its money lines add up to the payout to the cent.
 * @customfunction SETTLEMENT
 * @param net The net weight.
 * @param unit Its unit.
 * @param fineness The settled fineness.
 * @param price The price per troy ounce of fine metal.
 * @param payable The share of the fine weight that is paid for.
 * @param refiningCharge The refining charge per troy ounce of payable fine weight.
 * @param treatmentCharge The treatment charge per one unit of net weight, in the unit given.
 * @param lotCharges The charges for the lot as a whole.
 * @param [deduction] The minimum deduction, in parts per thousand or as a text with its scale.
 * @param [decimals] To how many decimals money is rounded, half away from zero; "2 half-even" rounds ties to the even digit.
 * @returns Lines of label, amount and unit.
 * @words statement invoice client lines final reckoning terms charges
 * @example =LOT.SETTLEMENT(100,"ozt",925,24,"98%",0.5,0.1,25) -> Net weight
 */
export function settlement(
  net: any,
  unit: any,
  fineness: any,
  price: any,
  payable: any,
  refiningCharge: any,
  treatmentCharge: any,
  lotCharges: any,
  deduction?: any,
  decimals?: any,
): any[][] {
  const given = read.massUnit("unit", unit);
  return spilled(
    answer(pay.settlement, {
    net: read.massInTroyOunces("net", net, given),
    netAsGiven: read.asGiven("net", net, given),
    fineness: read.fineness("fineness", fineness, read.finenessAboveZero),
    price: read.single("price", price, read.fromZero),
    payable: read.single("payable", payable, read.share),
    refiningCharge: read.single("refiningCharge", refiningCharge, read.fromZero),
    treatmentCharge: read.single("treatmentCharge", treatmentCharge, read.fromZero),
    lotCharges: read.single("lotCharges", lotCharges, read.fromZero),
    deduction: read.single("deduction", deduction, read.perThousand, read.nothing),
    decimals: read.single("decimals", decimals, read.places, read.twoPlaces),
    halfToEven: read.roundsToEven("decimals", decimals),
  }));
}

/**
 * Fine weight to give back when the client is paid in metal, cut to 0.001 troy ounce.
 * @customfunction METALRETURN
 * @param fine The fine weight.
 * @param unit Its unit.
 * @param payable The share of the fine weight that is returned.
 * @param [charges] The charges, in money.
 * @param [price] The price per troy ounce at which charges are taken in metal; needed when there are charges.
 * @param [to] The unit to give the weight in.
 * @returns The fine weight to give back.
 * @words metal account return bar bullion toll give back
 * @example =LOT.METALRETURN(100,"ozt","98%",48,24) -> 96
 * @example =LOT.METALRETURN(100,"ozt","98%",48) -> #N/A Cannot compute yet: price is still to come: charges in money need a price to be taken in metal
 */
export function metalReturn(fine: any, unit: any, payable: any, charges?: any, price?: any, to?: any): any {
  return answer(
    pay.metalReturn,
    {
      fine: read.massInTroyOunces("fine", fine, read.massUnit("unit", unit)),
      payable: read.single("payable", payable, read.share),
      charges: read.single("charges", charges, read.fromZero, read.nothing),
      price: read.single("price", price, read.aboveZero, read.none),
      priceGiven: read.wasGiven(price),
    },
    read.countedIn(read.massUnit("to", to, read.troyOunce), read.troyOunce),
  );
}

/**
 * A quote as a block: payout at the low, likely and high fineness, with the price down, as quoted and up.
 * @customfunction QUOTE
 * @param weight The net weight offered.
 * @param unit Its unit.
 * @param low The lowest fineness to reckon with.
 * @param likely The likely fineness.
 * @param high The highest fineness to reckon with.
 * @param price The price per troy ounce of fine metal.
 * @param payable The share of the fine weight that is paid for.
 * @param refiningCharge The refining charge per troy ounce of payable fine weight.
 * @param lotCharges The charges for the lot as a whole.
 * @param [swing] By what share the price may move.
 * @returns A heading and five lines; money to the cent.
 * @words offer estimate range client price swing low high
 * @example =LOT.QUOTE(100,"ozt",915,925,930,24,"98%",0.5,25,"5%") -> Quote
 */
export function quote(
  weight: any,
  unit: any,
  low: any,
  likely: any,
  high: any,
  price: any,
  payable: any,
  refiningCharge: any,
  lotCharges: any,
  swing?: any,
): any[][] {
  return spilled(
    answer(pay.quote, {
      weight: read.massInTroyOunces("weight", weight, read.massUnit("unit", unit)),
      low: read.fineness("low", low),
      likely: read.fineness("likely", likely),
      high: read.fineness("high", high),
      price: read.single("price", price, read.fromZero),
      payable: read.single("payable", payable, read.share),
      refiningCharge: read.single("refiningCharge", refiningCharge, read.fromZero),
      lotCharges: read.single("lotCharges", lotCharges, read.fromZero),
      swing: read.single("swing", swing, read.share, read.nothing),
    }),
  );
}

/**
 * What a lot leaves: metal value less payout less costs.
 * @customfunction MARGIN
 * @param fine The fine weight.
 * @param unit Its unit.
 * @param price The price per troy ounce of fine metal.
 * @param payout What the client was paid.
 * @param costs What the lot cost.
 * @returns The margin, to the cent.
 * @words profit earnings left over gain
 * @example =LOT.MARGIN(100,"ozt",24,2300,40) -> 60
 */
export function margin(fine: any, unit: any, price: any, payout: any, costs: any): any {
  return answer(pay.margin, {
    fine: read.massInTroyOunces("fine", fine, read.massUnit("unit", unit)),
    price: read.single("price", price, read.fromZero),
    payout: read.single("payout", payout, read.anyNumber),
    costs: read.single("costs", costs, read.fromZero),
  });
}

/**
 * The payable share at which a lot leaves nothing and costs nothing.
 * @customfunction BREAKEVEN
 * @param fine The fine weight.
 * @param unit Its unit.
 * @param price The price per troy ounce of fine metal.
 * @param costs What the lot costs.
 * @param [refiningCharge] The refining charge per troy ounce of payable fine weight.
 * @param [lotCharges] The charges for the lot as a whole.
 * @returns The payable share as a fraction; format the cell as a percentage.
 * @words terms lowest highest payable zero profit
 * @example =LOT.BREAKEVEN(100,"ozt",24,48) -> 0.98
 */
export function breakEven(fine: any, unit: any, price: any, costs: any, refiningCharge?: any, lotCharges?: any): any {
  return answer(pay.breakEven, {
    fine: read.massInTroyOunces("fine", fine, read.massUnit("unit", unit)),
    price: read.single("price", price, read.aboveZero),
    costs: read.single("costs", costs, read.fromZero),
    refiningCharge: read.single("refiningCharge", refiningCharge, read.fromZero, read.nothing),
    lotCharges: read.single("lotCharges", lotCharges, read.fromZero, read.nothing),
  });
}
