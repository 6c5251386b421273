import { addressOf } from "../../src/workbook/xlsx/address";
import { encodeCellText } from "../../src/workbook/xlsx/cell-text";
import { toStored } from "../../src/workbook/xlsx/stored-formula";
import { SPREADSHEET } from "../../src/workbook/xlsx/xml-part";
import { encodeText } from "../../src/workbook/xlsx/xml-text";
import type { List, Sheet } from "./book";
import type { ValuedCell } from "./computed-book";
import type { Listed } from "./listed";
import { RELATIONSHIPS } from "./relationships";
import type { Styles } from "./styles-part";

export interface SheetContext {
  readonly styles: Styles;
  readonly strings: Listed<string>;
  /** What the cell of a spilling formula bears, so that its array spills and is not one of the older kind. */
  readonly spillMark: string;
  /** The sheet that shows when the file opens. */
  readonly isFront: boolean;
}

export function sheetPart(sheet: Sheet, cells: readonly ValuedCell[], context: SheetContext): string {
  return `<worksheet xmlns="${SPREADSHEET}" xmlns:r="${RELATIONSHIPS}">${[
    '<sheetPr><pageSetUpPr fitToPage="1"/></sheetPr>',
    view(sheet, context.isFront),
    '<sheetFormatPr defaultRowHeight="17" customHeight="1"/>',
    `<cols>${sheet.widths.map((width, i) => `<col min="${i + 1}" max="${i + 1}" width="${width}" customWidth="1"/>`).join("")}</cols>`,
    `<sheetData>${rows(sheet, cells, context)}</sheetData>`,
    counted("mergeCells", (sheet.merged ?? []).map((range) => `<mergeCell ref="${range}"/>`)),
    counted("dataValidations", (sheet.lists ?? []).map(dropDown)),
    '<pageMargins left="0.5" right="0.5" top="0.6" bottom="0.6" header="0.3" footer="0.3"/>',
    `<pageSetup paperSize="9" orientation="${sheet.page}" fitToWidth="1" fitToHeight="0"/>`,
    "<headerFooter><oddFooter>&amp;L&amp;F, &amp;A&amp;RPage &amp;P of &amp;N</oddFooter></headerFooter>",
    sheet.numberTexts ? `<ignoredErrors><ignoredError sqref="${sheet.numberTexts}" numberStoredAsText="1"/></ignoredErrors>` : "",
    sheet.chart ? '<drawing r:id="rId1"/>' : "",
  ].join("")}</worksheet>`;
}

function view({ cursor, headingRow }: Sheet, isFront: boolean): string {
  const pane = headingRow ? `<pane ySplit="${headingRow}" topLeftCell="A${headingRow + 1}" activePane="bottomLeft" state="frozen"/>` : "";
  const selection = `<selection${headingRow ? ' pane="bottomLeft"' : ""} activeCell="${cursor}" sqref="${cursor}"/>`;
  return `<sheetViews><sheetView showGridLines="0"${isFront ? ' tabSelected="1"' : ""} workbookViewId="0">${pane}${selection}</sheetView></sheetViews>`;
}

function rows({ heights = {} }: Sheet, cells: readonly ValuedCell[], context: SheetContext): string {
  const byRow = new Map<number, ValuedCell[]>();
  for (const cell of cells) byRow.set(cell.row, [...(byRow.get(cell.row) ?? []), cell]);
  return [...byRow]
    .map(([row, inRow]) => {
      const height = heights[row];
      return `<row r="${row}"${height ? ` ht="${height}" customHeight="1"` : ""}>${inRow.map((cell) => cellXml(cell, context)).join("")}</row>`;
    })
    .join("");
}

function cellXml(cell: ValuedCell, { styles, strings, spillMark }: SheetContext): string {
  const { value, formula, fills, isComputed } = cell;
  const start = `<c r="${addressOf(cell)}" s="${styles.of(cell.look, cell.format)}"`;
  if (value === null) return `${start}/>`;
  if (!isComputed) return typeof value === "string" ? `${start} t="s"><v>${strings.of(value)}</v></c>` : `${start}><v>${value}</v></c>`;
  const asArray = fills ? { cell: ` cm="${spillMark}"`, formula: ` t="array" ref="${fills}"` } : { cell: "", formula: "" };
  const type = typeof value === "string" ? ' t="str"' : "";
  const code = formula === null ? "" : `<f${asArray.formula}>${encodeText(toStored(formula))}</f>`;
  return `${start}${type}${asArray.cell}>${code}<v>${typeof value === "string" ? encodeCellText(value) : value}</v></c>`;
}

const dropDown = ({ range, choices }: List): string =>
  `<dataValidation type="list" allowBlank="1" sqref="${range}"><formula1>${encodeText(`"${choices.join(",")}"`)}</formula1></dataValidation>`;

const counted = (name: string, items: readonly string[]): string => (items.length > 0 ? `<${name} count="${items.length}">${items.join("")}</${name}>` : "");

export const quoted = (sheet: string): string => `'${encodeText(sheet).replace(/'/g, "''")}'`;
