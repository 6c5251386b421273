import { existsSync, readFileSync } from "node:fs";
import { registries } from "@odoo/o-spreadsheet";
import { expect, it } from "vitest";
import { evaluate } from "../../src/engine/evaluate";
import { type StoredCell, workbookOf } from "../../src/engine/book";

const cell = (address: string, formula: string | null, value: number | null = null): StoredCell => ({ address, formula, value, fills: null, error: false });
const unread = { error: "#VALUE!", message: expect.stringMatching(/^Cannot read the formula/) };

/** What the grid does, by the first words of the row that says so. A test that fails here may be good news: then the row goes. */
const differences: Readonly<Record<string, () => void>> = {
  "Minus before a power": () => expect(evaluate("=-2^2")).toBe(-4),
  "Quotation marks within a text": () => {
    expect(evaluate('="a""b"')).toEqual(unread);
    expect(evaluate('="a"&CHAR(34)&"b"')).toBe('a"b');
  },
  "Error values in a formula": () => {
    expect(evaluate("=IFERROR(#N/A,1)")).toEqual(unread);
    expect(evaluate("=IFERROR(NA(),1)")).toBe(1);
  },
  "Table columns": () => expect(evaluate("=SUM(Costs[Price])")).toEqual(unread),
  "One cell of a range with @": () => expect(evaluate("=@A1:A3")).toEqual(unread),
  LOG10: () => {
    expect(evaluate("=LOG10(100)")).toEqual(unread);
    expect(evaluate("=LOG(100,10)")).toBe(2);
  },
  "Functions that are missing": () => {
    const row = rows().find(([what]) => what === "Functions that are missing");
    const named = (row?.[1] ?? "").replace(" and others", "").split(", ");
    expect(named.filter((name) => registries.functionRegistry.contains(name))).toEqual([]);
    expect(evaluate("=MROUND(7,3)")).toMatchObject({ error: "#NAME?" });
  },
  CONVERT: () => expect(evaluate('=CONVERT(1,"lbm","g")')).toBe(453.592),
  "Results close to zero": () => expect(evaluate("=0.1+0.2-0.3")).not.toBe(0),
  "A range where one value is meant": () => expect(evaluate('=LOT.WEIGHT(A1:A2,"kg","g")', { A1: "1", A2: "2" })).toEqual([[1000], [2000]]),
  "A formula with too few or too many arguments": () => expect(evaluate("=LOT.WEIGHT(1)")).toMatchObject({ error: "#VALUE!", message: expect.stringContaining("at least 3") }),
  "A cell that depends on itself": () => expect(evaluate("A1", { A1: "=A1+1" })).toMatchObject({ error: "#VALUE!", message: expect.stringContaining("depends on itself") }),
  "A chain of thousands of cells, each depending on the next below": () => {
    const rows = 30_000;
    const book = workbookOf([{ name: "S", cells: Array.from({ length: rows }, (_, i) => cell(`A${i + 1}`, i + 1 < rows ? `=A${i + 2}+1` : "=1")) }]);
    expect(book.read("S", "A1")).toMatchObject({ value: "#VALUE!", message: expect.stringContaining("turn the chain round") });
  },
  "Dates before March 1900": () => expect(evaluate("=DATE(1900,2,28)+0")).toBe(60),
  "An apostrophe in a sheet's name": () => {
    const book = workbookOf([
      { name: "O'Brien", cells: [cell("A1", null, 1)] },
      { name: "S", cells: [cell("A1", "='O''Brien'!A1")] },
    ]);
    expect(book.read("S", "A1")).toMatchObject({ value: "#REF!", error: true });
  },
  "Names for constants, formulas and parts of sheets": () => expect(evaluate("=TaxRate*2")).toMatchObject({ error: "#VALUE!", message: expect.stringContaining("a name in it is not known here") }),
};

const rows = (): string[][] =>
  readFileSync(new URL("../../src/host/README.md", import.meta.url), "utf8")
    .split("\n")
    .filter((line) => line.startsWith("| ") && !line.startsWith("| What "))
    .map((line) => line.split("|").slice(1, -1).map((text) => text.trim()));

it.each(Object.entries(differences))("%s: differs as the table says", (_, check) => check());

it("every row on computing has its test, and every test its row", () => {
  const computing = rows().slice(0, Object.keys(differences).length).map(([what]) => what);
  expect(computing).toEqual(Object.keys(differences));
});

it("every test that a row names is there", () => {
  const named = rows().flatMap((row) => [...row.join(" ").matchAll(/`([\w-]+\.test\.ts)`/g)].map(([, file = ""]) => file));
  expect(named.length).toBeGreaterThan(8);
  expect(named.filter((file) => !["host", "workbook", "browser"].some((room) => existsSync(new URL(`../${room}/${file}`, import.meta.url))))).toEqual([]);
});
