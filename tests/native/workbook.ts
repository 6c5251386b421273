import { strToU8, zipSync } from "fflate";

export type SheetCell = number | string | { readonly formula: string };

/** A sheet as cells by row and column, both counted from 0. */
export class Sheet {
  private readonly rows: (SheetCell | undefined)[][] = [];

  constructor(readonly name: string) {}

  set(row: number, column: number, cell: SheetCell): void {
    (this.rows[row] ??= [])[column] = cell;
  }

  get xml(): string {
    const rows = Array.from(this.rows, (cells, r) => `<row r="${r + 1}">${Array.from(cells ?? [], (cell, c) => cellXml(cell, address(r, c))).join("")}</row>`);
    return `${HEAD}<worksheet xmlns="${MAIN}"><sheetData>${rows.join("")}</sheetData></worksheet>`;
  }
}

export function address(row: number, column: number): string {
  const letters = column < 26 ? String.fromCharCode(65 + column) : String.fromCharCode(64 + Math.floor(column / 26), 65 + (column % 26));
  return `${letters}${row + 1}`;
}

/** The bytes of a workbook whose formulas have no stored values, so that whoever opens it must compute them. */
export function workbook(sheets: readonly Sheet[]): Uint8Array {
  const each = (text: (sheet: Sheet, n: number) => string): string => sheets.map((sheet, i) => text(sheet, i + 1)).join("");
  const types = each((_, n) => `<Override PartName="/xl/worksheets/sheet${n}.xml" ContentType="${SPREADSHEET}.worksheet+xml"/>`);
  const parts: Record<string, string> = {
    "[Content_Types].xml": `${HEAD}<Types xmlns="${PACKAGE}/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Override PartName="/xl/workbook.xml" ContentType="${SPREADSHEET}.sheet.main+xml"/>${types}</Types>`,
    "_rels/.rels": `${HEAD}<Relationships xmlns="${PACKAGE}/relationships"><Relationship Id="rId1" Type="${OFFICE}/officeDocument" Target="xl/workbook.xml"/></Relationships>`,
    "xl/workbook.xml": `${HEAD}<workbook xmlns="${MAIN}" xmlns:r="${OFFICE}"><sheets>${each((sheet, n) => `<sheet name="${escaped(sheet.name)}" sheetId="${n}" r:id="rId${n}"/>`)}</sheets></workbook>`,
    "xl/_rels/workbook.xml.rels": `${HEAD}<Relationships xmlns="${PACKAGE}/relationships">${each((_, n) => `<Relationship Id="rId${n}" Type="${OFFICE}/worksheet" Target="worksheets/sheet${n}.xml"/>`)}</Relationships>`,
    ...Object.fromEntries(sheets.map((sheet, i) => [`xl/worksheets/sheet${i + 1}.xml`, sheet.xml])),
  };
  return zipSync(Object.fromEntries(Object.entries(parts).map(([path, text]) => [path, strToU8(text)])), { level: 1 });
}

const HEAD = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n';
const SCHEMAS = "http://schemas.openxmlformats.org";
const MAIN = `${SCHEMAS}/spreadsheetml/2006/main`;
const OFFICE = `${SCHEMAS}/officeDocument/2006/relationships`;
const PACKAGE = `${SCHEMAS}/package/2006`;
const SPREADSHEET = "application/vnd.openxmlformats-officedocument.spreadsheetml";

function cellXml(cell: SheetCell | undefined, at: string): string {
  if (cell === undefined) return "";
  if (typeof cell === "number") return `<c r="${at}"><v>${cell}</v></c>`;
  if (typeof cell === "string") return `<c r="${at}" t="inlineStr"><is><t xml:space="preserve">${escaped(cell)}</t></is></c>`;
  return `<c r="${at}"><f>${escaped(cell.formula)}</f></c>`;
}

const escaped = (text: string): string => text.replace(/&/g, "&amp;").replace(/</g, "&lt;").replace(/>/g, "&gt;").replace(/"/g, "&quot;");
