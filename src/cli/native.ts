import { FaultError, errorCode } from "../core/fault";
import { NoTwin, nativeTwin } from "../formulas/native-twin";
import { argumentCell, entryOf } from "./called";
import type { Command } from "./command";
import { errorText } from "./cell-text";
import { formulaIn } from "./misuse";

export const native: Command = {
  takes: "'<formula>'",
  does: "prints an ordinary spreadsheet formula that computes the same",
  examples: [`lotwright native '=LOT.COPPER(B4,"lb")'`, `lotwright native '=LOT.RECOVERY(D2,C2)'`],
  more: "A result that spills prints as lines of formulas with tabs between them.",
  endsWithOne: "when there is no such formula, or an argument is wrong",
  run(words) {
    try {
      const twin = nativeTwin(formulaIn(words), entryOf, (argument) => argumentCell(argument, () => undefined));
      console.log(typeof twin === "string" ? twin : twin.map((row) => row.join("\t")).join("\n"));
      return 0;
    } catch (fault) {
      if (fault instanceof NoTwin) console.error(fault.message);
      else if (fault instanceof FaultError) console.error(errorText({ error: errorCode(fault.fault), message: fault.message }));
      else throw fault;
      return 1;
    }
  },
};
