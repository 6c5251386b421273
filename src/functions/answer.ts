import { type Either, type Formula, type Inputs, type ResultCell, isAmount, isEither } from "../core/expression/formula";
import { native, nativeCondition, over } from "../core/expression/native";
import type { Piece } from "../core/expression/notation";
import type { Ratio } from "../core/expression/ratio";
import { show } from "../core/expression/show";
import { type Given, holds, value } from "../core/expression/value";
import { type Working, outline, working } from "../core/expression/working";
import { type Fault, fail } from "../core/fault";
import type { ArgumentNote, Bound } from "./bound";
import { literalText } from "./reader";
import type { BoundUnit } from "./unit";

/** A cell of a spill that has an error of its own. */
export interface FaultCell {
  readonly fault: Fault;
}
export type CellValue = number | string | boolean | FaultCell;

/** What a cell function gives back: one reading of it is the value, others are the working and the native twin. */
export interface Answer {
  readonly arguments: readonly ArgumentNote[];
  /** One value, or rows of cells for a spill. Throws a FaultError. */
  value(): CellValue | CellValue[][];
  working(): Working;
  /** What of the working stands before any number is known: rule, formula, caution, source. Never throws. */
  outline(): Working;
  /** An ordinary spreadsheet formula with its "=", rows of cells for a spill, or null where only the value can stand. */
  native(): string | string[][] | null;
}

type BoundInputs<I extends Inputs> = {
  readonly [K in keyof I]: I[K] extends { readonly each: unknown } ? Bound<readonly Ratio[]> : Bound<Ratio>;
};

/** Excel takes no longer one. */
export const LONGEST_FORMULA = 8192;

/** A formula over bound arguments; `unit` is that of a result which is a weight, a volume or a fineness. */
export const answer = <I extends Inputs>(formula: Formula<I>, inputs: BoundInputs<I>, unit?: BoundUnit): Answer =>
  new FormulaAnswer(formula as unknown as Formula<Inputs>, inputs, unit);

class FormulaAnswer implements Answer {
  constructor(
    private readonly formula: Formula<Inputs>,
    private readonly bound: Readonly<Record<string, Bound>>,
    private readonly unit: BoundUnit | undefined,
  ) {}

  get arguments(): readonly ArgumentNote[] {
    return [...Object.values(this.bound).flatMap(({ notes }) => notes), ...(this.unit?.notes ?? [])];
  }

  value(): CellValue | CellValue[][] {
    const { bound, unit } = this;
    const given = read(bound);
    return this.rowsOrOne((cell) => cellValue(cell, given, bound, unit));
  }

  working(): Working {
    const { formula, bound, unit } = this;
    const given = read(bound);
    const words = Object.fromEntries(Object.entries(bound).map(([name, input]) => [name, input.words()]));
    const text = this.single === undefined ? plainText : resultText;
    const results = formula.rows.map((row) => row.map((cell) => text(cell, given, bound, unit)).join(" "));
    return working(formula, given, words, results);
  }

  outline(): Working {
    return outline(this.formula);
  }

  native(): string | string[][] | null {
    const { bound, unit } = this;
    const pieces = Object.entries(bound).map(([name, b]) => [name, b.native()] as const);
    if (pieces.some(([, piece]) => piece === null)) return null;
    const cells = Object.fromEntries(pieces) as Readonly<Record<string, Piece>>;
    const written = this.rowsOrOne((cell) => `=${nativeCell(cell, cells, bound, unit)}`);
    return [written].flat(2).some(({ length }) => length > LONGEST_FORMULA) ? null : written;
  }

  /** The one cell of a formula that does not spill. */
  private get single(): ResultCell | undefined {
    const [[first] = [], ...more] = this.formula.rows;
    return more.length === 0 && this.formula.rows[0]?.length === 1 ? first : undefined;
  }

  private rowsOrOne<T>(of: (cell: ResultCell) => T): T | T[][] {
    const { single } = this;
    return single === undefined ? this.formula.rows.map((row) => row.map(of)) : of(single);
  }
}

function read(bound: Readonly<Record<string, Bound>>): Given {
  const given: Record<string, Ratio | readonly Ratio[]> = {};
  for (const [name, input] of Object.entries(bound)) given[name] = input.read();
  return given;
}

function cellValue(cell: ResultCell, given: Given, bound: Readonly<Record<string, Bound>>, unit?: BoundUnit): CellValue {
  if (typeof cell === "string") return cell;
  if (isEither(cell)) return cellValue(decided(cell, given), given, bound, unit);
  if (!isAmount(cell)) return bound[cell.unitOf]?.unit?.symbol() ?? "";
  const number = inUnit(value(cell.of, given), unit).toNumber();
  // A spreadsheet has no negative zero.
  return Number.isFinite(number) ? number + 0 : fail({ kind: "not-finite", what: cell.name });
}

const decided = ({ when, then, otherwise }: Either, given: Given): ResultCell =>
  holds(value(when.a, given), when.is, value(when.b, given)) ? then : otherwise;

const inUnit = (amount: Ratio, unit: BoundUnit | undefined): Ratio => (unit ? amount.over(unit.read().size) : amount);

type CellText = (cell: ResultCell, given: Given, bound: Readonly<Record<string, Bound>>, unit?: BoundUnit) => string;

const plainText: CellText = (cell, given, bound, unit) =>
  isAmount(cell) ? show(inUnit(value(cell.of, given), unit)) : String(cellValue(cell, given, bound));

const resultText: CellText = (cell, given, bound, unit) => {
  if (!isAmount(cell)) return plainText(cell, given, bound, unit);
  const symbol = unit?.read().symbol ?? cell.quantity.unit;
  return `${cell.name} = ${plainText(cell, given, bound, unit)}${symbol && ` ${symbol}`}`;
};

function nativeCell(
  cell: ResultCell,
  cells: Readonly<Record<string, Piece>>,
  bound: Readonly<Record<string, Bound>>,
  unit?: BoundUnit,
): string {
  if (typeof cell === "string") return literalText(cell);
  if (isEither(cell)) {
    const [then, otherwise] = [cell.then, cell.otherwise].map((one) => nativeCell(one, cells, bound, unit));
    return `IF(${nativeCondition(cell.when, cells)},${then},${otherwise})`;
  }
  if (!isAmount(cell)) return bound[cell.unitOf]?.unit?.native() ?? literalText("");
  const base = native(cell.of, cells);
  return (unit ? over(base, unit.native()) : base).text;
}

/** An answer that no formula computes; its native twin is its value. */
export const plainAnswer = (title: string, text: string): Answer => ({
  arguments: [],
  value: () => text,
  working: () => ({ title, lines: [{ part: "result", text }] }),
  outline: () => ({ title, lines: [] }),
  native: () => null,
});

/** An answer that spills: the generator of functions.json knows a spill by `any[][]` alone. */
 
export const spilled = (answer: Answer): any => answer;
