import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { catalogue } from "../../src/catalogue/catalogue";
import { FaultError, sentence } from "../../src/core/fault";
import { cell } from "./cell";

describe("an ounce is never guessed", () => {
  for (const oz of ["oz", "OZ", " o z ", "ounce", "Ounces"])
    it(`refuses "${oz}" and says which two it could be`, () => {
      expect(cell("FINEWEIGHT", 10, oz, 925)).toBe(
        `#VALUE! Cannot use unit = "${oz}": an ounce can be troy or avoirdupois, and they differ by 9.7 %: write "ozt" (troy, 31.1034768 g) or "ozav" (avoirdupois, 28.349523125 g)`,
      );
    });
  for (const ozt of ["ozt", "oz t", "t oz", "Troy Oz", "TROY OUNCES"])
    it(`reads "${ozt}" as troy`, () => expect(cell("WEIGHT", 1, ozt, "g")).toBe(31.1034768));
});

describe("a scale is never guessed", () => {
  it("refuses 92.5 as a fineness", () =>
    expect(cell("FINENESS", 92.5)).toBe('#VALUE! Cannot use value = 92.5: could be %, karat or ‰: write "92.5%" or 925'));
  it("refuses 22 as a fineness and offers karat too", () =>
    expect(cell("FINENESS", 22)).toBe('#VALUE! Cannot use value = 22: could be %, karat or ‰: write "22%" or 220'));
  it("refuses the text 92.5 as it refuses the number", () =>
    expect(cell("FINENESS", "92.5")).toContain('write "92.5%" or 925'));
  it.each([1000.1, 1e6, -0.1, -925])("refuses %d as a fineness", (f) =>
    expect(cell("FINENESS", f)).toMatch(/^#VALUE! Cannot use value = .*: it must be a fraction from 0 to 1/));
  it("refuses 98 as a payable", () =>
    expect(cell("PAYOUT", 10, "ozt", 24, 98)).toBe(
      '#VALUE! Cannot use payable = 98: could be a share or a percentage: write "98%" or 0.98',
    ));
  it("refuses a payable above the whole", () => expect(cell("PAYOUT", 10, "ozt", 24, 1.2)).toContain("a share from 0 to 1"));
  it("lets an allowance pass the whole", () => expect(cell("COPPER", 10, "lb", "150%")).toBeGreaterThan(7));
  it("refuses a deduction so small that it may be a fraction", () =>
    expect(cell("SETTLEMENT", 10, "ozt", 925, 24, 1, 0, 0, 0, 0.005)).toContain('write "5‰" or "0.5%"'));
});

describe("bad input is named with its value and its cure", () => {
  it.each([
    [["FINEWEIGHT", "ten", "g", 925], "#VALUE! Cannot use weight = \"ten\": it must be a number above 0"],
    [["FINEWEIGHT", "10", "g", 925], "#VALUE! Cannot use weight = \"10\": it must be a number above 0"],
    [["FINEWEIGHT", true, "g", 925], "#VALUE! Cannot use weight = true: it must be a number above 0"],
    [["FINEWEIGHT", "-", "g", 925], "#VALUE! Cannot use weight = \"-\": it must be a number above 0"],
    [["FINEWEIGHT", 10, "-", 925], "#N/A Cannot find unit = \"-\": write one of kg, g, mg, lb, ozav, ozt, dwt, gr, lbt"],
    [["FINEWEIGHT", 10, "g", "-"], "#N/A Cannot find fineness = \"-\": write a fineness such as 925, 0.925, \"92.5%\" or \"22k\", or one of sterling, coin"],
    [["FINEWEIGHT", null, "g", 925], "#VALUE! Cannot compute without weight: it is empty and must be a number above 0"],
    [["FINEWEIGHT", "", "g", 925], "#VALUE! Cannot compute without weight: it is empty and must be a number above 0"],
    [["FINEWEIGHT", 10, null, 925], "#VALUE! Cannot compute without unit: it is empty and must be one of kg, g"],
    [["FINEWEIGHT", 10, 5, 925], "#VALUE! Cannot use unit = 5: it must be one of kg, g"],
    [["FINEWEIGHT", 10, "g", null], "#VALUE! Cannot compute without fineness: it is empty"],
    [["FINEWEIGHT", -10, "g", 925], "#VALUE! Cannot use weight = -10: it must be a number above 0"],
    [["FINEWEIGHT", 0, "g", 925], "#VALUE! Cannot use weight = 0: it must be a number above 0"],
    [["FINEWEIGHT", 1e308, "kg", 925], "#VALUE! Cannot use weight = 1e+308: it must be a number above 0, at most 1e15 in size"],
    [["GROSSWEIGHT", 10, "g", 0], "#VALUE! Cannot use fineness = 0: it must be a fraction above 0 up to 1"],
    [["RECOVERY", 10, 0], "#VALUE! Cannot use fineIn = 0: it must be a number above 0"],
    [["WEARCOST", 10, 0, 1], "#VALUE! Cannot use life = 0: it must be a number above 0"],
    [["STANDARD", "stirling"], "#N/A Cannot find name = \"stirling\": write one of sterling, coin, Britannia"],
    [["FINEU", 1, 1, "g", 925, 1, 0], "#VALUE! Cannot use k = 0: it must be a coverage factor"],
    [["PAYOUT", 1, "ozt", 24, 1, 0, 0, 2.5], "#VALUE! Cannot use decimals = 2.5: it must be a whole number of decimals from 0 to 6"],
    [["ALLOYADD", 10, "g", 900, 950], "#VALUE! Cannot use target with fineness with added: the target is not between"],
    [["INQUART", 10, "g", 200], "#VALUE! Cannot use fineness with target: the metal is already at or under the target"],
    [["METALRETURN", 1, "ozt", 1, 1000, 24], "#VALUE! Cannot use charges with fine: the charges are more than the payable metal is worth"],
    [["AGREEDASSAY", 925, 900, 2], "#N/A Cannot compute yet: umpire is still to come"],
    [["LOTCOST", [[1], [2]], [[1, 2]]], "#VALUE! Cannot pair quantities with prices: one is 2 × 1, the other 1 × 2"],
    [["LOTCOST", [[1], [2], [3]], [[1], [null], [3]]], "#VALUE! Cannot use row 2 of the range: prices is empty there"],
    [["LOTCOST", [[1], ["x"]], [[1], [2]]], "#VALUE! Cannot use quantities, row 2 = \"x\": it must be a number from 0 up"],
    [["MELTFINENESS", [[null], [null]], [[null], [null]]], "#VALUE! Cannot compute without weights: it is empty"],
    [["UNACCOUNTED", [[1]], [[null]], [[1]], [[1]]], "#VALUE! Cannot compute without received: it is empty"],
  ])("%j shows %s", ([name, ...cells], shows) => expect(cell(name as string, ...cells)).toMatch(startsWith(shows)));

  it("keeps its message short for a thousand-character unit", () =>
    expect(String(cell("FINEWEIGHT", 1, "x".repeat(1000), 925)).length).toBeLessThan(140));
  it("says so when a month's recovery is beyond a spreadsheet's numbers", () =>
    expect(cell("MONTHS", 925, 5e-324, 1e15)).toBe("#VALUE! Cannot show recovery: it is too large for a spreadsheet number"));
  it("skips wholly empty rows", () => expect(cell("LOTCOST", [[1], [null], [2]], [[3], [""], [4]])).toBe(11));
});

const startsWith = (text: string): RegExp => new RegExp(`^${text.replace(/[.*+?^${}()|[\]\\]/g, "\\$&")}`);

describe("whatever the cells hold", () => {
  const NOT_FOR_USERS = /NaN|undefined|\[object/;
  const oneCell = fc.oneof(
    fc.double(),
    fc.constantFrom(0, -1, 1e308, -1e308, 5e-324, 925, 0.925, 98, 2, 1e15),
    fc.constantFrom("g", "ozt", "lb", "oz", "", "-", "sterling", "92.5%", "98%", "2 half-even", "x".repeat(1000), "\u0000", "‰", "1e5%"),
    // A message quotes the cell: a text that is itself such a word says nothing about the message.
    fc.string().filter((text) => !NOT_FOR_USERS.test(text)),
    fc.boolean(),
    fc.constant(null),
    fc.constant(undefined),
  );
  const anything = fc.oneof({ weight: 4, arbitrary: oneCell }, { weight: 1, arbitrary: fc.array(fc.array(oneCell, { maxLength: 3 }), { maxLength: 4 }) });

  it.each(catalogue.map((entry) => [entry.id, entry] as const))("%s gives finite numbers, texts or a fault that names an argument", (_, entry) => {
    fc.assert(
      fc.property(fc.array(anything, { minLength: entry.arity, maxLength: entry.arity }), (cells) => {
        try {
          const value = entry.call(...cells).value();
          for (const one of [value].flat(2)) {
            const isFault = typeof one === "object" && sentence(one.fault).startsWith("Cannot ");
            expect(isFault || typeof one === "string" || Number.isFinite(one)).toBe(true);
          }
        } catch (thrown) {
          expect(thrown).toBeInstanceOf(FaultError);
          expect((thrown as FaultError).message).toMatch(/^Cannot /);
          expect((thrown as FaultError).message).not.toMatch(NOT_FOR_USERS);
        }
      }),
      { numRuns: 400 },
    );
  });
});
