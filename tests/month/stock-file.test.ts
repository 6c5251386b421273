import { describe, expect, it } from "vitest";
import { readStock } from "../../src/month/stock-file";

const HEAD = "kind,what,weight,unit,fineness,litres,gramsPerLitre,uncertainty";

describe("a stock file", () => {
  it("holds what was counted and shipped: metal, liquor by test and lots that lie as they came", () => {
    const text = `${HEAD}\ncounted,Crystal,5000,g,999.9,,,\r\ncounted,"Stubs, ""old""",2,kg,90%,,,20%\ncounted,Spent liquor,,,,120,0.3,10%\nlot,26-012,,,,,,\nshipped,Bars,900,ozt,sterling,,,\n\n`;
    expect(readStock(text)).toEqual({
      counted: [
        { kind: "metal", what: "Crystal", weight: 5000, unit: "g", fineness: 999.9, uncertainty: null },
        { kind: "metal", what: 'Stubs, "old"', weight: 2, unit: "kg", fineness: "90%", uncertainty: 0.2 },
        { kind: "liquor", what: "Spent liquor", litres: 120, gramsPerLitre: 0.3, uncertainty: 0.1 },
        { kind: "lot", lot: "26-012" },
      ],
      shipped: [{ kind: "metal", what: "Bars", weight: 900, unit: "ozt", fineness: "sterling", uncertainty: null }],
    });
  });

  it("may name its columns in another order, be parted by semicolons and write decimals with a comma", () => {
    expect(readStock("\uFEFFwhat;kind;unit;weight;fineness\nCrystal;counted;kg;5,25;999,9")).toEqual({ counted: [{ kind: "metal", what: "Crystal", weight: 5.25, unit: "kg", fineness: 999.9, uncertainty: null }], shipped: [] });
  });

  it.each<[string, string, RegExp]>([
    ["a heading that it does not know", "kind,what,grams\ncounted,x,5", /line 1 .*no column ‘grams’/],
    ["no kind", "what,weight\nx,5", /line 1 .*there is no kind/],
    ["another kind", `${HEAD}\nsold,Bars,1,g,999,,,`, /line 2 .*‘sold’: write counted, shipped, or lot/],
    ["a number that is none", `${HEAD}\ncounted,Bars,"1,234.5",g,999,,,`, /line 2 .*weight is ‘1,234.5’: write a plain number/],
    ["a weight without its unit", `${HEAD}\ncounted,Bars,5,,999,,,`, /line 2 .*needs weight, unit and fineness/],
    ["liquor without an uncertainty", `${HEAD}\ncounted,Liquor,,,,5,0.3,`, /line 2 .*needs an uncertainty, such as 10%/],
    ["metal and liquor in one line", `${HEAD}\ncounted,Liquor,5,g,999,5,0.3,10%`, /line 2 .*one line for the metal and one for the liquor/],
    ["an uncertainty that is no share", `${HEAD}\ncounted,Bars,5,g,999,,,5`, /line 2 .*write a share such as 5% or 0.05/],
    ["a comma without quotation marks", `${HEAD}\ncounted,Bars, old,5,g,999,,,`, /line 2 .*9 cells under 8 headings/],
    ["a lot without its number", `${HEAD}\nlot,,,,,,,`, /line 2 .*needs its number/],
  ])("is refused by its line for %s", (_, text, says) => {
    expect(() => readStock(text)).toThrow(says);
  });
});
