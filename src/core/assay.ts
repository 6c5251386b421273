import { choose, refuse } from "./expression/expression";
import { formula } from "./expression/formula";
import { count, perThousand } from "./measure/quantity";

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
