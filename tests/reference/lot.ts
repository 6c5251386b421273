import { expect } from "vitest";
import { find } from "../../src/catalogue/catalogue";
import { evaluate } from "../../src/engine/evaluate";

type Cell = number | string | null | readonly (readonly (number | string)[])[];

const called = new Set<string>();

/** The functions that were called since this was last asked. */
export function functionsCalled(): readonly string[] {
  const names = [...called].sort();
  called.clear();
  return names;
}

/** What a cell with one of our functions shows: called as a host calls it, and typed as a formula into the embedded grid. */
export function lot(name: string, ...cells: readonly Cell[]): number {
  const value = call(name, cells);
  if (typeof value !== "number") throw new Error(`${name} gives no number: ${String(value)}`);
  expect(evaluate("A1", { A1: formula(name, cells) })).toBe(value);
  return value;
}

/** The rows of cells that one of our functions spills, called and typed alike. */
export function spill(name: string, ...cells: readonly Cell[]): readonly (readonly unknown[])[] {
  const value = call(name, cells);
  if (!Array.isArray(value)) throw new Error(`${name} does not spill: ${String(value)}`);
  expect(evaluate(formula(name, cells))).toEqual(value);
  return value;
}

function call(name: string, cells: readonly Cell[]): unknown {
  const entry = find(name);
  if (!entry) throw new Error(`No function ${name}`);
  called.add(name);
  return entry.call(...cells).value();
}

const formula = (name: string, cells: readonly Cell[]): string => `=LOT.${name}(${cells.map(written).join(",")})`;

function written(cell: Cell): string {
  if (cell === null) return "";
  if (typeof cell === "object") return `{${cell.map((row) => row.map(written).join(",")).join(";")}}`;
  return typeof cell === "number" ? String(cell) : `"${cell.replaceAll('"', '""')}"`;
}

/** Numbers as a range of one column. */
export const column = <T extends number | string>(cells: readonly T[]): readonly (readonly [T])[] => cells.map((cell) => [cell]);
