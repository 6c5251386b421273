import type { CellError, OutcomeCell } from "../engine/outcome";

export function cellText(cell: OutcomeCell): string {
  if (cell === null) return "";
  if (typeof cell === "boolean") return cell ? "TRUE" : "FALSE";
  return typeof cell === "object" ? cell.error : String(cell);
}

export const errorText = ({ error, message }: CellError): string =>
  `${error} ${message}`.trim();
