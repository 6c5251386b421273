import { massUnits } from "../core/measure/mass";
import type { CellReading } from "../workbook/port";
import type { LotMatch } from "./corrections";
import type { FieldId } from "./fields";
import { type ColumnMatch, matchOf } from "./list";
import type { SheetReading } from "./sheet-reading";

/** A lot that stands in the list, read by the fields of its columns. */
export interface ListedLot {
  readonly row: number;
  cell(field: FieldId): ListedCell | null;
  /** The number or text that a field's cell holds; null where it has no column, is empty or shows an error. */
  value(field: FieldId): number | string | null;
  /** A weight with the unit of its column or its row; null where one of them is missing. */
  weight(field: FieldId): { readonly value: number; readonly unit: string } | null;
}

export interface ListedCell {
  /** Such as F7. */
  readonly address: string;
  readonly reading: CellReading;
  readonly match: ColumnMatch;
}

/** Every lot of the list, in the order of its rows. */
export const listedLots = (sheet: SheetReading, { list, matches }: LotMatch): readonly ListedLot[] => list.rows.map((row) => listedLot(sheet, matches, row));

function listedLot(sheet: SheetReading, matches: readonly ColumnMatch[], row: number): ListedLot {
  const cell = (field: FieldId): ListedCell | null => {
    const match = matchOf(matches, field);
    return match ? { address: `${match.column.letter}${row}`, reading: sheet.at(row, match.column.number), match } : null;
  };
  const value = (field: FieldId): number | string | null => {
    const reading = cell(field)?.reading;
    if (!reading || reading.error || typeof reading.value === "boolean" || reading.value === "") return null;
    return reading.value;
  };
  return {
    row,
    cell,
    value,
    weight(field) {
      const held = value(field);
      const unit = cell(field)?.match.unit;
      const written = unit?.from === "unit column" ? String(value("unit") ?? "") : (unit?.symbol ?? "");
      const known = massUnits.lookUp(written)?.symbol;
      return typeof held === "number" && known !== undefined ? { value: held, unit: known } : null;
    },
  };
}
