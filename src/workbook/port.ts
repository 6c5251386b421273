/** The one port through which the pane and the command line touch a workbook. */

/** What a cell holds: a number, a text, a truth value, an error code such as "#VALUE!", or nothing. */
export type CellContent = number | string | boolean | null;

/** A rectangle of cells on one sheet, in A1 style and without the sheet's name: `B4` or `B4:C9`. */
export interface Place {
  readonly sheet: string;
  readonly range: string;
}

export interface CellReading {
  /** What the cell shows, before number formatting. */
  readonly value: CellContent;
  /** The formula with its equals sign, in en-US form with LOT.NAME(…), or null where the cell holds a plain value. */
  readonly formula: string | null;
  /** True where `value` is an error; `message` then says why when the host knows. */
  readonly error: boolean;
  readonly message?: string;
}

/** One cell that a plan changes. `content` is a formula when it begins with "=", unless `asText` is set. */
export interface CellWrite {
  readonly sheet: string;
  readonly cell: string;
  readonly content: CellContent;
  readonly asText?: boolean;
  readonly numberFormat?: string;
}

export interface WorkbookPort {
  /** The selected range; its first cell is where an insertion goes. */
  selection(): Promise<Place>;
  onSelection(listener: (place: Place) => void): () => void;
  /** Rows of cells, [row][column], exactly the shape of the place. */
  read(place: Place): Promise<readonly (readonly CellReading[])[]>;
  /** Writes every cell or none: when a write fails half-way the workbook is put back and the fault is thrown. */
  write(writes: readonly CellWrite[]): Promise<void>;
  select(place: Place): Promise<void>;
}
