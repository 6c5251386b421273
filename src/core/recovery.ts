import { formula } from "./expression/formula";
import { uncertainty } from "./expression/slopes";
import { amount, share } from "./measure/quantity";

export const recovery = formula(
  { title: "Recovery", rule: "outturn over fine weight charged, both in one unit" },
  { out: amount, in: amount },
  "recovery",
  share,
  (lot) => lot.out.over(lot.in),
);

export const recoveryUncertainty = uncertainty(recovery, "Expanded uncertainty of a recovery", { out: "uOut", in: "uIn" });
