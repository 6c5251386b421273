import { unaccounted as unaccountedMetal } from "../core/balance";
import * as lot from "../core/recovery";
import { answer } from "./answer";
import * as read from "./read";

/**
 * Recovery: outturn over fine weight charged.
 * @customfunction RECOVERY
 * @param fineOut The fine weight that came out.
 * @param fineIn The fine weight that went in, in the same unit.
 * @returns The recovery as a fraction; format the cell as a percentage.
 * @words yield outturn loss percent efficiency
 * @example =LOT.RECOVERY(98.5,100) -> 0.985
 */
export function recovery(fineOut: any, fineIn: any): any {
  return answer(lot.recovery, {
    out: read.single("fineOut", fineOut, read.fromZero),
    in: read.single("fineIn", fineIn, read.aboveZero),
  });
}

/**
 * Expanded uncertainty of a recovery, from the standard uncertainties of both weights, taken as independent.
 * @customfunction RECOVERYU
 * @param fineOut The fine weight that came out.
 * @param uOut Its standard uncertainty.
 * @param fineIn The fine weight that went in.
 * @param uIn Its standard uncertainty. All four in one unit.
 * @param [k] The coverage factor.
 * @returns The expanded uncertainty of the recovery, as a fraction.
 * @words error tolerance plus minus accuracy yield coverage
 * @source JCGM 100:2008 (GUM), 5.1.2 and 6.2.1
 * @example =LOT.RECOVERYU(98,0.98,100,0) -> 0.0196
 */
export function recoveryU(fineOut: any, uOut: any, fineIn: any, uIn: any, k?: any): any {
  return answer(lot.recoveryUncertainty, {
    out: read.single("fineOut", fineOut, read.fromZero),
    uOut: read.single("uOut", uOut, read.fromZero),
    in: read.single("fineIn", fineIn, read.aboveZero),
    uIn: read.single("uIn", uIn, read.fromZero),
    k: read.single("k", k, read.coverage, read.twoSigma),
  });
}

/**
 * Unaccounted metal: opening + received − shipped − closing, all in one unit. Above zero, metal is missing.
 * @customfunction UNACCOUNTED
 * @param opening The metal at the start: a number or a range.
 * @param received The metal that came in.
 * @param shipped The metal that went out.
 * @param closing The metal at the end.
 * @returns The unaccounted metal, in the same unit.
 * @words balance missing loss month inventory stock difference gap
 * @source material unaccounted for = (beginning inventory + receipts) − (removals + ending inventory)
 * @example =LOT.UNACCOUNTED(120,{30;45},{50;20},124) -> 1
 */
export function unaccounted(opening: any[][], received: any[][], shipped: any[][], closing: any[][]): any {
  return answer(unaccountedMetal, {
    opening: read.total("opening", opening, read.fromZero),
    received: read.total("received", received, read.fromZero),
    shipped: read.total("shipped", shipped, read.fromZero),
    closing: read.total("closing", closing, read.fromZero),
  });
}
