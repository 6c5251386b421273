import { literalText } from "../functions/reader";
import { type FieldId, fieldOf } from "./fields";
import { type Input, type LotInput, converted, isCellGiven } from "./given";
import { type ColumnMatch, matchOf } from "./list";

/** What stands for a field in a formula of the new row. */
export interface Operand {
  readonly text: string;
  /** The unit as it stands in a formula: "g" in its quotation marks, or the cell of the unit column. */
  readonly unit: string;
  /** The cell that must be filled before the formula can give anything; null where it is there. */
  readonly awaits: string | null;
}

export interface RowWords {
  readonly sheet: string;
  readonly row: number;
  readonly matches: readonly ColumnMatch[];
  readonly given: LotInput;
  /** The unit of the row, where the list has a unit column. */
  readonly rowUnit: string | null;
  /** Fields that the row will hold, typed or computed. */
  readonly present: ReadonlySet<FieldId>;
  /** Name of the table whose column names stand in formulas; null where cells are named. */
  readonly table: string | null;
  /** The list's sheet with its exclamation mark, where the formulas stand on another sheet. */
  readonly prefix?: string;
}

export class Operands {
  constructor(private readonly words: RowWords) {}

  /** The reference to a field's cell in the row, or what was given for a field without a column; null where there is neither. */
  of(field: FieldId): Operand | null {
    const match = matchOf(this.words.matches, field);
    const input = this.words.given[field];
    if (match) {
      const text = this.reference(match);
      return { text, unit: this.#unit(match), awaits: this.words.present.has(field) ? null : text };
    }
    return input === undefined ? null : literal(field, input, this.words);
  }

  reference({ column }: ColumnMatch): string {
    const { table, row, prefix = "" } = this.words;
    return table === null ? `${prefix}${column.letter}${row}` : `${table}[[#This Row],[${column.heading.replace(/['#@[\]]/g, "'$&")}]]`;
  }

  /** A fineness that a function of ours can read, whatever scale the column is on. */
  fineness(): Operand | null {
    return this.#scaled("fineness");
  }

  share(field: "payable"): Operand | null {
    return this.#scaled(field);
  }

  /** A price or charge per one unit, told per another. */
  per(field: "price" | "refiningCharge" | "treatmentCharge", unit: string): Operand | null {
    const operand = this.of(field);
    if (!operand) return null;
    const wanted = literalText(unit);
    return operand.unit === wanted ? operand : { ...operand, text: `LOT.PRICE(${operand.text},${operand.unit},${wanted})`, unit: wanted };
  }

  #scaled(field: FieldId): Operand | null {
    const operand = this.of(field);
    const symbol = matchOf(this.words.matches, field)?.unit?.symbol;
    if (!operand || !matchOf(this.words.matches, field)) return operand;
    const divisor = symbol === "%" ? 100 : symbol === "karat" ? 24 : symbol === "ppt" && fieldOf(field).kind !== "fineness" ? 1000 : 1;
    return divisor === 1 ? operand : { ...operand, text: `${operand.text}/${divisor}` };
  }

  #unit({ unit, field }: ColumnMatch): string {
    if (unit?.from === "unit column") {
      const column = matchOf(this.words.matches, "unit");
      return column ? this.reference(column) : literalText(this.words.rowUnit ?? "");
    }
    return literalText(unit?.symbol ?? (fieldOf(field).kind === "per mass" ? "ozt" : ""));
  }
}

function literal(field: FieldId, input: Input, { sheet, rowUnit }: RowWords): Operand | null {
  const { kind } = fieldOf(field);
  const unit = input.unit ?? (kind === "per mass" ? "ozt" : (rowUnit ?? ""));
  if (isCellGiven(input)) return { text: cellText(input, sheet), unit: literalText(unit), awaits: null };
  const symbol = kind === "fineness" ? "as written" : kind === "share" ? "fraction" : kind === "per thousand" ? "ppt" : unit;
  const value = converted(field, input, symbol);
  if (typeof value === "string" || value.content === null) return null;
  return { text: typeof value.content === "string" ? literalText(value.content) : String(value.content), unit: literalText(unit), awaits: null };
}

/** A cell of the workbook, fixed, so that it stays the same when the formula is filled down. */
export function cellText({ sheet, cell }: { readonly sheet: string; readonly cell: string }, from: string): string {
  const fixed = cell.replace(/^\$?([A-Z]+)\$?(\d+)$/i, "$$$1$$$2");
  if (sheet === from) return fixed;
  return /^[\p{L}_][\p{L}\p{N}_]*$/u.test(sheet) && !/^[A-Z]{1,3}\d+$/i.test(sheet) ? `${sheet}!${fixed}` : `'${sheet.replaceAll("'", "''")}'!${fixed}`;
}
