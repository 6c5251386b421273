import { type Fill, fast } from "../core/expression/fast";
import type { Expression } from "../core/expression/expression";
import { FaultError, fail } from "../core/fault";
import type { Answer, CellValue } from "./answer";
import type { QuickReader } from "./reader";
import { Reference, held, isEmpty } from "./reference";

/** How one input of the formula is read from a column in float64; a factor turns its unit into the formula's. */
export interface FastInput {
  readonly argument: number;
  readonly reader: QuickReader;
  /** Where the argument is left out. */
  readonly otherwise?: number;
  readonly factor?: number;
}

interface EachRow {
  readonly names: readonly string[];
  readonly arguments: readonly unknown[];
  /** The function of one row: the exact reading, and the one that says what is wrong. */
  readonly single: (...cells: unknown[]) => Answer;
  /**
   * For a formula that ends in a rounding, and so is exact in float64 too where that can settle it; null where every row
   * must be read exactly, as when its unit changes from row to row.
   */
  readonly quick?: (constants: readonly unknown[]) => { readonly expression: Expression; readonly inputs: Readonly<Record<string, FastInput>> } | null;
}

/** Stands for an argument that is a column, where a plan asks for one value for all rows. */
export const VARIES = Symbol("varies");

type Column = readonly unknown[];

/**
 * A function along columns: each argument is a column or one value for all rows. A row that cannot be computed shows its
 * own error, a row that is empty stays empty, and the others compute.
 */
export function eachRow({ names, arguments: given, single, quick }: EachRow): Answer {
  const columns = (): readonly Column[] => given.map(column);
  const unread = single(...names.map((_, i) => new Reference(`A${i + 1}`)));
  return {
    arguments: unread.arguments.map((note) => ({
      ...note,
      wants: `a column or one value, each ${note.wants}`,
    })),
    value: () => values(columns(), names, single, quick),
    working() {
      const first = firstRow(columns(), names);
      const { title, lines } = single(...first).working();
      return { title: `${title}, row by row; the first row`, lines };
    },
    outline() {
      const { title, lines } = unread.outline();
      return { title: `${title}, row by row`, lines };
    },
    native: () => native(given, single),
  };
}

/** The single function's twin in each row, over the cells of that row; null where an argument is no plain range. */
function native(given: readonly unknown[], single: EachRow["single"]): string[][] | null {
  const columns = given.map(cellsOf);
  if (columns.some((cells) => cells === null)) return null;
  const all = columns.filter((cells) => cells !== null);
  const rows = Math.max(...all.map(({ length }) => length));
  if (rows === 1 || all.some(({ length }) => length !== rows && length !== 1)) return null;
  const twins: string[][] = [];
  for (let row = 0; row < rows; row++) {
    const twin = single(...all.map((cells) => (cells.length === 1 ? cells[0] : cells[row]))).native();
    if (typeof twin !== "string") return null;
    const inRow = all.filter(({ length }) => length > 1).map((cells) => cells[row] as Reference);
    const isEmptyNow = inRow.every(({ holds }) => isEmpty(holds));
    twins.push([isEmptyNow ? `=IF(AND(${inRow.map(({ text }) => `${text}=""`).join(",")}),"",${twin.slice(1)})` : twin]);
  }
  return twins;
}

const ONE_COLUMN = /^((?:'(?:[^']|'')+'|[\p{L}\p{N}_.]+)!)?(\$?)([A-Z]{1,3})(\$?)(\d+):\$?([A-Z]{1,3})\$?(\d+)$/iu;

/** The cells of a column one by one; a single value or cell stands for all rows. */
function cellsOf(argument: unknown): readonly unknown[] | null {
  if (!(argument instanceof Reference)) return Array.isArray(argument) ? null : [argument];
  const [, sheet = "", a = "", letter = "", b = "", top, last, bottom] = ONE_COLUMN.exec(argument.text) ?? [];
  const holds = argument.holds;
  if (top === undefined) return Array.isArray(holds) || argument.text.includes(":") ? null : [argument];
  if (letter.toUpperCase() !== last?.toUpperCase()) return null;
  const rows = Array.isArray(holds) ? (holds as unknown[]).map((row) => (Array.isArray(row) ? (row[0] as unknown) : row)) : null;
  return Array.from({ length: Number(bottom) - Number(top) + 1 }, (_, i) => {
    const text = `${sheet}${a}${letter}${b}${Number(top) + i}`;
    return rows === null ? new Reference(text) : new Reference(text, rows[i] ?? null);
  });
}

/** The rows of a range, or the one value for all rows. */
function column(argument: unknown): Column {
  const cells = held(argument);
  return Array.isArray(cells) ? cells : [cells];
}

/** The cell in a row of a column. */
function cellIn(column: Column, row: number, name: string): unknown {
  const cells = column[row];
  if (!Array.isArray(cells)) return cells;
  return cells.length === 1 ? (cells[0] as unknown) : fail({ kind: "unfit", name, got: "a range", wants: "one column wide, or one cell" });
}

/** Rows of the longest column; a column is as long as that or holds one value. */
function rowsIn(columns: readonly Column[], names: readonly string[]): number {
  const rows = Math.max(...columns.map(({ length }) => length));
  if (rows === 0) fail({ kind: "missing", name: names[0] ?? "", wants: "a column or one value" });
  const odd = columns.findIndex(({ length }) => length !== rows && length !== 1);
  const longest = columns.findIndex(({ length }) => length === rows);
  if (odd >= 0)
    fail({ kind: "shapes-differ", first: names[longest] ?? "", second: names[odd] ?? "", shapes: [`${rows} × 1`, `${columns[odd]?.length} × 1`] });
  return rows;
}

const at = (columns: readonly Column[], row: number, names: readonly string[]): readonly unknown[] =>
  columns.map((column, i) => cellIn(column, column.length === 1 ? 0 : row, names[i] ?? ""));

const firstRow = (columns: readonly Column[], names: readonly string[]): readonly unknown[] => {
  const rows = rowsIn(columns, names);
  const filled = Array.from({ length: rows }, (_, row) => row).find((row) => !isEmptyRow(columns, at(columns, row, names)));
  return at(columns, filled ?? 0, names);
};

/** One value for all rows does not make a row filled. */
const isEmptyRow = (columns: readonly Column[], cells: readonly unknown[]): boolean =>
  columns.every(({ length }, i) => length === 1 || isEmpty(cells[i])) && columns.some(({ length }) => length > 1);

function values(columns: readonly Column[], names: readonly string[], single: EachRow["single"], quick: EachRow["quick"]): CellValue[][] {
  const rows = rowsIn(columns, names);
  const exact = (row: number): CellValue => {
    const cells = at(columns, row, names);
    if (isEmptyRow(columns, cells)) return "";
    try {
      return single(...cells).value() as CellValue;
    } catch (thrown) {
      if (thrown instanceof FaultError) return { fault: thrown.fault };
      throw thrown;
    }
  };
  const plan = quick?.(columns.map((column, i) => (column.length === 1 ? cellIn(column, 0, names[i] ?? "") : VARIES)));
  if (!plan) return Array.from({ length: rows }, (_, row) => [exact(row)]);
  const inputs = Object.entries(plan.inputs).map(([name, input]) => [name, fastInput(input, columns[input.argument] ?? [], names[input.argument] ?? "")] as const);
  const result: CellValue[][] = new Array<CellValue[]>(rows);
  const doubtful = fast(plan.expression, Object.fromEntries(inputs), rows, (values, start, count) => {
    for (let i = 0; i < count; i++) result[start + i] = [(values[i] as number) + 0];
  });
  for (const row of doubtful) result[row] = [exact(row)];
  return result;
}

function fastInput({ reader, otherwise = NaN, factor = 1 }: FastInput, column: Column, name: string): Fill | number {
  const text = textReading(reader, name);
  const other = (cell: unknown): number =>
    (typeof cell === "number" ? reader.fast(cell) : isEmpty(cell) ? otherwise : typeof cell === "string" ? text(cell) : NaN) * factor;
  if (column.length === 1) return other(cellIn(column, 0, name));
  const { least, most } = reader.plain;
  return (into, start, count) => {
    let size = 0;
    for (let i = 0; i < count; i++) {
      const cells = column[start + i];
      if (Array.isArray(cells) && cells.length === 1) {
        const cell: unknown = cells[0];
        if (typeof cell === "number" && cell >= least && cell <= most) {
          const value = cell * factor;
          into[i] = value;
          if (Math.abs(value) > size) size = Math.abs(value);
        } else {
          into[i] = other(cell);
          size = Math.max(size, Math.abs(into[i] as number));
        }
      } else {
        into[i] = other(cellIn(column, start + i, name));
        size = Math.max(size, Math.abs(into[i] as number));
      }
    }
    return size;
  };
}

/** Texts such as "97.5%" or "sterling" come again and again in a column: each is read once, to the nearest float64. */
function textReading(reader: QuickReader, name: string): (text: string) => number {
  const known = new Map<string, number>();
  const read = (text: string): number => {
    try {
      return reader.read(text, name).toNumber();
    } catch (thrown) {
      if (thrown instanceof FaultError) return NaN;
      throw thrown;
    }
  };
  return (text) => {
    const number = known.get(text) ?? read(text);
    known.set(text, number);
    return number;
  };
}
