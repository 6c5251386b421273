import { type Condition, type Expression, column, input } from "./expression";

/** What a number stands for inside the core: its base unit. A pure number has the empty unit. */
export interface Quantity {
  readonly unit: string;
}

/** A quantity over a range: one number a row. */
export interface Column<Q extends Quantity = Quantity> {
  readonly each: Q;
}

export const each = <Q extends Quantity>(quantity: Q): Column<Q> => ({ each: quantity });

export type Inputs = Readonly<Record<string, Quantity | Column>>;

/** One cell of a result: an amount, or a label. */
export interface Amount {
  readonly name: string;
  readonly quantity: Quantity;
  readonly of: Expression;
}
/** The unit in which an input was given. */
export interface UnitOf {
  readonly unitOf: string;
}
/** One of two cells, as the numbers have it: a verdict. */
export interface Either {
  readonly when: Condition;
  readonly then: ResultCell;
  readonly otherwise: ResultCell;
}
export type ResultCell = Amount | UnitOf | Either | string;

export const isEither = (cell: ResultCell): cell is Either => typeof cell !== "string" && "when" in cell;
export const isAmount = (cell: ResultCell): cell is Amount => typeof cell !== "string" && "of" in cell;

export interface Formula<I extends Inputs = Inputs> {
  readonly title: string;
  /** The rule in words. */
  readonly rule: string;
  readonly inputs: I;
  /** One cell, or rows of cells for a result that spills. */
  readonly rows: readonly (readonly ResultCell[])[];
  readonly source?: string;
  readonly caution?: string;
}

export interface About {
  readonly title: string;
  readonly rule: string;
  readonly source?: string;
  readonly caution?: string;
}

type Symbols<I extends Inputs> = { readonly [K in keyof I]: Expression };

/** A formula of the trade with one result. `name` and `quantity` are the result's. */
export function formula<const I extends Inputs>(
  about: About,
  inputs: I,
  name: string,
  quantity: Quantity,
  body: (symbols: Symbols<I>) => Expression,
): Formula<I> {
  return { ...about, inputs, rows: [[{ name, quantity, of: body(symbols(inputs)) }]] };
}

/** A formula of the trade whose result spills: rows of labels and amounts. */
export function statement<const I extends Inputs>(
  about: About,
  inputs: I,
  body: (symbols: Symbols<I>) => readonly (readonly ResultCell[])[],
): Formula<I> {
  return { ...about, inputs, rows: body(symbols(inputs)) };
}

export const isColumn = (q: Quantity | Column): q is Column => "each" in q;

/** The one result of a formula that does not spill. */
export function result(formula: Formula): Amount {
  const cell = formula.rows[0]?.[0];
  if (cell === undefined || !isAmount(cell)) throw new Error(`${formula.title} has no single result`);
  return cell;
}

function symbols<I extends Inputs>(inputs: I): Symbols<I> {
  return Object.fromEntries(
    Object.entries(inputs).map(([name, q]) => [name, isColumn(q) ? column(name) : input(name)]),
  ) as Symbols<I>;
}
