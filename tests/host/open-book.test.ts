import { readFileSync } from "node:fs";
import { beforeAll, beforeEach, describe, expect, it } from "vitest";
import { unzipSync } from "fflate";
import { OpenBook } from "../../src/host/open-book";
import { onRefusal } from "../../src/host/refusals";
import { type Cell, openXlsx } from "../../src/workbook/file";
import { helpers } from "@odoo/o-spreadsheet";
import { FilePort } from "../../src/workbook/file-port";
import { FileReading } from "../../src/workbook/file-reading";
import { handmade, sheet } from "../workbook/handmade";
import { shopBook } from "../workbook/written-by-excelts";

let shop: Uint8Array;
let book: OpenBook;

beforeAll(async () => {
  shop = await shopBook();
});
beforeEach(() => {
  book = new OpenBook("shop.xlsx", shop);
});

const type = (sheet: string, cell: string, content: string, of = book): void => {
  const { getters } = of.model;
  of.model.dispatch("UPDATE_CELL", { sheetId: getters.getSheetIdByName(sheet) ?? "", ...helpers.toCartesian(cell), content });
};

const cellsOf = (bytes: Uint8Array, sheet: string): Map<string, Cell> => new Map([...openXlsx(bytes).cells(sheet)].map((cell) => [cell.address, cell]));

const changedParts = (before: Uint8Array, after: Uint8Array): string[] => {
  const [a, b] = [unzipSync(before), unzipSync(after)];
  return [...new Set([...Object.keys(a), ...Object.keys(b)])].filter((part) => Buffer.compare(a[part] ?? new Uint8Array(), b[part] ?? new Uint8Array()) !== 0);
};

describe("a file that is open in the grid", () => {
  it("has nothing to save as long as nothing changed", () => {
    expect(book.changes()).toEqual({ cells: [], notComputed: [], leftBehind: [] });
    expect(book.isChanged).toBe(false);
  });

  it("saves a formula as Excel stores it, with its value, and touches no other part", () => {
    type("Lots", "F2", '=LOT.FINEWEIGHT(C2,"g",D2,"g")');
    expect(book.isChanged).toBe(true);
    const saved = book.patched();
    expect(changedParts(shop, saved)).toEqual(["xl/worksheets/sheet1.xml"]);
    expect(new TextDecoder().decode(unzipSync(saved)["xl/worksheets/sheet1.xml"])).toContain('_xldudf_LOT_FINEWEIGHT(C2,"g",D2,"g")</f><v>1156.7125</v>');
  });

  it("saves the values of all that depends on what was typed", () => {
    type("Lots", "C2", "2000");
    const { cells } = book.changes();
    expect(cells).toEqual([
      { sheet: "Lots", cell: "C2", formula: null, value: 2000 },
      { sheet: "Lots", cell: "E2", value: 1850 },
    ]);
    const lots = cellsOf(book.patched(), "Lots");
    expect(lots.get("E2")).toMatchObject({ formula: "=C2*D2/1000", value: 1850 });
    expect(lots.get("E3")).toMatchObject({ value: 248.2 });
  });

  it("saves what was emptied, undone, moved and pasted, since every cell is compared", () => {
    const { model } = book;
    const sheetId = model.getters.getSheetIdByName("Lots") ?? "";
    model.dispatch("DELETE_CONTENT", { sheetId, target: [helpers.toZone("B2")] });
    type("Lots", "B3", "typed and undone");
    model.dispatch("REQUEST_UNDO");
    model.selection.selectZone({ cell: helpers.toCartesian("A4"), zone: helpers.toZone("A4:A4") });
    model.dispatch("CUT");
    model.dispatch("PASTE", { target: [helpers.toZone("G9")] });
    expect(book.changes().cells).toEqual([
      { sheet: "Lots", cell: "A4", formula: null, value: null },
      { sheet: "Lots", cell: "B2", formula: null, value: null },
      { sheet: "Lots", cell: "G9", formula: null, value: "L-003" },
    ]);
  });

  it("knows a text from a number", () => {
    type("Notes", "A1", "'007");
    type("Notes", "A2", "007");
    type("Notes", "A3", "TRUE");
    expect(book.changes().cells.map(({ value }) => value)).toEqual(["007", 7, true]);
  });

  it("saves a formula that spills with all the cells it fills, and again when it shrinks to an error", () => {
    type("Notes", "A1", '=LOT.SETTLEMENT(B20,"lb",925,24,"98%",0.5,0.1,25)');
    type("Notes", "B20", "100");
    const saved = book.patched();
    const notes = cellsOf(saved, "Notes");
    expect(notes.get("A1")).toMatchObject({ fills: "A1:C11", value: "Net weight" });
    expect(notes.get("B1")).toMatchObject({ value: 100, formula: null });
    book.saved(saved);
    expect(book.changes().cells).toEqual([]);
    expect(book.isChanged).toBe(false);
    type("Notes", "B20", "heavy");
    const again = cellsOf(book.patched(), "Notes");
    expect(again.get("A1")).toMatchObject({ fills: "A1", value: "#VALUE!", error: true });
    expect(again.has("B1")).toBe(false);
  });

  it("refuses to save a formula that no spreadsheet could read", () => {
    type("Notes", "A1", "=1+");
    expect(() => book.changes()).toThrow("Cannot save: Notes!A1 holds =1+, which cannot be read as a formula");
  });

  it("names what was changed and cannot be saved", () => {
    const sheetId = book.model.getters.getSheetIdByName("Lots") ?? "";
    book.model.dispatch("SET_FORMATTING", { sheetId, target: [helpers.toZone("A1")], style: { italic: true } });
    book.model.dispatch("RESIZE_COLUMNS_ROWS", { sheetId, dimension: "COL", elements: [0], size: 200 });
    expect(book.changes().leftBehind).toEqual(["number formats, styles and borders", "column widths and row heights"]);
    expect(book.changes().cells).toEqual([]);
  });
});

describe("a formula that the grid computes otherwise than Excel", () => {
  it("keeps its stored value and is named before saving", () => {
    const source = openXlsx(shop).patch([
      { sheet: "Notes", cell: "A1", value: 4, formula: "=-2^2" },
      { sheet: "Notes", cell: "A2", value: 30, formula: "=SUM(Assumed[Price])" },
      { sheet: "Notes", cell: "A3", value: 34, formula: "=A1+A2" },
    ]);
    const opened = new OpenBook("differs.xlsx", source);
    expect(opened.differing).toEqual(["Notes!A1", "Notes!A2", "Notes!A3"]);
    expect(opened.changes().cells).toEqual([]);
    type("Prices", "B2", "25", opened);
    const changes = opened.changes();
    expect(changes.cells.map(({ cell }) => cell)).toEqual(["B2"]);
    expect(changes.notComputed).toEqual(["Notes!A1", "Notes!A2", "Notes!A3"]);
  });

  it("gets the value of our function where the file has an old one or none", () => {
    const source = openXlsx(shop).patch([
      { sheet: "Notes", cell: "A1", value: "#NAME?", error: true, formula: '=LOT.WEIGHT(1,"kg","g")' },
      { sheet: "Notes", cell: "A2", value: "#NAME?", error: true, formula: "=A1*2" },
    ]);
    const { cells } = new OpenBook("stale.xlsx", source).changes();
    expect(cells).toEqual([
      { sheet: "Notes", cell: "A1", value: 1000 },
      { sheet: "Notes", cell: "A2", value: 2000 },
    ]);
  });
});

describe("what a saved file could not hold", () => {
  it("is refused at once with a sentence", () => {
    const heard: string[] = [];
    onRefusal(book.model, (sentence) => heard.push(sentence));
    const { model } = book;
    const sheetId = model.getters.getSheetIdByName("Lots") ?? "";
    model.dispatch("ADD_COLUMNS_ROWS", { sheetId, sheetName: "Lots", dimension: "ROW", base: 2, position: "before", quantity: 1 });
    model.dispatch("REMOVE_COLUMNS_ROWS", { sheetId, sheetName: "Lots", dimension: "ROW", elements: [1] });
    model.dispatch("RENAME_SHEET", { sheetId, oldName: "Lots", newName: "Batches" });
    model.dispatch("CREATE_SHEET", { sheetId: "new", name: "New", position: 1 });
    expect(heard).toEqual([
      expect.stringMatching(/^Cannot insert rows or columns here: .* do it in Excel/),
      expect.stringMatching(/^Cannot delete rows or columns here: /),
      expect.stringMatching(/^Cannot rename a sheet here: /),
      expect.stringMatching(/^Cannot add a sheet here: /),
    ]);
    expect(book.changes()).toEqual({ cells: [], notComputed: [], leftBehind: [] });
  });

  it("does not include more empty rows at the end, which Excel has already", () => {
    const sheetId = book.model.getters.getSheetIdByName("Lots") ?? "";
    const rows = book.model.getters.getNumberRows(sheetId);
    const result = book.model.dispatch("ADD_COLUMNS_ROWS", { sheetId, sheetName: "Lots", dimension: "ROW", base: rows - 1, position: "after", quantity: 100 });
    expect(result.isSuccessful).toBe(true);
  });
});

describe("the sample cost sheet", () => {
  const sample = readFileSync(new URL("../../sample-workbooks/cost-sheet.xlsx", import.meta.url));

  it("is computed here exactly as it is stored", () => {
    const opened = new OpenBook("cost-sheet.xlsx", sample);
    expect(opened.differing).toEqual([]);
    expect(opened.changes().cells).toEqual([]);
  });
});

describe("the names of a file", () => {
  it("stand for their places, whatever the sheet is called, and not for formulas, constants or print areas", async () => {
    const bytes = handmade({
      sheets: { "Old lots": sheet(""), Lots: sheet("") },
      workbookTail:
        "<definedNames><definedName name=\"_xlnm.Print_Area\" localSheetId=\"1\">Lots!$A$1:$B$9</definedName><definedName name=\"Allowance\">0.13</definedName>" +
        "<definedName name=\"Before\">'Old lots'!$A$1:$B$9</definedName><definedName name=\"Twice\">Lots!$A$1*2</definedName></definedNames>",
    });
    const names = [{ name: "Before", place: { sheet: "Old lots", range: "A1:B9" } }];
    expect(await new OpenBook("names.xlsx", bytes).port.names()).toEqual(names);
    expect(await new FilePort(openXlsx(bytes)).names()).toEqual(names);
    expect(await new FileReading(openXlsx(bytes)).names()).toEqual(names);
  });
});
