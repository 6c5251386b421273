import { Workbook } from "@cj-tech-master/excelts";
import { strToU8, unzipSync } from "fflate";
import { beforeAll, describe, expect, it } from "vitest";
import { type CellChange, openXlsx } from "../../src/workbook/file";
import { readZip } from "../../src/workbook/xlsx/zip-read";
import { outside } from "../outside";
import { handmade, sheet } from "./handmade";
import { convertedTo, shownBy } from "./libreoffice";
import { shopBook } from "./written-by-excelts";

const SHEET = "xl/worksheets/sheet1.xml";
const values: CellChange[] = [
  { sheet: "Lots", cell: "C3", value: 333.125 },
  { sheet: "Lots", cell: "B4", value: "Client C & Co" },
  { sheet: "Lots", cell: "C9", value: true },
];
const formulas: CellChange[] = [
  ...values,
  { sheet: "Lots", cell: "F2", formula: '=LOT.COPPER(E2,"g")', value: 340.7 },
  { sheet: "Lots", cell: "E3", formula: "=C3*D3/1000", value: 266.5 },
  { sheet: "Lots", cell: "A12", formula: "=LOT.COPPERBARS(E2:E4)", value: 1.5, spill: [[{ value: 1.5 }, { value: "bars" }], [{ value: 2.5 }, { value: null }]] },
  { sheet: "Prices", cell: "D5", value: "new <text>" },
];

const decode = (bytes: Uint8Array | undefined): string => new TextDecoder("utf-8", { ignoreBOM: true }).decode(bytes ?? new Uint8Array());

function differing(before: Uint8Array, after: Uint8Array): string[] {
  const [a, b] = [unzipSync(before), unzipSync(after)];
  return [...new Set([...Object.keys(a), ...Object.keys(b)])].filter((part) => decode(a[part]) !== decode(b[part])).sort();
}

/** The sheet without the cells that were to change, which is then as it was before. */
const without = (xml: string, cells: readonly string[]): string =>
  cells.reduce((text, cell) => text.replace(new RegExp(`<c r="${cell}"[^>]*?(?:/>|>.*?</c>)`, "s"), ""), xml).replace(/<row r="\d+"(?: spans="[^"]*")?\s*(?:\/>|><\/row>)/g, "").replace(/<dimension[^>]*>/, "");

/** What must hold for a file of whatever program: the changes are there, and nothing else is different. */
function holdsItsOwn(before: () => Uint8Array): void {
  it("differs, after values changed, in that one sheet and there in those cells", () => {
    const after = openXlsx(before()).patch(values);
    const part = openXlsx(before()).sheets[0]?.part ?? "";
    expect(differing(before(), after)).toEqual([part]);
    const cells = values.map(({ cell }) => cell);
    expect(without(decode(unzipSync(after)[part]), cells)).toBe(without(decode(unzipSync(before())[part]), cells));
  });

  it("keeps the packed bytes of every part that did not change, in their order", () => {
    const after = readZip(openXlsx(before()).patch(values)).entries;
    const source = readZip(before()).entries;
    expect(after.map(({ name }) => name)).toEqual(source.map(({ name }) => name));
    const same = source.filter(({ packed }, i) => Buffer.compare(packed, after[i]?.packed ?? new Uint8Array()) === 0);
    expect(same.length).toBe(source.length - 1);
  });

  it("has every content as it was given, and the cells around as they were", () => {
    const read = (bytes: Uint8Array, sheet: string) => new Map([...openXlsx(bytes).cells(sheet)].map(({ address, value, formula, style }) => [address, { value, formula, style }]));
    const after = openXlsx(before()).patch(formulas);
    for (const sheet of ["Lots", "Prices"]) {
      const expected = read(before(), sheet);
      const found = read(after, sheet);
      for (const { cell, formula = null, value } of formulas.filter((change) => change.sheet === sheet)) {
        expect(found.get(cell)).toMatchObject({ formula, value });
        if (expected.has(cell)) expect(found.get(cell)?.style).toBe(expected.get(cell)?.style);
      }
      const spilled = ["B12", "A13", "B13"];
      for (const [cell, content] of expected) if (!formulas.some((change) => change.sheet === sheet && change.cell === cell)) expect(found.get(cell)).toEqual(content);
      expect([...found.keys()].filter((cell) => !expected.has(cell) && !formulas.some((change) => change.cell === cell)).sort()).toEqual(sheet === "Lots" ? spilled.sort() : []);
    }
  });
}

describe("a workbook with a chart, a picture, a comment, a table, a name and a list to choose from", () => {
  let book = new Uint8Array();
  beforeAll(async () => {
    book = new Uint8Array(await shopBook());
  });

  holdsItsOwn(() => book);

  it("holds all these parts, before and after formulas were added", () => {
    const after = openXlsx(book).patch(formulas);
    const kinds = ["xl/charts/chart1.xml", "xl/drawings/drawing1.xml", "xl/media/image1.png", "xl/comments1.xml", "xl/tables/table1.xml", "xl/styles.xml"];
    expect(Object.keys(unzipSync(book))).toEqual(expect.arrayContaining(kinds));
    expect(differing(book, after)).toEqual(["[Content_Types].xml", "xl/_rels/workbook.xml.rels", "xl/metadata.xml", SHEET, "xl/worksheets/sheet2.xml"]);
  });

  it("is read by the program that wrote it", async () => {
    const again = new Workbook();
    await again.xlsx.load(Buffer.from(openXlsx(book).patch(formulas)));
    const lots = again.getWorksheet("Lots");
    expect(lots?.getCell("C3").value).toBe(333.125);
    expect(lots?.getCell("C2").numFmt).toBe("#,##0.00");
    expect(lots?.getCell("B4").text).toBe("Client C & Co");
    expect(lots?.getCell("F2").value).toMatchObject({ formula: '_xldudf_LOT_COPPER(E2,"g")', result: 340.7 });
    expect(lots?.getCell("B6").dataValidation?.type).toBe("list");
    expect(again.definedNames.model).toMatchObject([{ name: "FirstGross", ranges: ["Lots!$C$2"] }]);
  });

  it("tells its sheets, names and texts", () => {
    const file = openXlsx(book);
    expect(file.sheets.map(({ name, state }) => [name, state])).toEqual([["Lots", "visible"], ["Prices", "visible"], ["Notes", "hidden"]]);
    expect(file.definedNames).toEqual([{ name: "FirstGross", formula: "=Lots!$C$2", sheet: null, hidden: false }]);
    expect([...file.cells("Lots")].find(({ address }) => address === "A8")?.value).toBe("  spaced\nand broken  ");
  });
});

outside("soffice", "a workbook and LibreOffice", (soffice) => {
  let book = new Uint8Array();
  let saved = new Uint8Array();
  beforeAll(async () => {
    book = new Uint8Array(await shopBook());
    saved = new Uint8Array(convertedTo(soffice, "book.xlsx", book, "xlsx"));
  });

  it("shows the changed cells, and the others as they were", () => {
    const before = shownBy(soffice, book);
    // LibreOffice computes every array formula again and does not know our functions, so one of its own spills here.
    const spill = [[{ value: 333.125 }, { value: 800 }], [{ value: 98.75 }, { value: 835 }]];
    const changes = formulas.map((change) => (change.spill ? { ...change, formula: "=C3:D4*1", value: 333.125, spill } : change));
    const after = shownBy(soffice, openXlsx(book).patch(changes));
    const lots = before.get("Lots") ?? [];
    expect(lots[2]).toEqual(["L-002", "Client B", "310.25", "800", "248.2"]);
    const expected = Array.from({ length: 13 }, (_, i) => Array.from({ length: 6 }, (_, k) => lots[i]?.[k] ?? ""));
    const shown = [
      [3, 3, "333.125"], [4, 2, "Client C & Co"], [9, 3, "TRUE"], [2, 6, "340.7"], [3, 5, "266.5"],
      [12, 1, "333.125"], [12, 2, "800"], [13, 1, "98.75"], [13, 2, "835"],
    ] as const;
    for (const [row, column, text] of shown) (expected[row - 1] ?? [])[column - 1] = text;
    expect(after.get("Lots")).toEqual(expected);
    expect(after.get("Prices")?.[4]?.[3]).toBe("new <text>");
  });

  it("still shows the chart, the picture and the comment after a patch", () => {
    const again = unzipSync(convertedTo(soffice, "book.xlsx", openXlsx(book).patch(formulas), "xlsx"));
    const parts = Object.keys(again);
    expect(parts).toEqual(expect.arrayContaining(["xl/charts/chart1.xml", "xl/comments1.xml"]));
    expect(parts.some((part) => part.startsWith("xl/media/"))).toBe(true);
    expect(decode(again["xl/charts/chart1.xml"])).toContain("Lots!$E$2:$E$4");
  });

  describe("as LibreOffice saves it", () => holdsItsOwn(() => saved));

  it("takes changes in a file that LibreOffice made of a list", () => {
    const list = "Lot,Gross\nL-001,12.5\n\"two\nlines\",7\n";
    const bytes = convertedTo(soffice, "list.csv", strToU8(list), "xlsx");
    const [sheet] = openXlsx(bytes).sheets;
    const after = openXlsx(bytes).patch([{ sheet: sheet?.name ?? "", cell: "B2", value: 99 }, { sheet: sheet?.name ?? "", cell: "C2", value: " kept\nspaces " }]);
    expect([...shownBy(soffice, after).values()]).toEqual([[["Lot", "Gross", ""], ["L-001", "99", " kept\nspaces "], ["two\nlines", "7", ""]]]);
  });

  it("expands shared formulas as LibreOffice does", () => {
    const shared = [
      'A2*$A$1+SUM(A$1:A2)&"A1"', "SUM($B2,B:B)+SUM($B:C)", "SUM(2:2)+SUM($3:4)", "'Old lots'!C5*Prices!$C5", "LOG10(A1)+ATAN2(A1,$B2)", 'IF(A1="it\'s ""A1""",A1,B$2)', "XFA1+A1000000", "SUM(Prices!A1:B2)",
    ];
    const rows = Array.from({ length: 9 }, (_, i) => {
      const cells = shared.map((formula, k) => {
        const address = `${String.fromCharCode(75 + k)}${i + 10}`;
        const text = formula.replaceAll("&", "&amp;");
        return `<c r="${address}"><f t="shared" si="${k}"${i === 0 ? ` ref="${address}:${address.replace("10", "18")}">${text}</f>` : "/>"}</c>`;
      });
      return `<row r="${i + 10}">${cells.join("")}</row>`;
    });
    const bytes = handmade({ sheets: { Lots: sheet(rows.join("")), Prices: sheet(""), "Old lots": sheet("") } });
    const formulasOf = (file: Uint8Array) => [...openXlsx(file).cells("Lots")].map(({ address, formula }) => [address, formula]);
    expect(formulasOf(bytes)).toHaveLength(72);
    expect(formulasOf(bytes)).toEqual(formulasOf(convertedTo(soffice, "shared.xlsx", bytes, "xlsx")));
  });
});
