import * as assay from "../core/assay";
import { answer } from "./answer";
import * as read from "./read";

/**
 * Agreed fineness from an exchange of assays, with an umpire where the two differ by more than the splitting limit.
 * @customfunction AGREEDASSAY
 * @param ours Our assay.
 * @param theirs The client's assay.
 * @param limit The splitting limit: the difference up to which the mean is taken.
 * @param [umpire] The umpire's assay.
 * @returns The agreed fineness, in parts per thousand.
 * @words exchange splitting umpire settle dispute assay mean party
 * @example =LOT.AGREEDASSAY(925,923,3) -> 924
 * @example =LOT.AGREEDASSAY(925,915,3,918) -> 918
 * @example =LOT.AGREEDASSAY(925,915,3) -> #N/A Cannot compute yet: umpire is still to come: the assays differ by more than the splitting limit, so the lot needs an umpire assay
 */
export function agreedAssay(ours: any, theirs: any, limit: any, umpire?: any): any {
  return answer(assay.agreedAssay, {
      ours: read.inPerThousand(read.fineness("ours", ours)),
      theirs: read.inPerThousand(read.fineness("theirs", theirs)),
      limit: read.inPerThousand(read.onScaleOf("limit", limit, ours)),
      umpire: read.inPerThousand(read.fineness("umpire", umpire, read.finenessReader, read.none)),
      umpireGiven: read.wasGiven(umpire),
  });
}

/**
 * Fineness from a parting assay or a titration, corrected by a proof of known metal that went through the same work.
 * @customfunction ASSAYFINE
 * @param sample The weight of the sample.
 * @param found The metal found in it: the parted bead or the result of the titration, in the same unit.
 * @param [proofTaken] The metal in the proof.
 * @param [proofFound] The metal found in the proof, in the same unit.
 * @returns The fineness, in parts per thousand.
 * @words cupel cupellation bead parting titration proof correction loss
 * @caution Assay by fire and acid burns and gives off lead and acid fume; local codes and licensed practice decide.
 * @example =LOT.ASSAYFINE(1.1,1.017) -> 924.54545…
 * @example =LOT.ASSAYFINE(0.5,0.4575,0.5,0.495) -> 924.24242…
 */
export function assayFineness(sample: any, found: any, proofTaken?: any, proofFound?: any): any {
  return answer(
    assay.assayFineness,
    {
      sample: read.single("sample", sample, read.aboveZero),
      found: read.single("found", found, read.fromZero),
      proofTaken: read.together("proofTaken", proofTaken, read.aboveZero, "proofFound", proofFound),
      proofFound: read.together("proofFound", proofFound, read.aboveZero, "proofTaken", proofTaken),
    },
    read.partsPerThousand,
  );
}

/**
 * Expanded uncertainty of the mean fineness of several samples of one melt.
 * @customfunction SAMPLEU
 * @param finenesses The finenesses of the samples.
 * @param [k] The coverage factor.
 * @returns The expanded uncertainty of their mean, in parts per thousand.
 * @words dip samples standard deviation mean scatter melt error
 * @source JCGM 100:2008 (GUM), 4.2.3 and 6.2.1
 * @example =LOT.SAMPLEU({924;925;926},1) -> 0.577350…
 */
export function sampleU(finenesses: any[][], k?: any): any {
  return answer(assay.sampleUncertainty, {
    finenesses: read.withoutGaps(read.total("finenesses", finenesses, read.perThousandFineness), finenesses),
    k: read.single("k", k, read.coverage, read.twoSigma),
  });
}
