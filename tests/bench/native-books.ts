import { Reference } from "../../src/functions/reference";
import { find } from "../../src/catalogue/catalogue";
import type { SheetCell } from "../native/workbook";
import { type Lots, lots } from "./lots";

export const LOTS = 100_000;
export const CLIENTS = Array.from({ length: 50 }, (_, i) => `C-${i + 11}`);
/** The first day of a month of the lots' year, counted from 0. */
const firstDay = (month: number): number => Date.UTC(2025, month, 1) / 86_400_000 + 25_569;

/** Lots as plain cells: date, client, fine in, fine out, price, payable, refining charge, lot charges. */
export function cells(all: Lots = lots(LOTS)): readonly (readonly SheetCell[])[] {
  return all.fine.map((_, i) =>
    [all.dates, all.clients, all.fine, all.fineOut, all.price, all.payable, all.refiningCharge, all.lotCharges].map((column) => column[i]?.[0] as SheetCell),
  );
}

/** The payout of a row (counted from 1) as an ordinary formula: the native twin. */
export function payoutFormula(row: number): string {
  const [fine, price, payable, refining, charges] = ["C", "E", "F", "G", "H"].map((letter) => new Reference(`${letter}${row}`));
  const twin = find("PAYOUT")?.call(fine, "ozt", price, payable, refining, charges, null).native();
  if (typeof twin !== "string") throw new Error("PAYOUT has no native twin");
  return twin.slice(1);
}

/** Fine in or fine out of a client in a month (counted from 0), by SUMIFS over the lots. */
export function sumFormula(column: "C" | "D", client: string, month: number): string {
  const range = (letter: string): string => `$${letter}$1:$${letter}$${LOTS}`;
  return `SUMIFS(${range(column)},${range("B")},"${client}",${range("A")},">=${firstDay(month)}",${range("A")},"<${firstDay(month + 1)}")`;
}
