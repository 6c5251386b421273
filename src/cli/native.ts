import { FaultError, errorCode } from "../core/fault";
import { NoTwin, nativeTwin } from "../formulas/native-twin";
import { argumentCell, entryOf } from "./called";
import type { Command } from "./command";
import { errorText } from "./cell-text";
import { formulaIn } from "./misuse";

export const native: Command = {
  help: `native '<formula>'    prints an ordinary spreadsheet formula that computes the same
    lotwright native '=LOT.COPPER(B4,"lb")'
  A spill prints as lines of tab-separated formulas. What has no such twin ends with 1.`,
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
