import type { CellError, Outcome, OutcomeCell } from "../engine/outcome";

/** A value as one line; a spill as lines of tab-separated cells. */
export const outcomeText = (outcome: Outcome): string =>
  isRows(outcome) ? outcome.map((row) => row.map(cellText).join("\t")).join("\n") : cellText(outcome);

const isRows = (outcome: Outcome): outcome is readonly (readonly OutcomeCell[])[] => Array.isArray(outcome);

export function cellText(cell: OutcomeCell): string {
  if (cell === null) return "";
  if (typeof cell === "boolean") return cell ? "TRUE" : "FALSE";
  return typeof cell === "object" ? cell.error : String(cell);
}

export const errorText = ({ error, message }: CellError): string =>
  `${error} ${message}`.trim();
