import { dayText } from "../../lots/calendar";
import type { ListedLot } from "../../lots/listed-lot";
import { nextPaperNumber } from "../../lots/paper-number";
import { type Notation, writtenNumber } from "../notation";
import { type Prefill, termsPrefilled } from "../quote-a-client/prefill";
import { quotedOf } from "./quoted";
import type { Session } from "./session";
import type { SettleKey } from "./settle-keys";

/** What the lot, its quote and the shop say already. */
export function prefills({ told, shop, sheets, statements, today }: Session, lot: ListedLot, notation: Notation): ReadonlyMap<SettleKey, Prefill> {
  const series = shop.statementNumber && "value" in shop.statementNumber ? shop.statementNumber.value : undefined;
  const known = termsPrefilled(told, lot, notation);
  const found = new Map<SettleKey, Prefill>([
    ["number", { text: String(nextPaperNumber("Statement", series, statements, today)) }],
    ["date", { text: dayText(today) }],
    ["payment", { text: "money" }],
    ["metalUnit", { text: "ozt" }],
  ]);
  for (const key of ["client", "goods", "weight", "price", "payable", "refiningCharge", "treatmentCharge", "lotCharges", "deduction"] as const) {
    const one = known.get(key);
    if (one) found.set(key, one);
  }
  const fineness = known.get("likely");
  if (fineness) found.set(/client/i.test(String(lot.value("finenessBasis") ?? "")) ? "theirs" : "ours", fineness);
  const outturn = lot.weight("outturn");
  if (outturn) found.set("outturn", { text: writtenNumber(outturn.value, notation), unit: outturn.unit, from: "As the lot has it." });
  const quoted = quotedOf(lot, sheets);
  if (quoted) found.set("quoted", { text: writtenNumber(quoted.payout, notation), from: `From ${quoted.quote}.` });
  return found;
}
