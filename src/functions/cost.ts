import * as cost from "../core/cost";
import { answer } from "./answer";
import * as read from "./read";

/**
 * A price per one unit of weight as a price per another.
 * @customfunction PRICE
 * @param price The price.
 * @param fromUnit The unit of weight that it is for.
 * @param toUnit The unit of weight to give it for.
 * @returns The price per the other unit, not rounded.
 * @words spot per ounce per pound per gram convert metal price
 * @example =LOT.PRICE(24,"ozt","lb") -> 350
 */
export function price(price: any, fromUnit: any, toUnit: any): any {
  return answer(cost.price, {
    price: read.single("price", price, read.fromZero),
    from: read.gramsInOne(read.massUnit("fromUnit", fromUnit)),
    to: read.gramsInOne(read.massUnit("toUnit", toUnit)),
  });
}

/**
 * The share of a consumable's price that a use takes from its life, in one measure of life and use.
 * @customfunction WEARCOST
 * @param price The price of the consumable.
 * @param life How much it lasts: heats, pounds, hours.
 * @param use How much of that was used, in the same measure.
 * @returns The cost of the use, not rounded, since many small ones are added up.
 * @words crucible mixer paddle heats life wear depreciation consumable spread
 * @example =LOT.WEARCOST(60,25,1) -> 2.4
 */
export function wearCost(price: any, life: any, use: any): any {
  return answer(cost.wearCost, {
    price: read.single("price", price, read.fromZero),
    life: read.single("life", life, read.aboveZero),
    use: read.single("use", use, read.fromZero),
  });
}

/**
 * Cost of a lot: each quantity times its price, added up and rounded once to cents.
 * @customfunction LOTCOST
 * @param quantities The quantities.
 * @param prices The price of one of each, in a range of the same shape.
 * @returns The cost, to the cent.
 * @words expenses acid copper power labour consumables total sum
 * @example =LOT.LOTCOST({2.5;1},{3.33;0.1}) -> 8.43
 */
export function lotCost(quantities: any[][], prices: any[][]): any {
  const [q, p] = read.paired(
    read.range("quantities", quantities, read.fromZero),
    read.range("prices", prices, read.anyNumber),
  );
  return answer(cost.lotCost, { quantities: q, prices: p });
}
