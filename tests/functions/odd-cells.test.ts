import { describe, expect, it } from "vitest";
import { find } from "../../src/catalogue/catalogue";
import { FaultError } from "../../src/core/fault";
import { Reference } from "../../src/functions/reference";
import { cell } from "./cell";

const twin = (id: string, ...cells: readonly unknown[]): unknown => find(id)?.call(...cells).native();

describe("a range where one name or difference stands", () => {
  it.each<[string, readonly unknown[]]>([
    ["SODA", [10, [["NaOH"]]]],
    ["GOLDDROP", [10, "g", Object.create(null)]],
    ["AGREEDASSAY", [925, 926, [["2‰"]]]],
    ["FINEU", [1, 0.1, "g", 925, Object.create(null)]],
  ])("is refused by %s and not read as the text of its cells", (id, cells) => {
    expect(cell(id, ...cells)).toMatch(/^#VALUE! Cannot use \w+ = a range: it must be /);
  });
});

it("columns without a row are refused and do not spill nothing", () =>
  expect(cell("RECOVERIES", [], [])).toBe("#VALUE! Cannot compute without fineOut: it is empty and must be a column or one value"));

describe("a native twin", () => {
  it("of a text that is no share is refused as the function refuses it", () =>
    expect(() => twin("COPPER", 10, "lb", new Reference("C4", "plenty"))).toThrow(FaultError));
  it("writes a percentage without the noise of float64", () => expect(twin("COPPER", 1, "g", new Reference("C4", "110.7%"))).toContain('IF(C4="110.7%",1.107,C4)'));
  it("takes a cell that shows nothing for an empty one", () =>
    expect(twin("ALLOYADD", 10, "g", 925, 500, new Reference("E4", ""))).toBe(twin("ALLOYADD", 10, "g", 925, 500, new Reference("E4"))));
  it("holds no number that a spreadsheet has not", () => expect(twin("RECOVERY", 10, 5e-324)).toBe("=10/5e-324"));
});
