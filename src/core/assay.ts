import { ONE, choose, count as number, refuse, sum } from "./expression/expression";
import { each, formula } from "./expression/formula";
import { amount, count, fineness, perThousand } from "./measure/quantity";

export const agreedAssay = formula(
  {
    title: "Agreed assay by exchange",
    rule: "the mean of both assays when they differ by no more than the splitting limit; otherwise the middle one of the two and the umpire's",
  },
  { ours: perThousand, theirs: perThousand, limit: perThousand, umpire: perThousand, umpireGiven: count },
  "agreed fineness",
  perThousand,
  ({ ours, theirs, limit, umpire, umpireGiven }) => {
    const [low, high] = [ours.min(theirs), ours.max(theirs)];
    return choose(
      high.minus(low).isAtMost(limit),
      ours.plus(theirs).over(2),
      choose(
        umpireGiven.equals(1),
        low.max(high.min(umpire)),
        refuse({
          kind: "awaited",
          name: "umpire",
          needs: "the assays differ by more than the splitting limit, so the lot needs an umpire assay",
        }),
      ),
    );
  },
);

export const assayFineness = formula(
  {
    title: "Fineness by a parting assay or a titration",
    rule: "metal found over sample, times what the proof held over what was found in it",
  },
  { sample: amount, found: amount, proofTaken: amount, proofFound: amount },
  "fineness",
  fineness,
  ({ sample, found, proofTaken, proofFound }) => {
    const result = found.times(proofTaken).over(sample.times(proofFound));
    return choose(
      ONE.isBelow(result),
      refuse({
        kind: "conflict",
        names: ["found", "sample"],
        because: "more metal was found than the sample weighs",
        write: "check both weights, in one unit, and the proof",
      }),
      result,
    );
  },
);

export const sampleUncertainty = formula(
  {
    title: "Expanded uncertainty of the mean of samples",
    rule: "coverage factor times the standard deviation of the samples over the root of their number; with few samples it is itself uncertain",
    source: "JCGM 100:2008 (GUM), 4.2.3 and 6.2.1",
  },
  { finenesses: each(perThousand), k: count },
  "expanded uncertainty of the mean",
  perThousand,
  ({ finenesses, k }) => {
    const n = number(finenesses).named("samples", "");
    const mean = sum(finenesses).over(n).named("mean", "‰");
    const squares = sum(finenesses.minus(mean).power(2)).named("squares of the differences from the mean", "‰²");
    return choose(
      n.isAtMost(1),
      refuse({
        kind: "conflict",
        names: ["finenesses"],
        because: "one sample tells nothing of how samples differ",
        write: "give two samples or more",
      }),
      k.times(squares.over(n.minus(1)).over(n).sqrt()),
    );
  },
);
