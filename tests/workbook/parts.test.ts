import { describe, expect, it } from "vitest";
import { opened, MAIN, sheet, SHEET } from "./handmade";

const rowsOf = (xml: string | undefined): string => /<sheetData>(.*)<\/sheetData>/s.exec(xml ?? "")?.[1] ?? "";

describe("the parts as the embedded grid reads them", () => {
  it("name our functions as people do, each formula in its own cell", () => {
    const parts = opened({
      sheets: {
        Lots: sheet(
          '<row r="1"><c r="A1" s="1"><f>_xldudf_LOT_COPPER(B1,"_xldudf_LOT_X(")+_xlfn.CONCAT(1)+_xlfn.CONCAT(2)</f><v>1</v></c><c r="B1"><f t="shared" ref="B1:B2" si="0">_xldudf_LOT_X(A1)&amp;"&lt;"</f><v>1</v></c></row>' +
            '<row r="2"><c r="A2" cm="1"><f t="array" ref="A2:A3">_xldudf_LOT_X(C1)</f><v>1</v></c><c r="B2"><f t="shared" si="0"/><v>1</v></c></row><row r="3"><c r="A3"><v>2</v></c></row>',
        ),
      },
    }).parts();
    expect(rowsOf(parts[SHEET])).toBe(
      '<row r="1"><c r="A1" s="1"><f>LOT.COPPER(B1,"_xldudf_LOT_X(")+CONCAT(1)+CONCAT(2)</f><v>1</v></c><c r="B1"><f>LOT.X(A1)&amp;"&lt;"</f><v>1</v></c></row>' +
        '<row r="2"><c r="A2" cm="1"><f t="array" ref="A2:A3">LOT.X(C1)</f><v>1</v></c><c r="B2"><f>LOT.X(A2)&amp;"&lt;"</f><v>1</v></c></row><row r="3"><c r="A3"><v>2</v></c></row>',
    );
  });

  it("give texts that stand in their cell as values", () => {
    const parts = opened({ sheets: { Lots: sheet('<row r="1"><c r="A1" t="inlineStr" s="1"><is><r><t>Lot </t></r><r><t>&lt;7&gt;</t></r></is></c><c r="B1" t="inlineStr"><f>A1</f><is><t>7</t></is></c></row>') } }).parts();
    expect(rowsOf(parts[SHEET])).toBe('<row r="1"><c r="A1" t="str" s="1"><v>Lot &lt;7&gt;</v></c><c r="B1" t="str"><f>A1</f><v>7</v></c></row>');
  });

  it("drop the prefix of a spreadsheet's own words, and no other", () => {
    const parts = opened({ sheets: { Lots: `<x:worksheet xmlns:x="${MAIN}" xmlns:y="other"><x:sheetData><x:row r="1"><x:c r="A1"><x:f>_xldudf_LOT_X(1)</x:f></x:c></x:row></x:sheetData><y:x/></x:worksheet>` } }).parts();
    expect(parts[SHEET]).toBe(`<worksheet xmlns:x="${MAIN}" xmlns:y="other"><sheetData><row r="1"><c r="A1"><f>LOT.X(1)</f></c></row></sheetData><y:x/></worksheet>`);
  });

  it("tell where a part is from the folder of the one that points at it", () => {
    const links = opened({ links: [["theme", "/xl/theme/theme1.xml"], ["x", "/docs/a.xml"], ["y", "near.xml"]] }).parts()["xl/_rels/workbook.xml.rels"];
    expect([...(links ?? "").matchAll(/Target="([^"]*)"/g)].map(([, target]) => target)).toEqual(["worksheets/sheet1.xml", "theme/theme1.xml", "../docs/a.xml", "near.xml"]);
  });

  it("are those that a grid shows, a sheet unchanged where it has nothing of this", () => {
    const plain = sheet('<row r="1"><c r="A1"><f>SUM(B1)</f><v>1</v></c></row>');
    const parts = opened({ sheets: { Lots: plain }, parts: { "docProps/app.xml": "<Properties/>", "customXml/item1.xml": "<!DOCTYPE x><x/>", "xl/media/image1.png": "x" } }).parts();
    expect(Object.keys(parts).sort()).toEqual(["[Content_Types].xml", "_rels/.rels", "xl/_rels/workbook.xml.rels", "xl/workbook.xml", SHEET]);
    expect(parts[SHEET]).toBe(plain);
  });
});
