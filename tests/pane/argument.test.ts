import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { catalogue } from "../../src/catalogue/catalogue";
import { readArgument } from "../../src/pane/argument";
import { fieldText, formulaOf } from "../../src/pane/all-functions/formula";
import { portNotation, userNotation } from "../../src/pane/notation";
import { wholeCall } from "../../src/formulas/lot-calls";
import { choices, suggestions } from "../../src/pane/all-functions/suggestions";

const comma = userNotation({ decimal: ",", separator: ";" });
const read = (text: string, notation = portNotation) => readArgument(text, notation);
const value = (content: number | string) => ({ kind: "value", value: content });
const written = (text: string, sheet: string | null = "Sheet1", notation = portNotation): string =>
  formulaOf("LOT.X", [readArgument(text, notation)], portNotation, sheet).slice("=LOT.X(".length, -1);

describe("what is typed into a field", () => {
  it("is a number where it looks like one", () => {
    expect(read(" 12.50 ")).toEqual(value(12.5));
    expect(read("-.5")).toEqual(value(-0.5));
    expect(read("−3")).toEqual(value(-3));
    expect(read("1e-3")).toEqual(value(0.001));
    expect(read("12,5", comma)).toEqual(value(12.5));
  });
  it("is refused where a separator could mean two things", () => {
    for (const [text, notation] of [["1,234", portNotation], ["1,234.5", portNotation], ["1.234,5", comma], ["12.5", comma]] as const)
      expect(read(text, notation)).toMatchObject({ kind: "unreadable", sentence: expect.stringContaining(`Cannot read ${text}`) });
    expect(read("12.5", comma)).toMatchObject({ sentence: expect.stringContaining("1234,5") });
  });
  it("is refused where no spreadsheet number is as large", () => {
    expect(read("1e999")).toMatchObject({ kind: "unreadable" });
  });
  it("is a text where it is nothing else, with or without quotation marks", () => {
    expect(read("ozt")).toEqual(value("ozt"));
    expect(read('"ozt"')).toEqual(value("ozt"));
    expect(read('"B4"')).toEqual(value("B4"));
    expect(read('"say ""fine"""')).toEqual(value('say "fine"'));
    expect(read("92.5%")).toEqual(value("92.5%"));
    expect(read("22k")).toEqual(value("22k"));
    expect(read("97,5%", comma)).toEqual(value("97.5%"));
    expect(read('"open')).toMatchObject({ kind: "unreadable" });
  });
  it("is a cell or a range, with its sheet or without", () => {
    const area = { top: 4, left: 2, bottom: 9, right: 2 };
    expect(read("B4:B9")).toEqual({ kind: "cells", range: { sheet: null, area, written: "B4:B9" } });
    expect(read("=b4:b9")).toEqual({ kind: "cells", range: { sheet: null, area, written: "B4:B9" } });
    expect(read("Sheet2!$B$4:B9")).toMatchObject({ range: { sheet: "Sheet2", area, written: "$B$4:B9" } });
    expect(read("'Lot ''A'' book'!B4")).toMatchObject({ range: { sheet: "Lot 'A' book" } });
  });
  it("is a text where no sheet is so large", () => {
    expect(read("XFE1")).toEqual(value("XFE1"));
  });
  it("is a unit where the argument knows it, though a cell has the same name", () => {
    const volumes = choices("one of L, mL, gal, galimp, ft3, m3");
    expect(readArgument("m3", portNotation, volumes)).toEqual(value("m3"));
    expect(readArgument("M3", portNotation, volumes)).toMatchObject({ kind: "cells" });
  });
  it("is a list in braces", () => {
    expect(read('{8;20.5;"a;b"}')).toEqual({ kind: "list", rows: [[8], [20.5], ["a;b"]] });
    expect(read("{1,2;3,4}")).toEqual({ kind: "list", rows: [[1, 2], [3, 4]] });
    expect(read("{1,5\\2;3\\4}", comma)).toEqual({ kind: "list", rows: [[1.5, 2], [3, 4]] });
    for (const text of ["{1,2;3}", "{1;B4}", "{1;2", "{}"]) expect(read(text), text).toMatchObject({ kind: "unreadable" });
  });
  it("is a date where it is written as one", () => {
    expect(read("2025-12-09")).toMatchObject({ kind: "date", value: 46000 });
    expect(read("2025-12-09 12:00")).toMatchObject({ kind: "date", value: 46000.5 });
    expect(written("2025-12-09 08:30")).toBe("DATE(2025,12,9)+TIME(8,30,0)");
    expect(read("2025-02-30")).toEqual(value("2025-02-30"));
  });
  it("is refused with what to do where it cannot be computed here", () => {
    for (const text of ["=B4*2", "SUM(B4:B9)", "=CopperPrice", "B:B", "Sheet!!B4", "My sheet!B4"])
      expect(read(text), text).toMatchObject({ kind: "unreadable", sentence: expect.stringMatching(/^Cannot (read|compute)/) });
  });
});

describe("the formula", () => {
  const given = (...texts: string[]) => texts.map((text) => read(text));

  it("writes texts in quotation marks and doubles those within", () => {
    expect(written('"5"" bar"')).toBe('"5"" bar"');
    expect(written("lb")).toBe('"lb"');
  });
  it("leaves out what is left out, at the end without a trace", () => {
    expect(formulaOf("LOT.COPPER", given("10", "lb", "", "2", ""), portNotation, null)).toBe('=LOT.COPPER(10,"lb",,2)');
    expect(formulaOf("LOT.VERSION", [], portNotation, null)).toBe("=LOT.VERSION()");
  });
  it("is shown with the user's separators and written with the workbook's", () => {
    const typed = ["12,5", "lb", "{1,5;2}"].map((text) => readArgument(text, comma));
    expect(formulaOf("LOT.X", typed, comma, null)).toBe('=LOT.X(12,5;"lb";{1,5;2})');
    expect(formulaOf("LOT.X", typed, portNotation, null)).toBe('=LOT.X(12.5,"lb",{1.5;2})');
  });
  it("names the sheet of a cell only where it is another one, in quotation marks where it must", () => {
    expect(written("Sheet2!B4", "Sheet2")).toBe("B4");
    expect(written("Sheet2!B4")).toBe("Sheet2!B4");
    expect(written("'Lot ''A'' book'!B4")).toBe("'Lot ''A'' book'!B4");
    expect(written("'AB12'!B4")).toBe("'AB12'!B4");
    expect(written("'2025'!B4")).toBe("'2025'!B4");
  });
  it("gives back, from a formula, what one types to get it: for every text and number", () => {
    const texts = fc.oneof(fc.string(), fc.constantFrom("B4", "m3", "925", '"', "1,5", "{1}", "=A1", "2025-12-09", " lb", "97.5%", "97,5%"));
    const args = fc.array(fc.oneof(texts.filter((text) => text !== ""), fc.double({ noNaN: true, noDefaultInfinity: true })), { minLength: 1, maxLength: 4 });
    for (const notation of [portNotation, comma])
      fc.assert(
        fc.property(args, (values) => {
          const formula = formulaOf("LOT.X", values.map((content) => ({ kind: "value", value: content }) as const), portNotation, null);
          const typed = wholeCall(formula)?.arguments.map((text) => fieldText(text, notation)) ?? [];
          expect(typed.map((text) => readArgument(text, notation))).toEqual(values.map((content) => value(content === 0 ? 0 : content)));
        }),
      );
  });
  it("is told apart from a call with more around it", () => {
    expect(wholeCall('=LOT.X(1,"a)b",{1,2})')).toMatchObject({ name: "LOT.X", arguments: ["1", '"a)b"', "{1,2}"] });
    expect(wholeCall("=LOT.X('My, sheet'!B4)")?.arguments).toEqual(["'My, sheet'!B4"]);
    expect(wholeCall("=LOT.X(1)+LOT.X(2)")).toBeNull();
    expect(wholeCall("=B4")).toBeNull();
  });
  it("of every example in the catalogue comes back from its form, letter for letter", () => {
    for (const { parameters, examples } of catalogue)
      for (const { formula } of examples) {
        const call = wholeCall(formula);
        const typed = call?.arguments.map((text, i) => fieldText(text, portNotation, choices(parameters[i]?.wants ?? "")));
        const back = typed?.map((text, i) => readArgument(text, portNotation, choices(parameters[i]?.wants ?? "")));
        expect(formulaOf(call?.name ?? "", back ?? [], portNotation, null)).toBe(formula);
      }
  });
});

describe("what a field proposes", () => {
  it("is the units and names that its argument knows, and nothing that is not one", () => {
    const lists = new Set(catalogue.flatMap(({ parameters }) => parameters.map(({ wants }) => choices(wants).join("|"))));
    expect([...lists].filter((list) => list !== "").sort()).toEqual([
      "L|mL|gal|galimp|ft3|m3",
      "Na2CO3|NaOH",
      "cfm|m3/h|L/min|L/s",
      "kg|g|mg|lb|ozav|ozt|dwt|gr|lbt",
      "ppt|%|fraction|karat",
      "sodium metabisulfite|ferrous sulfate heptahydrate|sulfur dioxide|oxalic acid|oxalic acid dihydrate",
      "sterling|coin|Britannia|fine silver|silver 800|silver 830|gold 375|gold 417|gold 585|gold 750|gold 916|gold 990|gold 999|platinum 850|platinum 900|platinum 950|platinum 999|palladium 500|palladium 950|palladium 999",
      "zinc|iron|glucose",
    ]);
  });
  it("is, for a fineness, the ways of writing one", () => {
    expect(suggestions('a fraction from 0 to 1, or a text with its scale such as "92.5%", "22k" or "sterling"')).toEqual(["92.5%", "22k", "sterling"]);
  });
});
