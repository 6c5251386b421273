import type { CellContent, SheetCell } from "../workbook/port";
import type { Look } from "../workbook/port";

interface Style {
  readonly look?: Look;
  readonly numberFormat?: string;
  readonly asText?: boolean;
  readonly align?: "left" | "right" | "center";
}

export const FINE = { numberFormat: "#,##0.000" } as const;
export const UNCERTAINTY = { numberFormat: "#,##0.0000" } as const;
export const SHARE = { numberFormat: "0.00%" } as const;
export const DATE = { numberFormat: "yyyy-mm-dd", align: "left" } as const;
export const MONEY = { numberFormat: "#,##0.00" } as const;
export const UNCERTAINTY_HEADING = "Std uncertainty";
export const INPUT = { look: "input" } as const;

/** The cells of a sheet that is being made, block below block. */
export class SheetDraft {
  readonly cells: SheetCell[] = [];
  row = 1;

  put(column: string, content: CellContent, style: Style = {}, row = this.row): void {
    this.cells.push({ cell: `${column}${row}`, content, ...style });
  }

  text(column: string, content: string, look?: Look, row = this.row): void {
    this.put(column, content, { asText: true, ...(look === undefined ? {} : { look }) }, row);
  }

  /** A block's title and the headings of its columns, the first of them over texts; the row after them is the next. */
  block(title: string, texts: readonly string[], numbers: readonly string[], about?: string): void {
    this.row += 1;
    this.text("A", title, "title");
    this.row += 1;
    if (about !== undefined) {
      this.text("A", about, "note");
      this.row += 1;
    }
    [...texts, ...numbers].forEach((heading, i) => this.put(String.fromCharCode(65 + i), heading, { asText: true, look: "heading", align: i < texts.length ? "left" : "right" }));
    this.row += 1;
  }
}

/** The rows that a block fills, one at least. */
export interface Rows {
  readonly first: number;
  readonly last: number;
}

export const rangeOf = (column: string, { first, last }: Rows): string => `${column}${first}:${column}${last}`;
export const fixedRange = (column: string, { first, last }: Rows): string => `$${column}$${first}:$${column}$${last}`;
