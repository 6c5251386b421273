import { dayOf, dayText } from "./calendar";
import { isDateFormat } from "./content";
import type { LotMatch } from "./corrections";
import type { ListedLot } from "./listed-lot";
import { type Contradiction, type Findings, about, lotName, lots as countOf } from "./reconcile-contradiction";
import { type SheetReading, isTyped } from "./sheet-reading";

/** Two lots under one number, by the cell of the later one. */
export function repeatedNumbers(all: readonly ListedLot[]): Findings {
  const first = new Map<string, ListedLot>();
  const found: Contradiction[] = [];
  for (const lot of all) {
    const [cell, number] = [lot.cell("lot"), lot.value("lot")];
    if (!cell || number === null) continue;
    const key = String(number).trim().toLowerCase();
    const other = first.get(key);
    if (other) found.push({ kind: "number", ...about(lot, cell), sentence: `Lot number ${number} stands in ${other.cell("lot")?.address ?? ""} too: two lots under one number cannot be told apart` });
    else first.set(key, lot);
  }
  // A list with a row for each parcel of a lot repeats its numbers by intention.
  if (found.length <= Math.max(2, all.length / 5)) return { contradictions: found, remarks: [] };
  return { contradictions: [], remarks: [`Lot numbers repeat in ${found.length} of ${countOf(all.length)}: the list seems to keep several rows for one lot, so that a number twice is not held against it`] };
}

/** A typed number in a column of formulas: it no longer follows when its row changes. */
export function overtyped(sheet: SheetReading, { list }: LotMatch, all: readonly ListedLot[]): { readonly contradictions: readonly Contradiction[]; readonly columns: number } {
  const found: Contradiction[] = [];
  let columns = 0;
  for (const { number, letter, heading } of list.columns) {
    const cells = all.map((lot) => ({ lot, reading: sheet.at(lot.row, number) }));
    const formulas = cells.filter(({ reading }) => reading.formula !== null).length;
    const typed = cells.filter(({ reading }) => typeof reading.value === "number" && isTyped(reading));
    if (formulas < 3 || typed.length * 2 > formulas) continue;
    columns++;
    for (const { lot, reading } of typed) {
      const value = Number(reading.value);
      const text = isDateFormat(reading.numberFormat) ? dayText(dayOf(value)) : String(value);
      found.push({
        kind: "overtyped",
        lot: lotName(lot),
        row: lot.row,
        cell: `${letter}${lot.row}`,
        heading,
        sentence: `${text} was typed where ${formulas} cells of this column hold a formula: it does not follow when the row changes`,
      });
    }
  }
  return { contradictions: found, columns };
}
