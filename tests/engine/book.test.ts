import { describe, expect, it } from "vitest";
import { type StoredCell, workbookOf } from "../../src/engine/book";
import type { CellContent } from "../../src/workbook/port";

const cell = (address: string, formula: string | null, value: CellContent = null, fills: string | null = null): StoredCell => ({ address, formula, value, fills, error: typeof value === "string" && value.startsWith("#") });

describe("a file's cells, computed again", () => {
  it("keep what kind of thing they hold", () => {
    const book = workbookOf([
      {
        name: "Costs",
        cells: [
          cell("A1", null, "007"), cell("A2", null, "1/2/2024"), cell("A3", null, "TRUE"), cell("A4", null, "=B1"), cell("A5", null, "'x"), cell("A6", null, "12 %"),
          cell("B1", null, 0.1), cell("B2", null, 1e-7), cell("B3", null, 1.5e300), cell("B4", null, true), cell("B5", null, "#N/A"), cell("B6", null, "'#N/A"),
        ],
      },
    ]);
    const value = (address: string): CellContent => book.read("Costs", address).value;
    expect(["A1", "A2", "A3", "A4", "A5", "A6"].map(value)).toEqual(["007", "1/2/2024", "TRUE", "=B1", "'x", "12 %"]);
    expect(["B1", "B2", "B3", "B4"].map(value)).toEqual([0.1, 1e-7, 1.5e300, true]);
    expect(book.read("Costs", "B5")).toMatchObject({ value: "#N/A", error: true });
    expect(book.read("Costs", "B6")).toMatchObject({ value: "'#N/A", error: false });
  });

  it("reach over sheets and through names", () => {
    const book = workbookOf(
      [
        { name: "Prices of 25", cells: [cell("B2", null, 24)] },
        { name: "Lots", cells: [cell("A1", `=LOT.PRICE('Prices of 25'!B2,"ozt","lb")`), cell("A2", '=LOT.PRICE(Spot,"ozt","lb")')] },
      ],
      [{ name: "Spot", range: "'Prices of 25'!$B$2" }],
    );
    expect(book.read("Lots", "A1")).toMatchObject({ value: 350, error: false });
    expect(book.read("Lots", "A2").value).toBe(350);
    expect(() => book.read("Lot", "A1")).toThrow('Cannot find the sheet "Lot"');
  });

  it("leave the cells of an array formula to it", () => {
    const book = workbookOf([{ name: "S", cells: [cell("A1", "={1;2}*2", 9, "A1:A2"), cell("A2", null, 9)] }]);
    expect(book.read("S", "A1").value).toBe(2);
    expect(book.read("S", "A2").value).toBe(4);
  });
});

describe("the cells that our functions touch", () => {
  it("are those with a call and all that depend on one, in whichever order they stand", () => {
    const book = workbookOf(
      [
        {
          name: "One",
          cells: [
            cell("A1", "=A2+1"), cell("A2", "=SUM(B1:B9)"), cell("A3", "=C1"), cell("B5", '=LOT.WEIGHT(1,"kg","g")'), cell("C1", null, 5), cell("D1", "=Total*2"),
          ],
        },
        { name: "Two", cells: [cell("A1", "=One!A1*2"), cell("A2", "=One!A3"), cell("B1", '="LOT.WEIGHT("')] },
      ],
      [{ name: "Total", range: "One!$A$2" }],
    );
    expect(book.lotCells().map(({ sheet, address }) => `${sheet}!${address}`)).toEqual(["One!A1", "One!D1", "One!A2", "One!B5", "Two!A1"]);
    expect(book.lotCells()[0]?.reading.value).toBe(1001);
  });

  it("include what reads a cell of a spill", () => {
    const book = workbookOf([{ name: "S", cells: [cell("A1", '=LOT.SETTLEMENT(100,"lb",925,24,"98%",0.5,0.1,25)'), cell("F1", "=B3")] }]);
    expect(book.lotCells().map(({ address }) => address)).toEqual(["A1", "F1"]);
  });

  it("are found in a column of twenty thousand that each depend on the one above", { timeout: 60_000 }, () => {
    const rows = 20_000;
    const cells = Array.from({ length: rows }, (_, i) => [
      cell(`A${i + 1}`, `=LOT.WEIGHT(${i + 1},"kg","g")`),
      cell(`B${i + 1}`, i > 0 ? `=B${i}+A${i + 1}` : "=A1"),
    ]).flat();
    const book = workbookOf([{ name: "S", cells }]);
    expect(book.lotCells()).toHaveLength(2 * rows);
    expect(book.read("S", `B${rows}`).value).toBe(1000 * ((rows * (rows + 1)) / 2));
  });
});

it("an array formula that fills whole columns leaves the cells beside it alone", () => {
  const cell = (address: string, value: number, more: object = {}) => ({ address, formula: null, fills: null, value, error: false, ...more });
  const book = workbookOf([{ name: "Lots", cells: [cell("A1", 5), cell("B1", 1, { formula: '=LOT.WEIGHT(A1,"lb","g")', fills: "B1:E1048576" }), cell("C9", 7), cell("F9", 8)] }]);
  expect(book.outcome("Lots", "B1")).toBe(2267.96185);
  expect([book.read("Lots", "C9").value, book.read("Lots", "F9").value]).toEqual([null, 8]);
});

it("a sheet with a cell in its last corner is refused in a sentence", () => {
  const far = { address: "XFD1048576", formula: null, fills: null, value: 1, error: false };
  expect(() => workbookOf([{ name: "Lots", cells: [far] }])).toThrow("Cannot compute the sheet Lots: it reaches to XFD1048576: delete");
});
