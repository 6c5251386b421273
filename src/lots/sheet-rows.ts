import type { CellContent, SheetCell } from "../workbook/port";

/** Cells of a new sheet, written row by row from above. */
export class SheetRows {
  readonly cells: SheetCell[] = [];
  /** In which the next cells go. */
  row = 1;

  constructor(private readonly columns: readonly string[]) {}

  /** A cell of the current row; gives its address. */
  put(column: string, content: CellContent, how: Omit<SheetCell, "cell" | "content"> = {}): string {
    const cell = `${column}${this.row}`;
    this.cells.push({ cell, content, ...how });
    return cell;
  }

  /** A text is a text, whatever it begins with. */
  text(column: string, content: string, how: Omit<SheetCell, "cell" | "content" | "asText"> = {}): string {
    return this.put(column, content, { asText: true, ...how });
  }

  /** A heading across all columns; ends its row. */
  heading(...titles: readonly string[]): void {
    this.columns.forEach((column, i) => this.text(column, titles[i] ?? "", { look: "heading", align: i === 0 ? "left" : "right" }));
    this.next();
  }

  next(rows = 1): void {
    this.row += rows;
  }
}
