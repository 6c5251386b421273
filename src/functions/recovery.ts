import * as metal from "../core/balance";
import * as lot from "../core/recovery";
import { answer, spilled } from "./answer";
import { monthsAnswer } from "./months";
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
  return answer(metal.unaccounted, {
    opening: read.total("opening", opening, read.fromZero),
    received: read.total("received", received, read.fromZero),
    shipped: read.total("shipped", shipped, read.fromZero),
    closing: read.total("closing", closing, read.fromZero),
  });
}

/**
 * The metal balance of a period as a block: the four terms, the difference, its expanded uncertainty, the share of throughput, the verdict.
 * @customfunction BALANCE
 * @param opening The metal at the start: a number or a range, all in one unit.
 * @param received The metal that came in.
 * @param shipped The metal that went out.
 * @param closing The metal at the end.
 * @param uOpening The standard uncertainty of the opening.
 * @param uReceived The standard uncertainty of all that was received.
 * @param uShipped The standard uncertainty of all that was shipped.
 * @param uClosing The standard uncertainty of the closing.
 * @param [bias] The relative standard uncertainty that one scale shares in all four.
 * @param [k] The coverage factor.
 * @returns Eight lines of label and value; the last is the verdict: within measurement, metal missing or metal over.
 * @words month inventory missing theft loss scale significance verdict material
 * @source material unaccounted for = (beginning inventory + receipts) − (removals + ending inventory); JCGM 100:2008 (GUM), 5.1.2
 * @example =LOT.BALANCE(120,75,70,124,0.2,0.3,0.3,0.2) -> Opening
 */
export function balance(
  opening: any[][],
  received: any[][],
  shipped: any[][],
  closing: any[][],
  uOpening: any,
  uReceived: any,
  uShipped: any,
  uClosing: any,
  bias?: any,
  k?: any,
): any[][] {
  return spilled(
    answer(metal.balance, {
      opening: read.total("opening", opening, read.fromZero),
      received: read.total("received", received, read.fromZero),
      shipped: read.total("shipped", shipped, read.fromZero),
      closing: read.total("closing", closing, read.fromZero),
      uOpening: read.single("uOpening", uOpening, read.fromZero),
      uReceived: read.single("uReceived", uReceived, read.fromZero),
      uShipped: read.single("uShipped", uShipped, read.fromZero),
      uClosing: read.single("uClosing", uClosing, read.fromZero),
      bias: read.single("bias", bias, read.share, read.nothing),
      k: read.single("k", k, read.coverage, read.twoSigma),
    }),
  );
}

/**
 * Where the fine metal of a lot is: an account that adds up to the charge, its last line what nobody has found.
 * @customfunction HELDBACK
 * @param charged The fine weight charged. All in one unit.
 * @param dropped The cement silver that was dropped.
 * @param liquor The silver left in the liquor, by test.
 * @param stubs The silver on the stubs.
 * @param residues The silver in filter and basket residues.
 * @param crystal The silver in crystal.
 * @returns Six lines of place, fine weight and share of the charge.
 * @words account losses stubs filters residue slimes liquor where is the silver
 * @example =LOT.HELDBACK(100,98,0.5,1,0.5,96) -> Crystal
 */
export function heldBack(charged: any, dropped: any, liquor: any, stubs: any, residues: any, crystal: any): any[][] {
  return spilled(
    answer(metal.heldBack, {
      charged: read.single("charged", charged, read.aboveZero),
      dropped: read.single("dropped", dropped, read.fromZero),
      liquor: read.single("liquor", liquor, read.fromZero),
      stubs: read.single("stubs", stubs, read.fromZero),
      residues: read.single("residues", residues, read.fromZero),
      crystal: read.single("crystal", crystal, read.fromZero),
    }),
  );
}

/**
 * Fine metal in and out, recovery and number of lots, month by month and group by group.
 * @customfunction MONTHS
 * @param dates The dates of the lots.
 * @param fineIn Their fine weights charged, in one unit.
 * @param fineOut Their outturns, in the same unit.
 * @param [group] What to group by within a month: the client, for instance.
 * @returns A heading and a line for each month and group; format the first column as a date.
 * @words monthly client summary throughput table report
 * @example =LOT.MONTHS({46000;46001},{100;50},{98;49}) -> Month
 */
export function months(dates: any[][], fineIn: any[][], fineOut: any[][], group?: any[][]): any[][] {
  return spilled(monthsAnswer(dates, fineIn, fineOut, group));
}
