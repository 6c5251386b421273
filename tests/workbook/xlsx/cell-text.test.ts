import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { lots, rowsOf } from "../handmade";
import { openXlsx } from "../../../src/workbook/file";
import { decodeCellText, encodeCellText } from "../../../src/workbook/xlsx/cell-text";
import { decodeEntities } from "../../../src/workbook/xlsx/xml-text";

const tricky = fc.string({
  unit: fc.oneof(fc.constantFrom("_", "x", "0", "4", "1", "D", "_x0041_", "_x005F_", "&", "<", ">", '"', "'", "]]>", "&amp;", "\n", "\r", "\t", " ", "é", "銀", "😀"), fc.string({ unit: "binary", maxLength: 1 })),
});
const writable = (text: string): string => text.replace(/[\u0000-\u0008\u000B\u000C\u000E-\u001F\uFFFE\uFFFF]/g, "");

describe("the text of a cell", () => {
  it("comes back from XML as it was, whatever it is", () => {
    fc.assert(
      fc.property(tricky, (text) => {
        expect(decodeCellText(decodeEntities(encodeCellText(text)))).toBe(writable(text));
      }),
      { numRuns: 500 },
    );
  });

  it("comes back from a file as it was, as a plain text and as a formula's result", () => {
    fc.assert(
      fc.property(tricky, (text) => {
        const bytes = lots("").patch([
          { sheet: "Lots", cell: "A1", value: text },
          { sheet: "Lots", cell: "B1", formula: "=A1", value: text },
        ]);
        const values = new Map([...openXlsx(bytes).cells("Lots")].map(({ address, value }) => [address, value]));
        expect(values.get("A1") ?? "").toBe(writable(text));
        expect(values.get("B1")).toBe(writable(text));
      }),
    );
  });

  it("keeps its spaces and line breaks", () => {
    expect(rowsOf(lots("").patch([{ sheet: "Lots", cell: "A1", value: " two\nlines " }]))).toBe(
      '<row r="1"><c r="A1" t="inlineStr"><is><t xml:space="preserve"> two\nlines </t></is></c></row>',
    );
  });

  it("loses only characters that XML cannot hold", () => {
    expect(encodeCellText("a\u0000b\u0007c\uD800d\uFFFFe")).toBe("abcde");
  });
});
