import { expect } from "vitest";
import { find } from "../../src/catalogue/catalogue";
import { evaluate } from "../../src/engine/evaluate";

type Cell = number | string | null | readonly (readonly (number | string)[])[];

/** What a cell with one of our functions shows: called as a host calls it, and typed as a formula into the embedded grid. */
export function lot(name: string, ...cells: readonly Cell[]): number {
  const called = find(name)?.call(...cells).value();
  if (typeof called !== "number") throw new Error(`${name} gives no number: ${String(called)}`);
  expect(evaluate("A1", { A1: `=LOT.${name}(${cells.map(written).join(",")})` })).toBe(called);
  return called;
}

function written(cell: Cell): string {
  if (cell === null) return "";
  if (typeof cell === "object") return `{${cell.map((row) => row.map(written).join(",")).join(";")}}`;
  return typeof cell === "number" ? String(cell) : `"${cell.replaceAll('"', '""')}"`;
}

/** Numbers as a range of one column. */
export const column = <T extends number | string>(cells: readonly T[]): readonly (readonly [T])[] => cells.map((cell) => [cell]);
