import type { FieldId } from "../../lots/fields";
import { type LotFacts, plausibility } from "../../lots/plausible";
import type { Session } from "./session";
import type { SettleKey } from "./settle-keys";
import type { Shown } from "./statement-view";

/** What looks odd, by the field that it is about. None of it blocks anything. */
export function remarksOf({ settling, figures }: Shown, { today, statements }: Session, number: string): ReadonlyMap<SettleKey, string> {
  const facts: LotFacts = {
    net: settling.weight,
    fineness: figures.fineness / 1000,
    fineWeight: { value: figures.fine, unit: "ozt" },
    ...(settling.found.outturn ? { outturn: settling.found.outturn } : {}),
    price: settling.terms.price,
    payable: figures.terms.payable,
    payout: figures.payout,
  };
  const remarks = new Map<SettleKey, string>();
  for (const { about, sentence } of plausibility(facts, { today, lots: [], prices: [] })) {
    const key = about.flatMap((field) => KEYS[field] ?? [])[0];
    if (key && !remarks.has(key)) remarks.set(key, sentence);
  }
  if (statements.some((one) => String(one.number).trim().toLowerCase() === number.trim().toLowerCase())) remarks.set("number", `Statement ${number} is in the workbook already: two statements under one number cannot be told apart`);
  return remarks;
}

const KEYS: Readonly<Partial<Record<FieldId, SettleKey>>> = { net: "weight", fineness: "ours", fineWeight: "weight", outturn: "outturn", price: "price", payable: "payable", payout: "lotCharges" };
