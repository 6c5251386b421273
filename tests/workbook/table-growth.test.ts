import { unzipSync } from "fflate";
import { describe, expect, it } from "vitest";
import { OpenBook } from "../../src/host/open-book";
import { openXlsx } from "../../src/workbook/file";
import { FilePort } from "../../src/workbook/file-port";
import type { BookPort, Change } from "../../src/workbook/port";
import { outside } from "../outside";
import { contractBook } from "./contract-book";
import { MAIN, handmade, relationships, sheet, textOf } from "./handmade";
import { convertedTo, shownBy } from "./libreoffice";

const stock = (cell: string, content: string | number): Change => ({ sheet: "Stock", cell, content });
const GROWN: readonly Change[] = [
  { sheet: "Stock", table: "bars", tableRange: "A1:D4" },
  stock("A4", "S-3"),
  stock("B4", 250),
  stock("C4", "=B4*0.9995"),
  stock("D1", 'Poured "hot"\non _x0041_'),
  stock("D4", "May"),
];

const inFile = async (bytes: Uint8Array, changes: readonly Change[]): Promise<Uint8Array> => {
  const port = new FilePort(openXlsx(bytes));
  await port.write(changes);
  return port.file.bytes;
};
const inGrid = async (bytes: Uint8Array, changes: readonly Change[]): Promise<Uint8Array> => {
  const book = new OpenBook("book.xlsx", bytes);
  await book.port.write(changes);
  expect(book.changes().leftBehind).toEqual([]);
  return book.patched();
};

describe.each([
  ["the file port", inFile],
  ["the local workbook", inGrid],
])("a table that %s lets grow", (_, write) => {
  it("has its new range, filter and columns in its own part, and the rest of it as it was", async () => {
    const bytes = await write(contractBook(), GROWN);
    expect(textOf(bytes, "xl/tables/table2.xml")).toBe(
      `<table xmlns="${MAIN}" id="2" name="Bars" displayName="Bars" ref="A1:D4"><autoFilter ref="A1:D4"/><tableColumns count="4"><tableColumn id="1" name="Bar"/><tableColumn id="4" name="Gross, g"/>` +
        '<tableColumn id="3" name="Fine, g"><calculatedColumnFormula>B2*0.999</calculatedColumnFormula></tableColumn><tableColumn id="5" name="Poured &quot;hot&quot;_x000a_on _x005F_x0041_"/></tableColumns></table>',
    );
    const [before, after] = [unzipSync(contractBook()), unzipSync(bytes)];
    expect(Object.keys(after).filter((part) => Buffer.compare(before[part] ?? new Uint8Array(), after[part] ?? new Uint8Array()) !== 0)).toEqual(["xl/worksheets/sheet4.xml", "xl/tables/table2.xml"]);
  });

  it("keeps its totals out of the filter", async () => {
    const bytes = await write(contractBook(), [{ sheet: "Prices", table: "Assumed", tableRange: "A1:C3" }, { sheet: "Prices", cell: "C1", content: "Since" }]);
    expect(textOf(bytes, "xl/tables/table1.xml")).toContain('ref="A1:C3" totalsRowCount="1"><autoFilter ref="A1:C2"/><tableColumns count="3">');
  });

  it("does not take in what one formula fills, nor columns that come from elsewhere", async () => {
    const rows = '<row r="1"><c r="A1" t="inlineStr"><is><t>Bar</t></is></c></row><row r="4"><c r="A4"><f t="array" ref="A4:B4">C1:D1</f><v>0</v></c><c r="B4"><v>0</v></c></row>';
    const book = handmade({
      sheets: { Stock: sheet(rows).replace("</worksheet>", '<tableParts count="1"><tablePart xmlns:r="http://schemas.openxmlformats.org/officeDocument/2006/relationships" r:id="rId1"/></tableParts></worksheet>') },
      parts: {
        "xl/worksheets/_rels/sheet1.xml.rels": relationships([["table", "../tables/table1.xml"]]),
        "xl/tables/table1.xml": `<table xmlns="${MAIN}" id="1" name="Bars" displayName="Bars" ref="A1:A2" tableType="queryTable"><tableColumns count="1"><tableColumn id="1" name="Bar"/></tableColumns></table>`,
      },
    });
    await expect(write(book, [{ sheet: "Stock", table: "Bars", tableRange: "A1:A4" }])).rejects.toThrow("Cannot enlarge the table Bars: it would run into A4:B4, which one formula fills");
    await expect(write(book, [{ sheet: "Stock", table: "Bars", tableRange: "A1:B2" }, stock("B1", "Gross")])).rejects.toThrow("its columns come from outside this workbook");
    expect(textOf(await write(book, [{ sheet: "Stock", table: "Bars", tableRange: "A1:A3" }]), "xl/tables/table1.xml")).toContain('ref="A1:A3"');
  });
});

describe("a table in the local workbook", () => {
  const type = (book: OpenBook, col: number, row: number, content: string): void =>
    void book.model.dispatch("UPDATE_CELL", { sheetId: book.model.getters.getSheetIdByName("Stock") ?? "", col, row, content });
  const ranges = async (port: BookPort): Promise<string[]> => (await port.sheets())[3]?.tables.map(({ range }) => range) ?? [];

  it("takes up what is typed right below it and beside its headings, as in Excel, and is saved so", async () => {
    const book = new OpenBook("book.xlsx", contractBook());
    type(book, 0, 3, "S-3");
    type(book, 3, 0, "Poured");
    expect(await ranges(book.port)).toEqual(["A1:D4", "F1:G2"]);
    expect(book.changes().leftBehind).toEqual([]);
    expect((await book.port.read({ sheet: "Stock", range: "B4:D4" }))[0]?.map(({ value }) => value)).toEqual([null, null, null]);
    const saved = book.patched();
    expect(openXlsx(saved).tables("Stock")[0]?.range).toBe("A1:D4");
    book.saved(saved);
    expect(book.changes().leftBehind).toEqual([]);
    book.model.dispatch("REQUEST_UNDO");
    book.model.dispatch("REQUEST_UNDO");
    expect(Buffer.compare(book.patched(), contractBook())).toBe(0);
  });

  it("takes up no column without a heading", async () => {
    const book = new OpenBook("book.xlsx", contractBook());
    type(book, 3, 1, "poured hot");
    expect(await ranges(book.port)).toEqual(["A1:C3", "F1:G2"]);
    expect(openXlsx(book.patched()).tables("Stock")[0]?.range).toBe("A1:C3");
  });

  it("takes up nothing under its totals", async () => {
    const book = new OpenBook("book.xlsx", contractBook());
    book.model.dispatch("UPDATE_CELL", { sheetId: book.model.getters.getSheetIdByName("Prices") ?? "", col: 0, row: 3, content: "a remark" });
    expect((await book.port.sheets())[1]?.tables[0]?.range).toBe("A1:B3");
    expect(openXlsx(book.patched()).tables("Prices")[0]?.range).toBe("A1:B3");
  });

  it("keeps its headings, which formulas elsewhere name", async () => {
    const { port } = new OpenBook("book.xlsx", contractBook());
    await expect(port.write([stock("B1", "Gross")])).rejects.toThrow("Cannot change Stock!B1: it is a heading of the table Bars: rename it in Excel");
  });
});

outside("soffice", "a table that grew, opened by LibreOffice", (soffice) => {
  it("has its new row with its values, and its new range", async () => {
    const bytes = await inFile(contractBook(), GROWN);
    expect(shownBy(soffice, bytes).get("Stock")?.[3]?.slice(0, 4)).toEqual(["S-3", "250", "249.875", "May"]);
    const again = unzipSync(convertedTo(soffice, "book.xlsx", bytes, "xlsx"));
    const tables = Object.keys(again).filter((part) => part.startsWith("xl/tables/")).map((part) => new TextDecoder().decode(again[part]));
    expect(tables.find((xml) => xml.includes('displayName="Bars"'))).toContain('ref="A1:D4"');
  });
});
