import { find } from "../catalogue/catalogue";
import { FaultError } from "../core/fault";
import { literalText } from "../functions/reader";

/** A part of a formula: as it is written into a cell, and what it comes to now. */
export interface Term {
  readonly text: string;
  /** Throws a FaultError where there is none. */
  value(): number | string;
}

export const cell = (text: string, holds: number | string): Term => ({ text, value: () => holds });

export const literal = (held: number | string): Term => ({ text: typeof held === "number" ? String(held).replace("e", "E") : literalText(held), value: () => held });

/** A cell function over other parts. */
export function call(id: string, ...cells: readonly Term[]): Term {
  const entry = find(id);
  if (!entry) throw new Error(`There is no function ${id}`);
  let known: number | string | undefined;
  return {
    text: `${entry.name}(${cells.map(({ text }) => text).join(",")})`,
    value() {
      if (known !== undefined) return known;
      const value = entry.call(...cells.map((one) => one.value())).value();
      if (typeof value !== "number" && typeof value !== "string") throw new Error(`${entry.name} gives no single value`);
      return (known = value);
    },
  };
}

const numbered = (text: string, value: () => number): Term => ({ text, value });
const numberOf = (term: Term): number => Number(term.value());

export const over = (term: Term, divisor: number): Term => numbered(`${term.text}/${divisor}`, () => numberOf(term) / divisor);
export const times = (a: Term, b: Term): Term => numbered(`${a.text}*${b.text}`, () => numberOf(a) * numberOf(b));

/** A weight in another unit; one that is in it already stays as it is. */
export const inUnit = (weight: Term, from: Term, to: string): Term => (from.value() === to ? weight : call("WEIGHT", weight, from, literal(to)));

/** The number, or the sentence that says why there is none. */
export function outcome(term: Term): number | string {
  try {
    return numberOf(term);
  } catch (thrown) {
    if (thrown instanceof FaultError) return thrown.message;
    throw thrown;
  }
}
