import { type Handmade, handmade, MAIN, relationships, sheet } from "./handmade";

/** A cell of the contract's workbook: what it holds, and its number format where it has one. */
export interface BookCell {
  readonly value: number | string | boolean;
  readonly formula?: string;
  readonly format?: string;
}

/** One small shop's book that every port is tried on. C is hidden on Lots; Prices has the table Assumed in A1:B3; Locked is protected; GrossWeights names Lots!B2:B3. */
export const BOOK: Readonly<Record<string, Readonly<Record<string, BookCell>>>> = {
  Lots: {
    A1: { value: "Lot" },
    B1: { value: "Gross, g" },
    C1: { value: "Fineness" },
    D1: { value: "Fine, g" },
    A2: { value: "L-001" },
    B2: { value: 1250.5, format: "#,##0.00" },
    C2: { value: 925 },
    D2: { value: 1156.7125, formula: "=B2*C2/1000", format: "0.000" },
    A3: { value: "L-002" },
    B3: { value: 310, format: "#,##0.00" },
    C3: { value: 800 },
    D3: { value: 248, formula: "=B3*C3/1000", format: "0.000" },
    A9: { value: "Weighed by the shop" },
  },
  Prices: { A1: { value: "Metal" }, B1: { value: "Price" }, A2: { value: "Silver" }, B2: { value: 24 }, A3: { value: "Total" } },
  Locked: { A1: { value: 1 } },
};

export const FORMATS = ["#,##0.00", "0.000"];

function rows(cells: Readonly<Record<string, BookCell>>): string {
  const byRow = new Map<number, string[]>();
  for (const [address, { value, formula, format }] of Object.entries(cells)) {
    const row = Number(address.replace(/\D+/, ""));
    const style = format === undefined ? "" : ` s="${FORMATS.indexOf(format) + 1}"`;
    const text = typeof value === "string" ? `<c r="${address}"${style} t="inlineStr"><is><t>${value}</t></is></c>` : `<c r="${address}"${style}>${formula ? `<f>${formula.slice(1)}</f>` : ""}<v>${Number(value)}</v></c>`;
    byRow.set(row, [...(byRow.get(row) ?? []), text]);
  }
  return [...byRow].map(([row, cells]) => `<row r="${row}">${cells.join("")}</row>`).join("");
}

const STYLES =
  `<styleSheet xmlns="${MAIN}"><numFmts count="1"><numFmt numFmtId="164" formatCode="0.000"/></numFmts>` +
  '<fonts count="2"><font><sz val="11"/><color theme="1"/><name val="Calibri"/></font><font><b/><sz val="11"/><name val="Calibri"/></font></fonts>' +
  '<fills count="3"><fill><patternFill patternType="none"/></fill><fill><patternFill patternType="gray125"/></fill><fill><patternFill patternType="solid"><fgColor rgb="FFEEDDCC"/></patternFill></fill></fills>' +
  '<borders count="1"><border><left/><right/><top/><bottom/><diagonal/></border></borders><cellStyleXfs count="1"><xf numFmtId="0" fontId="0" fillId="0" borderId="0"/></cellStyleXfs>' +
  '<cellXfs count="3"><xf numFmtId="0" fontId="0" fillId="0" borderId="0" xfId="0"/><xf numFmtId="4" fontId="0" fillId="2" borderId="0" xfId="0" applyNumberFormat="1" applyFill="1"/><xf numFmtId="164" fontId="1" fillId="0" borderId="0" xfId="0" applyNumberFormat="1" applyFont="1"/></cellXfs>' +
  '<cellStyles count="1"><cellStyle name="Normal" xfId="0" builtinId="0"/></cellStyles></styleSheet>';

const after = (xml: string, tail: string): string => xml.replace("</worksheet>", `${tail}</worksheet>`);

const WHOLE: Handmade = {
  sheets: {
    Lots: after(sheet(rows(BOOK.Lots ?? {}), '<cols><col min="3" max="3" width="9" hidden="1" customWidth="1"/></cols>'), '<mergeCells count="1"><mergeCell ref="A9:C9"/></mergeCells>'),
    Prices: after(sheet(rows(BOOK.Prices ?? {})), `<tableParts count="1"><tablePart xmlns:r="http://schemas.openxmlformats.org/officeDocument/2006/relationships" r:id="rId1"/></tableParts>`),
    Locked: after(sheet(rows(BOOK.Locked ?? {})), '<sheetProtection sheet="1"/>'),
  },
  workbookTail: "<definedNames><definedName name=\"GrossWeights\">Lots!$B$2:$B$3</definedName></definedNames>",
  links: [["styles", "styles.xml"]],
  parts: {
    "xl/styles.xml": STYLES,
    "xl/worksheets/_rels/sheet2.xml.rels": relationships([["table", "../tables/table1.xml"]]),
    "xl/tables/table1.xml": `<table xmlns="${MAIN}" id="1" name="Assumed" displayName="Assumed" ref="A1:B3" totalsRowCount="1"><autoFilter ref="A1:B2"/><tableColumns count="2"><tableColumn id="1" name="Metal"/><tableColumn id="2" name="Price"/></tableColumns></table>`,
  },
  contentTypes:
    '<Override PartName="/xl/styles.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.styles+xml"/>' +
    '<Override PartName="/xl/tables/table1.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.table+xml"/>',
};

export const contractBook = (): Uint8Array => handmade(WHOLE);
