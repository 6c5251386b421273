import type { LotMatch } from "../../lots/corrections";
import { type FieldId, fieldOf } from "../../lots/fields";
import type { BookPort } from "../../workbook/port";
import type { Notation } from "../notation";
import { shownNumber } from "./shown-number";

const COMPUTED: readonly FieldId[] = ["net", "fineWeight", "payout", "copper", "copperBars", "acid"];

/** What the computed cells of a row show, by their headings. */
export async function shownIn(port: BookPort, sheet: string, row: number, { matches }: LotMatch, notation: Notation): Promise<{ readonly heading: string; readonly text: string }[]> {
  const found = [];
  for (const { field, column } of matches.filter((match) => COMPUTED.includes(match.field))) {
    const [[cell] = []] = await port.read({ sheet, range: `${column.letter}${row}` });
    if (!cell || cell.value === null || cell.value === "") continue;
    const isMoney = fieldOf(field).kind === "money";
    found.push({ heading: column.heading, text: typeof cell.value === "number" ? shownNumber(cell.value, isMoney ? 2 : 3, notation, isMoney) : String(cell.value) });
  }
  return found;
}
