import { describe, expect, it } from "vitest";
import type { Cell, XlsxFile } from "../../../src/workbook/file";
import { lots, opened, sheet, STRICT } from "../handmade";

const cellsOf = (file: XlsxFile, name = "Lots"): Cell[] => [...file.cells(name)];
const values = (file: XlsxFile): Record<string, unknown> => Object.fromEntries(cellsOf(file).map(({ address, value }) => [address, value]));
const formulas = (file: XlsxFile): Record<string, unknown> => Object.fromEntries(cellsOf(file).map(({ address, formula }) => [address, formula]));

describe("the cells of a sheet", () => {
  it("have numbers, texts, truth values and errors", () => {
    const file = opened({
      sheets: {
        Lots: sheet(
          '<row r="1"><c r="A1"><v>1.5</v></c><c r="B1" t="s"><v>1</v></c><c r="C1" t="str"><f>B1</f><v>a &amp; b</v></c><c r="D1" t="b"><v>1</v></c>' +
            '<c r="E1" t="e"><v>#N/A</v></c><c r="F1" t="inlineStr"><is><r><t>in</t></r><r><t xml:space="preserve"> line</t></r></is></c><c r="G1" s="3"/><c r="H1"><v>1E-3</v></c></row>',
        ),
      },
      links: [["sharedStrings", "sharedStrings.xml"]],
      parts: {
        "xl/sharedStrings.xml":
          '<sst xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><si><t>first</t></si><si><r><t>sec</t></r><r><t>ond</t></r><rPh sb="0" eb="1"><t>reading</t></rPh></si><si/></sst>',
      },
    });
    expect(values(file)).toEqual({ A1: 1.5, B1: "second", C1: "a & b", D1: true, E1: "#N/A", F1: "in line", H1: 0.001 });
    expect(cellsOf(file).filter(({ error }) => error).map(({ address }) => address)).toEqual(["E1"]);
  });

  it("keep a date as its number, also when a strict file writes it out", () => {
    const rows = '<row r="1"><c r="A1" s="2"><v>45356</v></c><c r="B1" t="d"><v>2024-03-05</v></c><c r="C1" t="d"><v>2024-03-05T12:00:00</v></c></row>';
    expect(values(lots(rows))).toEqual({ A1: 45356, B1: 45356, C1: 45356.5 });
    const mac = opened({ sheets: { Lots: sheet(rows) }, workbookHead: '<workbookPr date1904="1"/>' });
    expect(values(mac)).toEqual({ A1: 45356, B1: 43894, C1: 43894.5 });
    expect(cellsOf(lots(rows)).map(({ style }) => style)).toEqual([2, 0, 0]);
  });

  it("read formulas as people write them", () => {
    const file = lots(
      '<row r="1"><c r="A1"><f>_xldudf_LOT_COPPER(B1,"lb")</f><v>3</v></c><c r="C1"><f>IF(B1&lt;2,"a",&quot;b&quot;)</f><v>0</v></c><c r="D1"><f><![CDATA[1<2]]></f><v>1</v></c></row>',
    );
    expect(formulas(file)).toEqual({ A1: '=LOT.COPPER(B1,"lb")', C1: '=IF(B1<2,"a","b")', D1: "=1<2" });
  });

  it("expand shared formulas, also where one stands before its master", () => {
    const file = lots(
      '<row r="1"><c r="B1"><f t="shared" si="4"/><v>0</v></c></row>' +
        '<row r="2"><c r="B2"><f t="shared" ref="B1:C3" si="4">A2*$A$1&amp;"B2"</f><v>0</v></c><c r="C2"><f t="shared" si="4"/><v>0</v></c></row>' +
        '<row r="3"><c r="B3"><f t="shared" si="4"/><v>0</v></c></row>',
    );
    expect(formulas(file)).toEqual({ B1: '=A1*$A$1&"B2"', B2: '=A2*$A$1&"B2"', C2: '=B2*$A$1&"B2"', B3: '=A3*$A$1&"B2"' });
  });

  it("say what an array formula fills", () => {
    const file = lots('<row r="1"><c r="A1" cm="1"><f t="array" ref="A1:A2">B1:B2</f><v>1</v></c><c r="C1"><f t="array">SUM(1)</f><v>1</v></c></row><row r="2"><c r="A2"><v>2</v></c></row>');
    expect(cellsOf(file).map(({ address, fills, formula }) => [address, fills, formula])).toEqual([
      ["A1", "A1:A2", "=B1:B2"],
      ["C1", "C1", "=SUM(1)"],
      ["A2", null, null],
    ]);
  });

  it("stand where their order puts them when they have no address", () => {
    expect(values(lots("<row><c><v>1</v></c><c><v>2</v></c></row><row r='4'><c r='C4'><v>3</v></c><c><v>4</v></c></row>"))).toEqual({ A1: 1, B1: 2, C4: 3, D4: 4 });
  });

  it("reach the last cell of a sheet", () => {
    expect(values(lots('<row r="1048576"><c r="XFD1048576"><v>7</v></c></row>'))).toEqual({ XFD1048576: 7 });
  });

  it("are read behind a prefix and in the strict edition", () => {
    const prefixed = (namespace: string) =>
      `<x:worksheet xmlns:x="${namespace}"><x:sheetData><x:row r="1"><x:c r="A1" t="inlineStr"><x:is><x:t>in</x:t></x:is></x:c><x:c r="B1"><x:f>A1</x:f><x:v>2</x:v></x:c></x:row></x:sheetData></x:worksheet>`;
    for (const namespace of [STRICT, "http://schemas.openxmlformats.org/spreadsheetml/2006/main"])
      expect(values(opened({ sheets: { Lots: prefixed(namespace) } }))).toEqual({ A1: "in", B1: 2 });
  });

  it("are not taken from comments, nor from what follows the rows", () => {
    const xml = sheet('<!-- <row r="1"><c r="A1"><v>9</v></c></row> --><row r="2"><c r="A2"><v>1</v><extLst><v>5</v></extLst></c></row>').replace(
      "</sheetData>",
      '</sheetData><extLst><row r="9"><c r="A9"><v>9</v></c></row></extLst>',
    );
    expect(values(opened({ sheets: { Lots: xml } }))).toEqual({ A2: 1 });
  });

  it.each([
    ['<row r="2"/><row r="1"/>', "the rows of a sheet are out of order"],
    ['<row r="1"><c r="B1"/><c r="A1"/></row>', "the cells of a sheet are out of order"],
    ['<row r="1"><c r="A1"/><c r="A1"/></row>', "the cells of a sheet are out of order"],
    ['<row r="1"><c r="A2"/></row>', "its cell A2 stands in row 1"],
    ['<row r="1048577"/>', "the rows of a sheet are out of order"],
    ['<row r="1"><c r="XFE1"/></row>', "its cell XFE1 stands in row 1"],
    ['<row r="1"><c r="A1" t="s"><v>7</v></c></row>', "a cell holds text 7, which cannot be read"],
    ['<row r="1"><c r="A1"><v>1,5</v></c></row>', 'a cell holds the number "1,5", which cannot be read'],
    ['<row r="1"><c r="A1"><f t="shared" si="0"/><v>1</v></c></row>', "the formula that A1 shares is missing"],
  ])("say what is damaged in %s", (rows, what) => {
    expect(() => cellsOf(lots(rows))).toThrow(what);
  });

  it("say that the sheet breaks off, wherever it does", () => {
    const whole = sheet('<row r="1"><c r="A1" t="str"><f>B1</f><v>a</v></c></row>');
    for (let length = whole.indexOf("<sheetData>"); length < whole.indexOf("</sheetData>"); length++)
      expect(() => cellsOf(opened({ sheets: { Lots: whole.slice(0, length) } }))).toThrow("it is damaged");
  });
});

describe("a workbook", () => {
  it("lists its sheets and their state", () => {
    const file = opened({ sheets: { "A &amp; B": sheet(""), Second: sheet("") }, parts: {} });
    expect(file.sheets.map(({ name, state, kind }) => [name, state, kind])).toEqual([
      ["A & B", "visible", "worksheet"],
      ["Second", "visible", "worksheet"],
    ]);
  });

  it("finds a sheet whatever its capitals, and names the sheets there are", () => {
    const file = lots('<row r="1"><c r="A1"><v>1</v></c></row>');
    expect(cellsOf(file, "LOTS")).toHaveLength(1);
    expect(() => cellsOf(file, "Lot")).toThrow("Cannot find the sheet Lot: the workbook has Lots");
  });

  it("tells its defined names, with the sheet they belong to", () => {
    const file = opened({
      workbookTail: '<definedNames><definedName name="Silver">Lots!$B$2</definedName><definedName name="Copper" localSheetId="0" hidden="1">_xldudf_LOT_COPPER(1,"lb")</definedName></definedNames>',
    });
    expect(file.definedNames).toEqual([
      { name: "Silver", formula: "=Lots!$B$2", sheet: null, hidden: false },
      { name: "Copper", formula: '=LOT.COPPER(1,"lb")', sheet: "Lots", hidden: true },
    ]);
  });

  it("has no cells on a chart sheet and says so when one is to be changed", () => {
    const file = opened({
      sheets: {},
      links: [["chartsheet", "chartsheets/sheet1.xml"]],
      parts: {
        "xl/chartsheets/sheet1.xml": '<chartsheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"/>',
        "xl/workbook.xml":
          '<workbook xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" xmlns:rel="http://schemas.openxmlformats.org/officeDocument/2006/relationships"><sheets><sheet name="Chart1" sheetId="1" state="veryHidden" rel:id="rId1"/></sheets></workbook>',
      },
    });
    expect(file.sheets[0]).toMatchObject({ kind: "chart sheet", state: "veryHidden" });
    expect(cellsOf(file, "Chart1")).toEqual([]);
    expect(() => file.patch([{ sheet: "Chart1", cell: "A1", value: 1 }])).toThrow("Cannot change Chart1!A1: Chart1 is a chart sheet and has no cells");
  });

  it("opens with two hundred sheets", () => {
    const sheets = Object.fromEntries(Array.from({ length: 200 }, (_, i) => [`Month ${i}`, sheet(`<row r="1"><c r="A1"><v>${i}</v></c></row>`)]));
    const file = opened({ sheets });
    expect(file.sheets.flatMap(({ name }) => cellsOf(file, name).map(({ value }) => value))).toEqual(Array.from({ length: 200 }, (_, i) => i));
  });

  it("finds its parts by relationships, wherever they lie", () => {
    const file = opened({
      sheets: {},
      links: [["worksheet", "/odd/place%20one.xml"]],
      parts: {
        "odd/place one.xml": sheet('<row r="1"><c r="A1"><v>4</v></c></row>'),
        "xl/workbook.xml":
          '<workbook xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" xmlns:r="r"><sheets><sheet name="Lots" sheetId="1" r:id="rId1"/></sheets></workbook>',
      },
    });
    expect(values(file)).toEqual({ A1: 4 });
  });
});
