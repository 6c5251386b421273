import { describe, expect, it } from "vitest";
import { catalogue } from "../../src/catalogue/catalogue";
import { type OutcomeCell, isCellError } from "../../src/engine/outcome";
import { evaluate } from "../../src/engine/evaluate";

describe("every example of the help shows what it says; … stands for more digits", () => {
  it.each(catalogue.flatMap(({ examples }) => examples.map(({ formula, shows }) => [formula, shows] as const)))("%s -> %s", (formula, shows) =>
    expect(shows.endsWith("…") ? `${shown(formula).slice(0, shows.length - 1)}…` : shown(formula)).toBe(shows),
  );
});

/** What the cell of the formula shows: of a spill, its first cell. */
function shown(formula: string): string {
  const outcome = evaluate(formula);
  const cell = (Array.isArray(outcome) ? outcome.flat()[0] : outcome) as OutcomeCell;
  return isCellError(cell) ? `${cell.error} ${cell.message}` : String(cell);
}
