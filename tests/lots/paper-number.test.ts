import { describe, expect, it } from "vitest";
import { nextPaperNumber, paperNumbers, paperSheetName } from "../../src/lots/paper-number";
import { readSheets } from "../../src/lots/sheet-reading";
import { textLines } from "../../src/lots/text-lines";
import { plainQuote, written } from "./quotes";

const today = { year: 2026, month: 3, day: 2 };

describe("the next quote's number", () => {
  it("begins with what the shop has told, or else with the year", () => {
    expect(nextPaperNumber("Quote", "AB-101", [], today)).toBe("AB-101");
    expect(nextPaperNumber("Quote", undefined, [], today)).toBe("Q-2026-001");
  });
  it("follows the quotes that stand in the workbook", async () => {
    const { port } = await written(plainQuote);
    const quotes = paperNumbers("Quote", await readSheets(port));
    expect(quotes).toEqual([{ number: "Q-2026-004", date: plainQuote.date }]);
    expect(nextPaperNumber("Quote", "Q-2026-001", quotes, today)).toBe("Q-2026-005");
  });
  it("begins the series that the shop has told anew, when no quote is of its pattern", () => {
    expect(nextPaperNumber("Quote", "FL/1", [{ number: "Q-2025-017" }], today)).toBe("FL/1");
  });
});

describe("the name of a quote's sheet", () => {
  it("has no sign that a sheet's name must not have", () => {
    expect(paperSheetName("Quote", "FL/26:[7]*?\\", [])).toBe("Quote FL-26--7----");
  });
  it("is no longer than Excel takes, and unlike every other", () => {
    const name = paperSheetName("Quote", "Q".repeat(60), []);
    expect(name.length).toBe(31);
    const second = paperSheetName("Quote", "Q".repeat(60), [name.toUpperCase()]);
    expect([second.length, second.endsWith(" (2)")]).toEqual([31, true]);
    expect(paperSheetName("Quote", "7'", [])).toBe("Quote 7");
  });
  it("cuts no character in two", () => {
    expect(paperSheetName("Quote", `${"x".repeat(24)}😀`, [])).toBe(`Quote ${"x".repeat(24)}`);
  });
});

describe("a text in lines", () => {
  it("keeps its own line breaks and breaks between words", () => {
    expect(textLines("one two three\r\n\n four", 8)).toEqual(["one two", "three", "four"]);
  });
  it("cuts a word that is wider than a line, and counts capitals as wider", () => {
    expect(textLines("abcdefghij", 4)).toEqual(["abcd", "efgh", "ij"]);
    expect(textLines("ABCDE", 4)).toEqual(["AB", "CD", "E"]);
  });
  it("holds nothing that a cell cannot hold", () => {
    expect(textLines("a\u0000b\tc", 20)).toEqual(["a b c"]);
  });
});
