import { FaultError, errorCode } from "../core/fault";
import { replaceCalls } from "../engine/formula";
import { isBracketed } from "../functions/reference";
import { argumentCell, entryOf } from "./called";
import type { Command } from "./command";
import { errorText } from "./cell-text";
import { Misuse, formulaIn } from "./misuse";

export const native: Command = {
  help: `native '<formula>'    prints an ordinary spreadsheet formula that computes the same
    lotwright native '=LOT.COPPER(B4,"lb")'
  A spill prints as lines of tab-separated formulas. What has no such twin ends with 1.`,
  run(words) {
    try {
      const formula = formulaIn(words);
      const spilled: string[][][] = [];
      const text = replaceCalls(formula, (call) => {
        const twin = entryOf(call).call(...call.arguments.map((argument) => argumentCell(argument, () => undefined))).native();
        if (twin === null) throw new NoTwin(`${call.name} has no native twin: its value stands in its place`);
        if (typeof twin === "string") return `(${twin.slice(1)})`;
        spilled.push(twin);
        return call.text;
      });
      const [rows] = spilled;
      if (rows && text !== formula) throw new Misuse("A function that spills has a twin of many cells, which cannot stand inside another formula");
      console.log(rows ? rows.map((row) => row.join("\t")).join("\n") : withoutOuterBrackets(text));
      return 0;
    } catch (fault) {
      if (fault instanceof NoTwin) console.error(fault.message);
      else if (fault instanceof FaultError) console.error(errorText({ error: errorCode(fault.fault), message: fault.message }));
      else throw fault;
      return 1;
    }
  },
};

class NoTwin extends Error {}

/** A twin that is the whole formula needs no brackets. */
const withoutOuterBrackets = (formula: string): string =>
  isBracketed(formula.slice(1)) ? `=${formula.slice(2, -1)}` : formula;
