import { workingText } from "../catalogue/working-text";
import { FaultError, errorCode } from "../core/fault";
import { lotCalls } from "../formulas/lot-calls";
import { evaluate } from "../engine/evaluate";
import { isCellError } from "../engine/outcome";
import { ArgumentError, argumentCell, entryOf, evaluated } from "./called";
import type { Command } from "./command";
import { errorText, outcomeText } from "./cell-text";
import { Misuse, formulaIn } from "./misuse";

export const explain: Command = {
  takes: "'<formula>'",
  does: "prints the working: rule, numbers put in, constants with their sources, result",
  examples: [`lotwright explain '=LOT.COPPER(10,"lb","13%")'`, `lotwright explain '=ROUND(LOT.PAYOUT(100,"ozt",24.5,"97.5%",0.5,25),0)'`],
  more: "Each of our functions in the formula is explained, the inner ones first.",
  endsWithOne: "when the formula gives an error",
  run(words) {
    const formula = formulaIn(words);
    const calls = lotCalls(formula).reverse();
    if (calls.length === 0) throw new Misuse("There is no function of ours in that formula");
    try {
      const pages = calls.map((call) => {
        const cells = call.arguments.map((text) => argumentCell(text, evaluated));
        return `${call.text}\n${workingText(entryOf(call).call(...cells).working())}`;
      });
      console.log(pages.join("\n\n"));
    } catch (fault) {
      if (!(fault instanceof FaultError || fault instanceof ArgumentError)) throw fault;
      console.error(fault instanceof FaultError ? errorText({ error: errorCode(fault.fault), message: fault.message }) : fault.message);
      return 1;
    }
    return sayWhole(formula, calls[0]?.text ?? "");
  },
};

/** Where our function is a part of a formula, what the whole formula gives. */
function sayWhole(formula: string, only: string): number {
  if (formula === `=${only}`) return 0;
  const outcome = evaluate(formula);
  if (isCellError(outcome)) {
    console.error(errorText(outcome));
    return 1;
  }
  console.log(`\n${formula}\nResult     ${outcomeText(outcome)}`);
  return 0;
}
