import { choose, refuse, sum } from "./expression/expression";
import { each, formula } from "./expression/formula";
import { uncertainty } from "./expression/slopes";
import { amount, fineness, grams, litres } from "./measure/quantity";

export const weight = formula(
  { title: "A weight in another unit", rule: "the weight is the same; only its unit changes" },
  { weight: grams },
  "weight",
  grams,
  ({ weight }) => weight,
);

export const volume = formula(
  { title: "A volume in another unit", rule: "the volume is the same; only its unit changes" },
  { volume: litres },
  "volume",
  litres,
  ({ volume }) => volume,
);

export const finenessOf = formula(
  { title: "A fineness on another scale", rule: "parts of metal in the alloy, on the scale asked for" },
  { fineness },
  "fineness",
  fineness,
  ({ fineness }) => fineness,
);

export const fineWeight = formula(
  { title: "Fine weight", rule: "net weight times fineness" },
  { weight: grams, fineness },
  "fine weight",
  grams,
  ({ weight, fineness }) => weight.times(fineness),
);

export const fineWeightUncertainty = uncertainty(fineWeight, "Expanded uncertainty of a fine weight", {
  weight: "uWeight",
  fineness: "uFineness",
});

export const grossWeight = formula(
  { title: "Net weight that holds a fine weight", rule: "fine weight divided by fineness" },
  { fine: grams, fineness },
  "net weight",
  grams,
  ({ fine, fineness }) => fine.over(fineness),
);

export const meltFineness = formula(
  { title: "Fineness of a melt", rule: "fine weight of all parts together over their weight together" },
  { weights: each(amount), finenesses: each(fineness) },
  "fineness",
  fineness,
  ({ weights, finenesses }) =>
    sum(weights.times(finenesses)).named("fine weight together", "").over(sum(weights).named("weight together", "")),
);

export const alloyAddition = formula(
  {
    title: "Metal to add so that a melt comes to a target fineness",
    rule: "weight × (fineness − target) ÷ (target − fineness of what is added)",
  },
  { weight: grams, fineness, target: fineness, added: fineness },
  "weight to add",
  grams,
  ({ weight, fineness, target, added }) => {
    const [over, under] = [fineness.minus(target), target.minus(added)];
    return choose(
      over.times(under).isAtMost(0),
      refuse({
        kind: "conflict",
        names: ["target", "fineness", "added"],
        because: "the target is not between the fineness of the melt and that of the added metal, so no addition reaches it",
        write: "give a target between the two",
      }),
      weight.times(over).over(under),
    );
  },
);
