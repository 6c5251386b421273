import { describe, expect, it } from "vitest";
import { type Metadata, declarationFaults, packageFaults, readerFaults, releaseFaults } from "../../src/catalogue/checks";
import { declarations } from "../../src/catalogue/declarations";

const GOOD = `
/**
 * Doubles.
 * @customfunction DOUBLED
 * @param value The value.
 * @param [times] How often.
 * @returns Twice the value.
 * @example =LOT.DOUBLED(2) -> 4
 */
export function doubled(value: any, times?: any): any {
  return value;
}
`;

const generated: readonly Metadata[] = [{ id: "DOUBLED", name: "DOUBLED", parameters: [] }];
const faults = (source: string): readonly string[] => declarationFaults(declarations("some.ts", source), generated);

describe("what the generator would pass in silence stops the build with a sentence", () => {
  it("finds nothing in a good function", () => expect(faults(GOOD)).toEqual([]));

  it.each<[string, string, string, RegExp]>([
    ["an arrow function", "export function doubled(value: any, times?: any): any {", "export const doubled = (value: any, times?: any): any => {", /is not written as "export function"/],
    ["a function that is not exported", "export function", "function", /is not exported/],
    ["a missing return type", "times?: any): any", "times?: any)", /has no return type/],
    ["a return type that is refused", "times?: any): any", "times?: any): (string | number)[][]", /returns \(string \| number\)\[\]\[\]/],
    ["a union that would be widened", "value: any", "value: string | number", /its type is string \| number/],
    ["a missing type", "value: any", "value", /its type is missing/],
    ["an underscore in the id", "@customfunction DOUBLED", "@customfunction DOUB_LED", /no underscore/],
    ["an id like a cell's address", "@customfunction DOUBLED", "@customfunction AU750", /reads as a cell's address/],
    ["an id that is too short", "@customfunction DOUBLED", "@customfunction DO", /3 to 64/],
    ["a second comment block", "\n/**\n * Doubles", "\n/** A licence. */\n/**\n * Doubles", /2 comment blocks/],
    ["an inline tag", "Doubles.", "Doubles {@link thing}.", /inline tag/],
    ["a missing example", " * @example =LOT.DOUBLED(2) -> 4\n", "", /has no example/],
    ["an example without a result", "-> 4", "", /has an example without/],
    ["no word on the result", " * @returns Twice the value.\n", "", /does not say what it returns/],
    ["an argument without a line", " * @param value The value.\n", "", /value: it has no @param line/],
    ["a required argument after an optional one", "value: any, times?: any", "times?: any, value: any", /keeps the whole add-in from loading/],
    ["a function that functions.json does not hold", "@customfunction DOUBLED", "@customfunction TREBLED", /is not in functions.json/],
  ])("%s", (_, from, to, says) => {
    expect(GOOD).toContain(from);
    expect(faults(GOOD.replace(from, to)).join("\n")).toMatch(says);
  });

  it("a package that claims no side effects", () => {
    expect(packageFaults({})).toEqual([]);
    expect(packageFaults({ sideEffects: false })[0]).toMatch(/drop the association/);
  });

  it("an id that stands twice", () => expect(faults(GOOD + GOOD)).toContain("DOUBLED is declared twice: an id stands once"));
});

describe("readers and release", () => {
  it("every argument has a reader of its name", () =>
    expect(readerFaults("DOUBLED", ["value", "times"], [{ name: "value", wants: "" }, { name: "tims", wants: "" }])).toEqual([
      "DOUBLED, times: no reader reads it",
      'DOUBLED: a reader reads "tims", which is no argument',
    ]));

  const now = (...names: readonly string[]): readonly Metadata[] => [
    { id: "DOUBLED", name: "DOUBLED", parameters: names.map((name) => ({ name, optional: name.endsWith("?") })) },
  ];
  it("a released function stays, with its arguments in their order", () => {
    expect(releaseFaults({ DOUBLED: ["a", "b"] }, now("a", "b", "c?"))).toEqual([]);
    expect(releaseFaults({ DOUBLED: ["a", "b"] }, now("b", "a"))[0]).toMatch(/order and names stay/);
    expect(releaseFaults({ DOUBLED: ["a"] }, now("a", "b"))[0]).toMatch(/must be optional/);
    expect(releaseFaults({ GONE: ["a"] }, now("a"))[0]).toMatch(/was released and is gone/);
  });
});
