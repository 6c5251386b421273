import { encodeCellText } from "../../src/workbook/xlsx/cell-text";
import { emptyMetadata, METADATA_TYPE, withDynamicArrays } from "../../src/workbook/xlsx/dynamic-arrays";
import { SPREADSHEET } from "../../src/workbook/xlsx/xml-part";
import { encodeAttribute, encodeText } from "../../src/workbook/xlsx/xml-text";
import type { Book } from "./book";
import { chartPart, drawingPart } from "./chart-part";
import { computedBook } from "./computed-book";
import { Listed } from "./listed";
import { Parts } from "./parts";
import { type Link, RELATIONSHIPS } from "./relationships";
import { quoted, sheetPart } from "./sheet-part";
import { Styles } from "./styles-part";

const OFFICE = "application/vnd.openxmlformats-officedocument";
/** The calculation engine of Excel since 2019: an older one named here, or none, would make Excel compute everything on opening. */
const CALCULATION_ENGINE = 191029;

/** Writes a book as an .xlsx file: the same bytes for the same source, wherever and whenever it runs. */
export function bookFile(book: Book): Uint8Array {
  const parts = new Parts();
  const styles = new Styles();
  const strings = new Listed<string>([]);
  const metadata = withDynamicArrays(emptyMetadata(SPREADSHEET));

  const sheets = [...computedBook(book)].map(([sheet, cells], i): Link => {
    const n = i + 1;
    const xml = sheetPart(sheet, cells, { styles, strings, spillMark: metadata.index, isFront: i === 0 });
    parts.add(`xl/worksheets/sheet${n}.xml`, `${OFFICE}.spreadsheetml.worksheet+xml`, xml, sheet.chart ? [{ type: "drawing", target: `../drawings/drawing${n}.xml` }] : []);
    if (sheet.chart) {
      parts.add(`xl/drawings/drawing${n}.xml`, `${OFFICE}.drawing+xml`, drawingPart(sheet.chart), [{ type: "chart", target: `../charts/chart${n}.xml` }]);
      parts.add(`xl/charts/chart${n}.xml`, `${OFFICE}.drawingml.chart+xml`, chartPart(sheet.chart, sheet, cells));
    }
    return { type: "worksheet", target: `worksheets/sheet${n}.xml` };
  });

  parts.add("xl/workbook.xml", `${OFFICE}.spreadsheetml.sheet.main+xml`, workbookPart(book), [
    ...sheets,
    { type: "styles", target: "styles.xml" },
    { type: "sharedStrings", target: "sharedStrings.xml" },
    { type: "sheetMetadata", target: "metadata.xml" },
  ]);
  // After the sheets, whose cells fill the lists of looks and texts.
  parts.add("xl/styles.xml", `${OFFICE}.spreadsheetml.styles+xml`, styles.xml());
  parts.add("xl/sharedStrings.xml", `${OFFICE}.spreadsheetml.sharedStrings+xml`, sharedStringsPart(strings.all));
  parts.add("xl/metadata.xml", METADATA_TYPE, metadata.xml);
  parts.add("docProps/core.xml", "application/vnd.openxmlformats-package.core-properties+xml", corePart(book));
  parts.add("docProps/app.xml", `${OFFICE}.extended-properties+xml`, APP);
  return parts.zipped(
    [
      { type: "officeDocument", target: "xl/workbook.xml" },
      { type: "http://schemas.openxmlformats.org/package/2006/relationships/metadata/core-properties", target: "docProps/core.xml" },
      { type: "extended-properties", target: "docProps/app.xml" },
    ],
    book.date,
  );
}

function workbookPart(book: Book): string {
  const sheets = book.sheets.map(({ name }, i) => `<sheet name="${encodeAttribute(name)}" sheetId="${i + 1}" r:id="rId${i + 1}"/>`);
  const titles = book.sheets.flatMap(({ name, headingRow }, i) =>
    headingRow ? [`<definedName name="_xlnm.Print_Titles" localSheetId="${i}">${quoted(name)}!$${headingRow}:$${headingRow}</definedName>`] : [],
  );
  const names = Object.entries(book.names)
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([name, range]) => `<definedName name="${name}">${encodeText(range)}</definedName>`);
  return [
    `<workbook xmlns="${SPREADSHEET}" xmlns:r="${RELATIONSHIPS}"><workbookPr/>`,
    '<bookViews><workbookView xWindow="0" yWindow="0" windowWidth="24000" windowHeight="14000" activeTab="0"/></bookViews>',
    `<sheets>${sheets.join("")}</sheets><definedNames>${[...titles, ...names].join("")}</definedNames><calcPr calcId="${CALCULATION_ENGINE}"/></workbook>`,
  ].join("");
}

const sharedStringsPart = (strings: readonly string[]): string =>
  `<sst xmlns="${SPREADSHEET}">${strings.map((text) => `<si><t xml:space="preserve">${encodeCellText(text)}</t></si>`).join("")}</sst>`;

const APP = '<Properties xmlns="http://schemas.openxmlformats.org/officeDocument/2006/extended-properties"><Application>Lotwright</Application></Properties>';

function corePart({ title, subject, creator, date }: Book): string {
  const day = (name: string): string => `<dcterms:${name} xsi:type="dcterms:W3CDTF">${date}T12:00:00Z</dcterms:${name}>`;
  return [
    '<cp:coreProperties xmlns:cp="http://schemas.openxmlformats.org/package/2006/metadata/core-properties" xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:dcterms="http://purl.org/dc/terms/" xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance">',
    `<dc:title>${encodeText(title)}</dc:title><dc:subject>${encodeText(subject)}</dc:subject><dc:creator>${encodeText(creator)}</dc:creator>${day("created")}${day("modified")}</cp:coreProperties>`,
  ].join("");
}
