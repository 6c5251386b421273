import { describe, expect, it } from "vitest";
import { type Program, type Published, TWIN_INPUTS, outsideChecks, outsideFaults } from "../../src/catalogue/outside";

const row = (id: string, verified: string, ...functions: readonly string[]): Published => ({ id, statement: `what ${id} says`, source: "a book", verified, functions });
const held = (published: readonly Published[], programs: readonly Program[] = [], twins: readonly string[] = []) => ({ published, programs, twins: new Set(twins) });
const program: Program = { id: "run", functions: ["DOUBLED"], check: "a program", source: "its maker" };

const faults = (given: ReturnType<typeof held>): readonly string[] => outsideFaults(outsideChecks(["DOUBLED", "HALVED"], given), given);

describe("a function that nothing from outside decides stops the build with a sentence", () => {
  it("has none when each has a published value, a program or a native twin", () => {
    expect(faults(held([row("A1", "looked-up", "DOUBLED", "HALVED")]))).toEqual([]);
    expect(faults(held([row("A1", "computed", "HALVED")], [program]))).toEqual([]);
    expect(faults(held([], [], ["DOUBLED", "HALVED"]))).toEqual([]);
  });

  it("names the function that has none", () =>
    expect(faults(held([], [program]))).toEqual([
      "HALVED is held against nothing from outside: add a published value, a native twin or a program's check in shared/checks",
    ]));

  it("lets no value from memory decide alone", () =>
    expect(faults(held([row("A1", "memory", "HALVED")], [program]))[0]).toMatch(/^HALVED is held against nothing/));

  it("knows no check of a function that is not there", () =>
    expect(faults(held([row("A1", "looked-up", "DOUBLED", "HALVED", "TREBLED")]))).toEqual(["A1 in shared/checks names TREBLED, which is no function"]));
});

it("tells programs first, then the published values, each with its source", () => {
  const checks = outsideChecks(["DOUBLED"], held([row("A1", "looked-up", "DOUBLED"), row("A2", "looked-up", "HALVED")], [program], ["DOUBLED"])).get("DOUBLED");
  expect(checks?.map(({ check }) => check)).toEqual([
    `its native twin, an ordinary formula, on ${TWIN_INPUTS} random inputs`,
    "a program",
    "A1: what A1 says",
  ]);
  expect(checks?.at(-1)?.source).toBe("a book");
});

it("tells together what one source says, and marks what is from memory", () => {
  const rows = [{ ...row("A1", "memory", "DOUBLED"), source: "practice" }, row("A2", "looked-up", "DOUBLED"), row("A3", "looked-up", "DOUBLED")];
  expect(outsideChecks(["DOUBLED"], held(rows)).get("DOUBLED")?.map(({ check }) => check)).toEqual([
    "A2: what A2 says; A3: what A3 says",
    "A1: what A1 says (from memory)",
  ]);
});
