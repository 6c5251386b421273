import type { SheetReading } from "../lots/sheet-reading";
import type { MonthInput } from "./month-input";
import { monthText, preceding } from "./month-of";
import { ROWS, fixedCell, madeMonths, monthSheetName } from "./month-places";
import { type Term, cell } from "./term";

/** With what the month begins, in troy ounces. */
export interface Opening {
  readonly fine: Term;
  readonly uncertainty: Term;
  readonly from: string;
  readonly isEntered: boolean;
}

/** What was entered, else the closing of the month before; a sentence where there is neither. */
export function openingOf({ month, opening }: Pick<MonthInput, "month" | "opening">, sheets: readonly SheetReading[]): Opening | string {
  if (opening) return { fine: cell(String(opening.fine), opening.fine), uncertainty: cell(String(opening.uncertainty), opening.uncertainty), from: "as it was entered", isEntered: true };
  const before = preceding(month);
  const made = madeMonths(sheets).find((one) => monthText(one.month) === monthText(before));
  if (!made) return `There is no sheet ‘${monthSheetName(before)}’ to read the opening from: enter with how much fine metal the month began, or close the month before first`;
  const [fine, uncertainty] = [2, 3].map((column) => made.sheet.at(ROWS.closing, column).value);
  if (typeof fine !== "number" || typeof uncertainty !== "number") return `The closing on sheet ‘${monthSheetName(before)}’ (B${ROWS.closing} and C${ROWS.closing}) shows no numbers: mend it there, or enter the opening`;
  return {
    fine: cell(fixedCell(before, "B", ROWS.closing), fine),
    uncertainty: cell(fixedCell(before, "C", ROWS.closing), uncertainty),
    from: `the closing of sheet ${monthSheetName(before)}`,
    isEntered: false,
  };
}
