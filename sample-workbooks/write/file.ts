import { zipSync } from "fflate";
import { encodeCellText } from "../../src/workbook/xlsx/cell-text";
import { emptyMetadata, METADATA_TYPE, withDynamicArrays } from "../../src/workbook/xlsx/dynamic-arrays";
import { encodeAttribute, encodeText, encodeXml, SPREADSHEET } from "../../src/workbook/xlsx/xml";
import type { Book } from "./book";
import { chartPart, drawingPart } from "./chart-part";
import { computedBook } from "./computed-book";
import { RELATIONSHIPS, relationshipsXml } from "./relationships";
import { Listed } from "./listed";
import { quoted, sheetPart } from "./sheet-part";
import { Styles } from "./styles-part";

const OFFICE = "application/vnd.openxmlformats-officedocument";
/** The calculation engine of Excel since 2019: an older one named here, or none, would make Excel compute everything on opening. */
const CALCULATION_ENGINE = 191029;

/** Writes a book as an .xlsx file: the same bytes for the same source, wherever and whenever it runs. */
export function bookFile(book: Book): Uint8Array {
  const parts = new Map<string, { readonly xml: string; readonly type?: string }>();
  const styles = new Styles();
  const strings = new Listed<string>([]);
  const metadata = withDynamicArrays(emptyMetadata(SPREADSHEET));
  const computed = [...computedBook(book)];

  computed.forEach(([sheet, cells], i) => {
    const n = i + 1;
    parts.set(`xl/worksheets/sheet${n}.xml`, { xml: sheetPart(sheet, cells, { styles, strings, spillMark: metadata.index, isFront: i === 0 }), type: `${OFFICE}.spreadsheetml.worksheet+xml` });
    if (!sheet.chart) return;
    parts.set(`xl/worksheets/_rels/sheet${n}.xml.rels`, { xml: relationshipsXml([{ type: "drawing", target: `../drawings/drawing${n}.xml` }]) });
    parts.set(`xl/drawings/drawing${n}.xml`, { xml: drawingPart(sheet.chart), type: `${OFFICE}.drawing+xml` });
    parts.set(`xl/drawings/_rels/drawing${n}.xml.rels`, { xml: relationshipsXml([{ type: "chart", target: `../charts/chart${n}.xml` }]) });
    parts.set(`xl/charts/chart${n}.xml`, { xml: chartPart(sheet.chart, sheet, cells), type: `${OFFICE}.drawingml.chart+xml` });
  });

  parts.set("xl/workbook.xml", { xml: workbookPart(book), type: `${OFFICE}.spreadsheetml.sheet.main+xml` });
  parts.set("xl/_rels/workbook.xml.rels", {
    xml: relationshipsXml([
      ...computed.map((_, i) => ({ type: "worksheet", target: `worksheets/sheet${i + 1}.xml` })),
      { type: "styles", target: "styles.xml" },
      { type: "sharedStrings", target: "sharedStrings.xml" },
      { type: "sheetMetadata", target: "metadata.xml" },
    ]),
  });
  parts.set("xl/styles.xml", { xml: styles.xml(), type: `${OFFICE}.spreadsheetml.styles+xml` });
  parts.set("xl/sharedStrings.xml", { xml: sharedStringsPart(strings.all), type: `${OFFICE}.spreadsheetml.sharedStrings+xml` });
  parts.set("xl/metadata.xml", { xml: metadata.xml, type: METADATA_TYPE });
  parts.set("docProps/core.xml", { xml: corePart(book), type: "application/vnd.openxmlformats-package.core-properties+xml" });
  parts.set("docProps/app.xml", { xml: APP, type: `${OFFICE}.extended-properties+xml` });
  parts.set("_rels/.rels", {
    xml: relationshipsXml([
      { type: "officeDocument", target: "xl/workbook.xml" },
      { type: "http://schemas.openxmlformats.org/package/2006/relationships/metadata/core-properties", target: "docProps/core.xml" },
      { type: "extended-properties", target: "docProps/app.xml" },
    ]),
  });

  const types = [...parts].flatMap(([name, { type }]) => (type ? [`<Override PartName="/${name}" ContentType="${type}"/>`] : []));
  const contentTypes = `<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" ContentType="application/xml"/>${types.join("")}</Types>`;
  return zipped([["[Content_Types].xml", contentTypes], ...[...parts].map(([name, { xml }]) => [name, xml] as const)], book.date);
}

function zipped(parts: readonly (readonly [name: string, xml: string])[], date: string): Uint8Array {
  const files = parts.map(([name, xml]) => [name, encodeXml(xml.startsWith("<?xml") ? xml : `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n${xml}`)] as const);
  // A zip holds local time: noon of the day as this machine counts it is the same text on every machine.
  return zipSync(Object.fromEntries(files), { mtime: new Date(`${date}T12:00:00`), level: 6 });
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
