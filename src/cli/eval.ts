import { evaluate as evaluateFormula } from "../engine/evaluate";
import { isCellError } from "../engine/outcome";
import { errorText, outcomeText } from "./cell-text";
import type { Command } from "./command";
import { formulaIn } from "./misuse";

export const evaluate: Command = {
  takes: "'<formula>'",
  does: "prints what a formula gives",
  examples: [
    `lotwright eval '=LOT.FINEWEIGHT(7500,"g",925)'`,
    `lotwright eval '=ROUND(LOT.FINEWEIGHT(7,"lb",925),3)'`,
    `lotwright eval '=LOT.BARS(250,"ozt",100,"ozt")'`,
  ],
  more: "A result that spills prints as lines of cells with tabs between them. An error prints where errors go.",
  endsWithOne: "when the formula gives an error",
  run(words) {
    const outcome = evaluateFormula(formulaIn(words));
    if (isCellError(outcome)) {
      console.error(errorText(outcome));
      return 1;
    }
    console.log(outcomeText(outcome));
    return 0;
  },
};
