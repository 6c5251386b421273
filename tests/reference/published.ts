import { describe, expect, it } from "vitest";
import { functionsCalled } from "./lot";

/** A value that others published, as shared/checks holds it. */
export interface Check {
  readonly id: string;
  readonly statement: string;
  readonly inputs: object;
  readonly expected: unknown;
  readonly unit: string;
  readonly tolerance: number;
  readonly source: string;
  readonly verified: string;
  readonly note?: string;
  /** The functions that its test calls: the reference page shows the row with each of them. */
  readonly functions: readonly string[];
}

export interface Checks {
  readonly about: string;
  readonly rows: readonly Check[];
}

/** Gives what we compute, in the shape of the row's expected value; or checks a rule by itself and gives nothing. */
type Test = (given: Given) => unknown;

/** Tests each row of a file of shared/checks; a row without a test fails, and so does a test without a row. */
export function published({ about, rows }: Checks, tests: Readonly<Record<string, Test>>): void {
  describe(about, () => {
    for (const row of rows)
      it(nameOf(row), () => {
        expect.hasAssertions();
        const test = tests[row.id];
        if (!test) throw new Error(`${row.id} is copied but not tested`);
        functionsCalled();
        const ours = test(new Given(row));
        expect(functionsCalled(), `the functions of row ${row.id}`).toEqual(row.functions.toSorted());
        if (ours !== undefined) expectClose(ours, row.expected, row.tolerance);
      });
    it("has a published row for every test", () => expect(Object.keys(tests)).toEqual(rows.map(({ id }) => id)));
  });
}

const nameOf = ({ id, statement, source, verified }: Check): string =>
  `${id}: ${statement} [${source}]${verified === "memory" ? " (from memory: does not decide alone)" : ""}`;

/** A row's numbers and texts, by name. */
export class Given {
  constructor(private readonly row: Check) {}

  number = (name: string): number => numberOf(this.input(name), name);
  numbers = (name: string): readonly number[] => listOf(this.input(name), name).map((one) => numberOf(one, name));
  text = (name: string): string => String(this.input(name));
  texts = (name: string): readonly string[] => listOf(this.input(name), name).map(String);
  pairs = (name: string): readonly (readonly [string, string])[] =>
    listOf(this.input(name), name).map((pair) => listOf(pair, name).map(String) as [string, string]);
  /** Numbers by name: grams: { g: 1, oz: 31.1034768 }. */
  named = (name: string): ReadonlyMap<string, number> =>
    new Map(Object.entries(this.input(name) as object).map(([key, one]) => [key, numberOf(one, name)]));

  get expected(): unknown {
    return this.row.expected;
  }

  get tolerance(): number {
    return this.row.tolerance;
  }

  private input = (name: string): unknown => (this.row.inputs as Readonly<Record<string, unknown>>)[name];
}

function numberOf(value: unknown, name: string): number {
  if (typeof value !== "number") throw new Error(`${name} is no number`);
  return value;
}

export function listOf(value: unknown, name: string): readonly unknown[] {
  if (!Array.isArray(value)) throw new Error(`${name} is no list`);
  return value;
}

/** Numbers lie within the tolerance; a published text such as 10.00 is a number that must be met exactly. */
export function expectClose(ours: unknown, published: unknown, tolerance: number): void {
  if (typeof ours === "number" && typeof published === "string") expect(ours).toBe(Number(published));
  else if (typeof ours === "number" && typeof published === "number") {
    if (tolerance === 0) expect(ours).toBe(published);
    else expect(Math.abs(ours - published), `${ours} against ${published}`).toBeLessThanOrEqual(tolerance);
  } else if (typeof ours === "object" && ours !== null && typeof published === "object" && published !== null) {
    expect(Object.keys(ours)).toEqual(Object.keys(published));
    for (const [key, one] of Object.entries(ours)) expectClose(one, (published as Record<string, unknown>)[key], tolerance);
  } else expect(ours).toBe(published);
}
