// Written by src/catalogue/generate.ts from the comments in src/functions: change those instead.
import * as weights from "../functions/weights";
import * as drop from "../functions/drop";
import * as cost from "../functions/cost";
import * as recovery from "../functions/recovery";
import * as payout from "../functions/payout";
import * as about from "../functions/about";
import type { Call } from "./entry";

/** A cell function takes cells of any kind and gives an answer; a spill is declared otherwise for the generator's sake. */
const call = (cellFunction: unknown): Call["call"] => cellFunction as Call["call"];

export const calls: Readonly<Record<string, Call>> = {
  WEIGHT: { arity: 3, call: call(weights.weight) },
  VOLUME: { arity: 3, call: call(weights.volume) },
  FINENESS: { arity: 2, call: call(weights.fineness) },
  STANDARD: { arity: 1, call: call(weights.standard) },
  FINEWEIGHT: { arity: 4, call: call(weights.fineWeight) },
  GROSSWEIGHT: { arity: 4, call: call(weights.grossWeight) },
  MELTFINENESS: { arity: 2, call: call(weights.meltFineness) },
  ALLOYADD: { arity: 5, call: call(weights.alloyAdd) },
  INQUART: { arity: 4, call: call(weights.inquart) },
  AGREEDASSAY: { arity: 4, call: call(weights.agreedAssayOf) },
  FINEU: { arity: 7, call: call(weights.fineU) },
  COPPER: { arity: 5, call: call(drop.copper) },
  SILVERDROPPED: { arity: 4, call: call(drop.silverDropped) },
  COPPERBARS: { arity: 5, call: call(drop.copperBars) },
  PRICE: { arity: 3, call: call(cost.price) },
  WEARCOST: { arity: 3, call: call(cost.wearCost) },
  LOTCOST: { arity: 2, call: call(cost.lotCost) },
  RECOVERY: { arity: 2, call: call(recovery.recovery) },
  RECOVERYU: { arity: 5, call: call(recovery.recoveryU) },
  UNACCOUNTED: { arity: 4, call: call(recovery.unaccounted) },
  PAYOUT: { arity: 7, call: call(payout.payout) },
  SETTLEMENT: { arity: 10, call: call(payout.settlement) },
  METALRETURN: { arity: 6, call: call(payout.metalReturn) },
  VERSION: { arity: 0, call: call(about.version) },
};
