import { unzipSync } from "fflate";
import { describe, expect, it } from "vitest";
import { openXlsx } from "../../src/workbook/file";
import { withDynamicArrays } from "../../src/workbook/xlsx/dynamic-arrays";
import { type Handmade, handmade, MAIN, relationships, sheet, SHEET, STRICT, textOf } from "./handmade";

const TYPES = "[Content_Types].xml";
const LINKS = "xl/_rels/workbook.xml.rels";
const rows = '<row r="1"><c r="A1"><f>B1</f><v>1</v></c><c r="B1"><v>1</v></c></row>';
const chained: Handmade = {
  sheets: { Lots: sheet(rows) },
  links: [["calcChain", "calcChain.xml"]],
  parts: { "xl/calcChain.xml": `<calcChain xmlns="${MAIN}"><c r="A1" i="1"/></calcChain>` },
  contentTypes: '<Override PartName="/xl/calcChain.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.calcChain+xml"/>',
};

/** The parts that differ between two files, and those that only one of them has. */
function differing(before: Uint8Array, after: Uint8Array): string[] {
  const [a, b] = [unzipSync(before), unzipSync(after)];
  return [...new Set([...Object.keys(a), ...Object.keys(b)])].filter((part) => String(a[part]) !== String(b[part])).sort();
}

describe("the chain of calculations", () => {
  const before = handmade(chained);

  it("stays while the same cells have formulas", () => {
    const after = openXlsx(before).patch([
      { sheet: "Lots", cell: "A1", formula: "=B1*2", value: 2 },
      { sheet: "Lots", cell: "B1", value: 5 },
    ]);
    expect(differing(before, after)).toEqual([SHEET]);
  });

  it.each([
    ["gains", { sheet: "Lots", cell: "C1", formula: "=B1", value: 1 }],
    ["gains in place of a value", { sheet: "Lots", cell: "B1", formula: "=1", value: 1 }],
    ["loses", { sheet: "Lots", cell: "A1", formula: null, value: 1 }],
  ])("goes, with everything that points at it, when the sheet %s a formula", (_, change) => {
    const after = openXlsx(before).patch([change]);
    expect(differing(before, after)).toEqual([TYPES, LINKS, "xl/calcChain.xml", SHEET]);
    expect(textOf(after, TYPES)).not.toContain("calcChain");
    expect(textOf(after, LINKS)).toBe(textOf(before, LINKS).replace(/<Relationship Id="rId2"[^>]*\/>/, ""));
  });

  it("never asks for a calculation on opening, and leaves the settings for it alone", () => {
    const settled = handmade({ ...chained, workbookTail: '<calcPr calcId="191029" calcMode="manual"/>' });
    const after = openXlsx(settled).patch([{ sheet: "Lots", cell: "C1", formula: "=B1", value: 1 }]);
    expect(textOf(after, "xl/workbook.xml")).toBe(textOf(settled, "xl/workbook.xml"));
  });
});

describe("the part that marks dynamic arrays", () => {
  const spill = { sheet: "Lots", cell: "C1", formula: "=LOT.X(1)", value: 1, spill: [[{ value: 1 }, { value: 2 }]] };

  it("is added once, with its content type and its link, and used again", () => {
    const before = handmade({ sheets: { Lots: sheet(rows) } });
    const after = openXlsx(before).patch([spill]);
    expect(differing(before, after)).toEqual([TYPES, LINKS, "xl/metadata.xml", SHEET]);
    expect(textOf(after, TYPES)).toContain('<Override PartName="/xl/metadata.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.sheetMetadata+xml"/></Types>');
    expect(textOf(after, LINKS)).toContain('<Relationship Id="rId2" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/sheetMetadata" Target="/xl/metadata.xml"/></Relationships>');
    const again = openXlsx(after).patch([{ ...spill, cell: "C2" }]);
    expect(differing(after, again)).toEqual([SHEET]);
    expect(textOf(again, SHEET).match(/cm="1"/g)).toHaveLength(2);
  });

  it("is linked under a name that no other link has", () => {
    const taken = relationships([["worksheet", "worksheets/sheet1.xml"]]).replace("rId1", "rId2");
    const workbook = textOf(handmade(), "xl/workbook.xml").replace("rId1", "rId2");
    const after = openXlsx(handmade({ parts: { [LINKS]: taken, "xl/workbook.xml": workbook } })).patch([spill]);
    expect([...textOf(after, LINKS).matchAll(/ Id="([^"]*)"/g)].map(([, id]) => id)).toEqual(["rId2", "rId3"]);
  });

  it("is written in the words of a strict file", () => {
    const strict = (xml: string) => xml.replace(MAIN, STRICT);
    const base = handmade({ sheets: { Lots: strict(sheet("")) } });
    const before = handmade({ sheets: { Lots: strict(sheet("")) }, parts: { "xl/workbook.xml": strict(textOf(base, "xl/workbook.xml")) } });
    const after = openXlsx(before).patch([spill]);
    expect(textOf(after, "xl/metadata.xml")).toContain(`<metadata xmlns="${STRICT}">`);
    expect(textOf(after, LINKS)).toContain("http://purl.oclc.org/ooxml/officeDocument/relationships/sheetMetadata");
  });

  const fresh = withDynamicArrays(`<metadata xmlns="${MAIN}"></metadata>`).xml;

  it("holds one type, one property and one mark that lead to each other", () => {
    expect(fresh.replace(/ xmlns[^ >]*| (?:min|copy|paste|merge|split|row|clear|assign|coerce)[^ /]*/g, "")).toBe(
      '<metadata><metadataTypes count="1"><metadataType name="XLDAPR" cellMeta="1"/></metadataTypes>' +
        '<futureMetadata name="XLDAPR" count="1"><bk><extLst><ext uri="{bdbb8cdc-fa1e-496e-a857-3c3f30c029c3}"><xda:dynamicArrayProperties fDynamic="1" fCollapsed="0"/></ext></extLst></bk></futureMetadata>' +
        '<cellMetadata count="1"><bk><rc t="1" v="0"/></bk></cellMetadata></metadata>',
    );
  });

  it("is found where it is and not added twice", () => {
    expect(withDynamicArrays(fresh)).toEqual({ index: "1", xml: fresh });
    const second = fresh.replace('<cellMetadata count="1">', '<cellMetadata count="2"><bk><rc t="1" v="1"/></bk>');
    expect(withDynamicArrays(second)).toEqual({ index: "2", xml: second });
  });

  it("is put beside what else the part holds", () => {
    const rich =
      `<metadata xmlns="${MAIN}" xmlns:r="r"><metadataTypes count="1"><metadataType name="XLRICHVALUE"/></metadataTypes>` +
      '<futureMetadata name="XLRICHVALUE" count="1"><bk><extLst/></bk></futureMetadata><valueMetadata count="1"><bk><rc t="1" v="0"/></bk></valueMetadata></metadata>';
    const { index, xml } = withDynamicArrays(rich);
    expect(index).toBe("1");
    expect(xml).toContain('<metadataTypes count="2"><metadataType name="XLRICHVALUE"/><metadataType name="XLDAPR"');
    expect(xml).toMatch(/<futureMetadata name="XLRICHVALUE" count="1">.*<\/futureMetadata><futureMetadata name="XLDAPR" count="1">.*<cellMetadata count="1"><bk><rc t="2" v="0"\/><\/bk><\/cellMetadata><valueMetadata/);
    expect(withDynamicArrays(xml)).toEqual({ index, xml });
  });
});

describe("a table", () => {
  const file = openXlsx(
    handmade({
      sheets: { Lots: sheet('<row r="1"><c r="A1" t="inlineStr"><is><t>Lot</t></is></c></row>') },
      parts: {
        "xl/worksheets/_rels/sheet1.xml.rels":
          '<Relationships><Relationship Id="rId1" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/table" Target="../tables/table1.xml"/></Relationships>',
        "xl/tables/table1.xml": `<table xmlns="${MAIN}" displayName="Weighed" ref="A1:B3"/>`,
      },
    }),
  );

  it("keeps its headings, whose names another part repeats", () => {
    expect(() => file.patch([{ sheet: "Lots", cell: "B1", value: "Weight" }])).toThrow("Cannot change Lots!B1: it is a heading of the table Weighed: rename it in Excel");
  });

  it("takes values below them", () => {
    expect(textOf(file.patch([{ sheet: "Lots", cell: "B2", value: 500 }]), SHEET)).toContain('<c r="B2"><v>500</v></c>');
  });
});

describe("a patch that is refused", () => {
  it("leaves the file as it was, and the next one works", () => {
    const bytes = handmade(chained);
    const file = openXlsx(bytes);
    expect(() => file.patch([{ sheet: "Lots", cell: "A1", value: 9 }, { sheet: "Prices", cell: "A1", value: 1 }])).toThrow("Cannot find the sheet Prices: the workbook has Lots");
    expect([...file.cells("Lots")].map(({ value }) => value)).toEqual([1, 1]);
    expect(differing(bytes, file.patch([]))).toEqual([]);
  });
});
