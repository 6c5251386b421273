// Written by src/catalogue/generate.ts from the comments in src/functions: change those instead.
import * as weights from "../functions/weights";
import * as assay from "../functions/assay";
import * as dissolve from "../functions/dissolve";
import * as drop from "../functions/drop";
import * as wash from "../functions/wash";
import * as melt from "../functions/melt";
import * as cost from "../functions/cost";
import * as recovery from "../functions/recovery";
import * as payout from "../functions/payout";
import * as columns from "../functions/columns";
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
  INQUART: { arity: 5, call: call(weights.inquart) },
  FINEU: { arity: 7, call: call(weights.fineU) },
  AGREEDASSAY: { arity: 4, call: call(assay.agreedAssay) },
  ASSAYFINE: { arity: 4, call: call(assay.assayFineness) },
  SAMPLEU: { arity: 2, call: call(assay.sampleU) },
  ACIDMOLARITY: { arity: 1, call: call(dissolve.acidMolarity) },
  NITRIC: { arity: 7, call: call(dissolve.nitric) },
  FUME: { arity: 4, call: call(dissolve.fume) },
  DILUTIONAIR: { arity: 5, call: call(dissolve.dilutionAir) },
  SILVERLOAD: { arity: 4, call: call(dissolve.silverLoad) },
  VESSELS: { arity: 5, call: call(dissolve.vessels) },
  COPPER: { arity: 5, call: call(drop.copper) },
  SILVERDROPPED: { arity: 4, call: call(drop.silverDropped) },
  COPPERBARS: { arity: 5, call: call(drop.copperBars) },
  DROPRATE: { arity: 2, call: call(drop.dropRate) },
  DROPHOURS: { arity: 3, call: call(drop.dropHours) },
  DROPPED: { arity: 2, call: call(drop.droppedAfter) },
  SILVERLEFT: { arity: 1, call: call(drop.silverLeft) },
  SALT: { arity: 4, call: call(drop.salt) },
  CHLORIDESILVER: { arity: 3, call: call(drop.chlorideSilver) },
  SILVERFROMCHLORIDE: { arity: 5, call: call(drop.silverFromChloride) },
  GOLDDROP: { arity: 5, call: call(drop.goldDrop) },
  DROPPLAN: { arity: 3, call: call(drop.dropPlan) },
  RINSED: { arity: 4, call: call(wash.rinsed) },
  RINSES: { arity: 4, call: call(wash.rinses) },
  SPENTCOPPER: { arity: 6, call: call(wash.spentCopper) },
  IRON: { arity: 4, call: call(wash.iron) },
  SODA: { arity: 3, call: call(wash.soda) },
  HEATS: { arity: 5, call: call(melt.heats) },
  BARS: { arity: 4, call: call(melt.bars) },
  CELLHOURS: { arity: 4, call: call(melt.cellHours) },
  CELLENERGY: { arity: 4, call: call(melt.cellEnergy) },
  CELLDRAW: { arity: 4, call: call(melt.cellDraw) },
  PRICE: { arity: 3, call: call(cost.price) },
  WEARCOST: { arity: 3, call: call(cost.wearCost) },
  LOTCOST: { arity: 2, call: call(cost.lotCost) },
  RECOVERY: { arity: 2, call: call(recovery.recovery) },
  RECOVERYU: { arity: 5, call: call(recovery.recoveryU) },
  UNACCOUNTED: { arity: 4, call: call(recovery.unaccounted) },
  BALANCE: { arity: 10, call: call(recovery.balance) },
  HELDBACK: { arity: 6, call: call(recovery.heldBack) },
  MONTHS: { arity: 4, call: call(recovery.months) },
  PAYOUT: { arity: 7, call: call(payout.payout) },
  SETTLEMENT: { arity: 10, call: call(payout.settlement) },
  METALRETURN: { arity: 6, call: call(payout.metalReturn) },
  QUOTE: { arity: 10, call: call(payout.quote) },
  MARGIN: { arity: 5, call: call(payout.margin) },
  BREAKEVEN: { arity: 6, call: call(payout.breakEven) },
  FINEWEIGHTS: { arity: 4, call: call(columns.fineWeights) },
  COPPERS: { arity: 5, call: call(columns.coppers) },
  RECOVERIES: { arity: 2, call: call(columns.recoveries) },
  PAYOUTS: { arity: 7, call: call(columns.payouts) },
  VERSION: { arity: 0, call: call(about.version) },
};
