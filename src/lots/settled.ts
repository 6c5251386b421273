import type { ListedLot } from "./listed-lot";
import { plain } from "./words";

const SAYS = new Set(["settled", "paid", "closed", "reglee", "regle", "reglees", "regles", "paye", "payee", "payes", "payees", "solde", "soldee", "verse", "versee"]);
/** "Not paid", "to be paid", "part paid", "à payer". */
const TAKES_BACK = new Set(["not", "no", "non", "pas", "to", "be", "a", "part", "partly", "half", "partiellement", "await", "awaiting", "unless", "if", "when", "soon"]);
const YES = new Set(["y", "yes", "x", "o", "oui", "✓", "✔", "true"]);

const wordsOf = (text: string): readonly string[] => plain(text).match(/[\p{L}\p{N}✓✔]+/gu) ?? [];

/** Whether a status says that the lot has been settled or paid. */
export function saysSettled(status: string, heading: string): boolean {
  const words = wordsOf(status);
  if (words.some((word) => TAKES_BACK.has(word))) return false;
  // Under a heading such as "Paid?" a yes is enough.
  return words.some((word) => SAYS.has(word)) || (words.length === 1 && YES.has(words[0] ?? "") && wordsOf(heading).some((word) => SAYS.has(word)));
}

/** A lot is settled when it has an outturn or its status says so; in a list that has neither, when it has a payout. */
export function isSettled(lot: ListedLot): boolean {
  const status = lot.cell("status");
  if (typeof lot.value("outturn") === "number") return true;
  if (status && saysSettled(String(lot.value("status") ?? ""), status.match.column.heading)) return true;
  return lot.cell("outturn") === null && !status && typeof lot.value("payout") === "number";
}
