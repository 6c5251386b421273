import { evaluate as evaluateFormula } from "../engine/evaluate";
import { isCellError } from "../engine/outcome";
import { errorText, outcomeText } from "./cell-text";
import type { Command } from "./command";
import { formulaIn } from "./misuse";

export const evaluate: Command = {
  help: `eval '<formula>'      prints what the formula gives
    lotwright eval '=LOT.FINEWEIGHT(7500,"g",925)'
    lotwright eval '=ROUND(LOT.FINEWEIGHT(7,"lb",925),3)'
  A spill prints as lines of tab-separated cells. An error goes to stderr and ends with 1.`,
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
