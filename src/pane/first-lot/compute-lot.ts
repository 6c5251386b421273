import { find } from "../../catalogue/catalogue";
import type { Entry } from "../../catalogue/entry";
import { blamed } from "../../catalogue/blamed";
import type { Working } from "../../core/expression/working";
import { FaultError } from "../../core/fault";
import type { FirstLot } from "./lot-block";

export interface ComputedLot {
  readonly fine: number;
  readonly worth: number;
  readonly workings: readonly Working[];
}

/** A sentence about one of the fields, by the name of its argument. */
export interface LotFault {
  readonly parameter: string;
  readonly sentence: string;
}

/** The lot by the very functions that are written into the sheet. */
export function computeLot({ weight, unit, fineness, price }: FirstLot): ComputedLot | LotFault {
  const fine = called("LOT.FINEWEIGHT", weight, unit, fineness);
  if ("sentence" in fine) return fine;
  const worth = called("LOT.PAYOUT", fine.value, "ozt", price);
  return "sentence" in worth ? worth : { fine: fine.value, worth: worth.value, workings: [fine.working, worth.working] };
}

function called(name: string, ...cells: readonly unknown[]): { value: number; working: Working } | LotFault {
  const entry = find(name) as Entry;
  try {
    const answer = entry.call(...Array.from({ length: entry.arity }, (_, i) => cells[i] ?? null));
    return { value: Number(answer.value()), working: answer.working() };
  } catch (thrown) {
    if (!(thrown instanceof FaultError)) throw thrown;
    return { parameter: blamed(thrown.fault, entry.parameters)[0] ?? "", sentence: thrown.message };
  }
}
