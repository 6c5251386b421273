import { type Handmade, handmade, MAIN, relationships, sheet } from "./handmade";

/** A cell of the contract's workbook: what it holds, and its number format where it has one. */
export interface BookCell {
  readonly value: number | string | boolean;
  readonly formula?: string;
  readonly format?: string;
}

/** One small shop's book that every port is tried on. C is hidden on Lots; Prices has the table Assumed in A1:B3, Stock the tables Bars in A1:C3 and Spare in F1:G2; Locked is protected; GrossWeights names Lots!B2:B3, SilverPrice Prices!B2. */
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
  Stock: {
    A1: { value: "Bar" },
    B1: { value: "Gross, g" },
    C1: { value: "Fine, g" },
    F1: { value: "Spare" },
    G1: { value: "Pieces" },
    A2: { value: "S-1" },
    B2: { value: 1000 },
    C2: { value: 999, formula: "=B2*0.999" },
    F2: { value: "stubs" },
    G2: { value: 3 },
    A3: { value: "S-2" },
    B3: { value: 500 },
    C3: { value: 499.5, formula: "=B3*0.999" },
    A6: { value: "Counted in May" },
  },
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

const tablePart = (n: number): string => `<tablePart xmlns:r="http://schemas.openxmlformats.org/officeDocument/2006/relationships" r:id="rId${n}"/>`;

const table = (id: number, name: string, ref: string, filter: string, columns: string, more = ""): string =>
  `<table xmlns="${MAIN}" id="${id}" name="${name}" displayName="${name}" ref="${ref}"${more}><autoFilter ref="${filter}"/><tableColumns count="${columns.match(/<tableColumn /g)?.length ?? 0}">${columns}</tableColumns></table>`;

const WHOLE: Handmade = {
  sheets: {
    Lots: after(sheet(rows(BOOK.Lots ?? {}), '<cols><col min="3" max="3" width="9" hidden="1" customWidth="1"/></cols>'), '<mergeCells count="1"><mergeCell ref="A9:C9"/></mergeCells>'),
    Prices: after(sheet(rows(BOOK.Prices ?? {})), `<tableParts count="1">${tablePart(1)}</tableParts>`),
    Locked: after(sheet(rows(BOOK.Locked ?? {})), '<sheetProtection sheet="1"/>'),
    Stock: after(sheet(rows(BOOK.Stock ?? {})), `<mergeCells count="1"><mergeCell ref="A6:C6"/></mergeCells><tableParts count="2">${tablePart(1)}${tablePart(2)}</tableParts>`),
  },
  workbookTail: "<definedNames><definedName name=\"GrossWeights\">Lots!$B$2:$B$3</definedName><definedName name=\"SilverPrice\">Prices!$B$2</definedName></definedNames>",
  links: [["styles", "styles.xml"]],
  parts: {
    "xl/styles.xml": STYLES,
    "xl/worksheets/_rels/sheet2.xml.rels": relationships([["table", "../tables/table1.xml"]]),
    "xl/worksheets/_rels/sheet4.xml.rels": relationships([["table", "../tables/table2.xml"], ["table", "../tables/table3.xml"]]),
    "xl/tables/table1.xml": table(1, "Assumed", "A1:B3", "A1:B2", '<tableColumn id="1" name="Metal"/><tableColumn id="2" name="Price"/>', ' totalsRowCount="1"'),
    "xl/tables/table2.xml": table(2, "Bars", "A1:C3", "A1:C3", '<tableColumn id="1" name="Bar"/><tableColumn id="4" name="Gross, g"/><tableColumn id="3" name="Fine, g"><calculatedColumnFormula>B2*0.999</calculatedColumnFormula></tableColumn>'),
    "xl/tables/table3.xml": table(3, "Spare", "F1:G2", "F1:G2", '<tableColumn id="1" name="Spare"/><tableColumn id="2" name="Pieces"/>'),
  },
  contentTypes:
    '<Override PartName="/xl/styles.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.styles+xml"/>' +
    [1, 2, 3].map((n) => `<Override PartName="/xl/tables/table${n}.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.table+xml"/>`).join(""),
};

export const contractBook = (): Uint8Array => handmade(WHOLE);
