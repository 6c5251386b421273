import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { lotwright } from "./lotwright";

describe("eval", () => {
  it("prints a number as its shortest exact text", () =>
    expect(lotwright("eval", '=LOT.WEIGHT(1,"lb","g")')).toEqual({ out: "453.59237", error: "", code: 0 }));
  it("works with native functions around ours", () =>
    expect(lotwright("eval", '=ROUND(LOT.FINEWEIGHT(7,"lb",925),3)').out).toBe("94.427"));
  it("prints a text as it is", () => expect(lotwright("eval", "=LOT.VERSION()").out).toMatch(/^Lotwright \d+\.\d+\.\d+, atomic weights \d{4}$/));
  it("prints a spill as lines of tab-separated cells", () =>
    expect(lotwright("eval", '=LOT.BARS(250,"ozt",100,"ozt")').out).toBe("Bars\t2\t\nRemainder\t50\tozt"));
  it("prints an error with its message to the error stream and ends with 1", () =>
    expect(lotwright("eval", '=LOT.COPPER(10,"oz")')).toEqual({
      out: "",
      error:
        '#VALUE! Cannot use unit = "oz": an ounce can be troy or avoirdupois, and they differ by 9.7 %: write "ozt" (troy, 31.1034768 g) or "ozav" (avoirdupois, 28.349523125 g)',
      code: 1,
    }));
  it("offers the nearest name for one that it does not know", () => {
    const { error, code } = lotwright("eval", '=LOT.COPER(10,"lb")');
    expect(error).toContain("LOT.COPPER");
    expect(code).toBe(1);
  });
  it("ends with 2 when it is called wrongly", () => {
    expect(lotwright("eval").code).toBe(2);
    expect(lotwright("eval", "=1", "=2").code).toBe(2);
    expect(lotwright("evaluate", "=1").code).toBe(2);
    expect(lotwright("constructor")).toMatchObject({ code: 2, error: expect.stringContaining('There is no command') });
    expect(lotwright("eval", `=${"1+".repeat(5000)}1`)).toMatchObject({ code: 2, error: expect.stringContaining("Cannot read a formula of 10002 characters") });
  });
});

describe("explain", () => {
  it("shows rule, numbers, constants with their sources, and the result", () => {
    const { out, code } = lotwright("explain", '=LOT.COPPER(10,"lb","13%")');
    expect(code).toBe(0);
    for (const line of [
      "silver = 10 lb = 4535.9237 g",
      'allowance = "13%" = 0.13',
      "molar mass of copper = 63.546 g/mol (IUPAC",
      "copper = 4535.9237 × 0.294553909308… × (0.13 + 1) + 0 × 23.82975 = 1509.76368572… g",
      "copper = 3.3284592…",
      "Caution",
    ])
      expect(out).toContain(line.replace("copper = 3.3284592…", "copper = 3.328"));
  });
  it("explains inner calls first, then what holds them", () => {
    const { out } = lotwright("explain", '=ROUND(LOT.COPPER(LOT.FINEWEIGHT(10,"lb",925,"lb"),"lb"),2)');
    expect(out.indexOf("Fine weight")).toBeLessThan(out.indexOf("Copper that the drop consumes"));
    expect(out.endsWith("2.72")).toBe(true);
  });
  it("passes an error on, and ends with 1", () => {
    const { error, code } = lotwright("explain", "=LOT.FINENESS(92.5)");
    expect(error).toMatch(/^#VALUE! Cannot use value = 92\.5/);
    expect(code).toBe(1);
  });
});

describe("native", () => {
  it("prints an ordinary formula over the same cells", () =>
    expect(lotwright("native", '=LOT.COPPER(B4,"lb")').out).toBe("=B4*453.59237*1/2*63.546/107.8682/453.59237"));
  it("keeps what stands around our function", () =>
    expect(lotwright("native", "=IF(A1>0,LOT.RECOVERY(B1,A1)*100,0)").out).toBe("=IF(A1>0,(B1/A1)*100,0)"));
  it("says which function has none, and ends with 1", () =>
    expect(lotwright("native", "=LOT.VERSION()")).toMatchObject({ code: 1, error: expect.stringContaining("LOT.VERSION has no native twin") }));
});

describe("functions", () => {
  it("lists all, shows one, and gives either as data", () => {
    expect(lotwright("functions").out).toContain("LOT.COPPER");
    expect(lotwright("functions", "copper").out).toMatch(/^LOT\.COPPER\(fine, unit, \[allowance\], \[freeAcid\], \[to\]\)/);
    expect(JSON.parse(lotwright("functions", "COPPER", "--json").out)).toMatchObject({ id: "COPPER", name: "LOT.COPPER" });
    const [, place = ""] = /^Reference: (\S+)#COPPER$/m.exec(lotwright("functions", "copper").out) ?? [];
    expect(readFileSync(new URL(place), "utf8")).toContain('<article id="COPPER"');
  });
  it("ends with 2 for a name that is none of ours", () => expect(lotwright("functions", "COPER")).toMatchObject({ code: 2 }));
});
