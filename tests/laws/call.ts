import { find } from "../../src/catalogue/catalogue";
import { Ratio, zero } from "../../src/core/expression/ratio";

export const call = (id: string, ...cells: readonly unknown[]): unknown => {
  const entry = find(id);
  if (!entry) throw new Error(`No function ${id}`);
  return entry.call(...cells).value();
};

export const number = (id: string, ...cells: readonly unknown[]): number => Number(call(id, ...cells));

/** A block of labelled lines, by its labels. */
export const block = (id: string, ...cells: readonly unknown[]): ReadonlyMap<string, readonly unknown[]> =>
  new Map((call(id, ...cells) as readonly (readonly unknown[])[]).map(([label, ...rest]) => [String(label), rest]));

/** What numbers that a cell shows add up to, as the decimals that they are. */
export const sum = (numbers: readonly number[]): Ratio => numbers.reduce((a, b) => a.plus(Ratio.of(b)), zero);
