import { find } from "../catalogue/catalogue";
import type { Answer, CellValue } from "../functions/answer";
import { literalText } from "../functions/reader";
import { Reference } from "../functions/reference";

/** One figure of the plan: what a cell function gives, with its working, and as it would be typed into a cell. */
export interface Figure {
  readonly value: number;
  readonly answer: Answer;
  readonly formula: string;
}

/** A figure that can come out between two ends; both are one where it cannot. */
export interface Ends<T> {
  readonly least: T;
  readonly most: T;
}

/** A reference names where its value comes from, so that the working of one figure tells which other one feeds it. */
export type Fed = Reference | number | string | null;

export const fed = (from: string, value: number | string): Reference => new Reference(from, value);

export function figure(id: string, ...cells: readonly Fed[]): Figure {
  const { answer, formula } = called(id, cells);
  const value = answer.value();
  if (typeof value !== "number") throw new Error(`${id} gives no single number`);
  return { value, answer, formula };
}

/** The rows of a figure that fills several cells. */
export function rows(id: string, ...cells: readonly Fed[]): { readonly rows: readonly (readonly CellValue[])[]; readonly answer: Answer; readonly formula: string } {
  const { answer, formula } = called(id, cells);
  const value = answer.value();
  if (!Array.isArray(value)) throw new Error(`${id} gives no rows`);
  return { rows: value, answer, formula };
}

function called(id: string, cells: readonly Fed[]): { readonly answer: Answer; readonly formula: string } {
  const entry = find(id);
  if (!entry) throw new Error(`There is no function ${id}`);
  return { answer: entry.call(...cells), formula: `=${entry.name}(${cells.map(written).join(",").replace(/,+$/, "")})` };
}

function written(cell: Fed): string {
  const value = cell instanceof Reference ? cell.holds : cell;
  if (value === null) return "";
  return typeof value === "number" ? String(value) : literalText(String(value));
}

export const same = <T>(one: T): Ends<T> => ({ least: one, most: one });

export const isRange = <T>({ least, most }: Ends<T>): boolean => least !== most;

export function each<A, B>(ends: Ends<A>, of: (end: A) => B): Ends<B> {
  const least = of(ends.least);
  return { least, most: isRange(ends) ? of(ends.most) : least };
}

/** A figure that falls where the other rises has its ends the other way round. */
export const inOrder = (ends: Ends<Figure>): Ends<Figure> => (ends.least.value <= ends.most.value ? ends : { least: ends.most, most: ends.least });
