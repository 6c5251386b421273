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
  /** Its format code in en-US form; absent where it is General. */
  readonly numberFormat?: string;
}

/** A table with a heading row; one without is not listed, since nobody can say what its columns are. */
export interface TableInfo {
  readonly name: string;
  /** With its heading row, and its totals row where it has one. */
  readonly range: string;
  readonly hasTotals: boolean;
}

export interface SheetInfo {
  readonly name: string;
  readonly isVisible: boolean;
  readonly isProtected: boolean;
  /** The rectangle around the cells that hold something, or null. */
  readonly used: string | null;
  readonly tables: readonly TableInfo[];
  /** Their letters. */
  readonly hiddenColumns: readonly string[];
  /** By a filter or by hand. */
  readonly hasHiddenRows: boolean;
  readonly merged: readonly string[];
}

/** A name that stands for a range. */
export interface NamedPlace {
  readonly name: string;
  readonly place: Place;
}

/** One cell that a plan changes. `content` is a formula when it begins with "=", unless `asText` is set. */
export interface CellWrite {
  readonly sheet: string;
  readonly cell: string;
  readonly content: CellContent;
  readonly asText?: boolean;
  readonly numberFormat?: string;
  /** A cell of the same sheet whose look (number format, font, fill, borders) this one takes; a number format given beside it wins. */
  readonly like?: string;
}

/** What a cell of a sheet of ours is, which decides how it looks. */
export type Look = "title" | "heading" | "label" | "input" | "note" | "total" | "caution";

export interface SheetCell {
  readonly cell: string;
  readonly content: CellContent;
  readonly asText?: boolean;
  readonly numberFormat?: string;
  readonly look?: Look;
  /** The range that is merged into this cell, which is its first. */
  readonly merge?: string;
  readonly wraps?: boolean;
  readonly align?: "left" | "right" | "center";
}

export interface PrintSetup {
  readonly area: string;
  readonly orientation: "portrait" | "landscape";
  readonly fitsOnePage: boolean;
  /** Else what the user's spreadsheet takes for usual. */
  readonly paper?: "letter" | "A4";
}

/** A chart over ranges of the sheet on which it stands. */
export interface Chart {
  readonly kind: "columns" | "lines";
  readonly title: string;
  /** The cell under its upper left corner. */
  readonly at: string;
  /** In pixels. */
  readonly width: number;
  readonly height: number;
  /** One column of words, and of each series one column of numbers, all of the same rows. */
  readonly categories: string;
  readonly series: readonly { readonly name: string; readonly values: string }[];
  /** Of its numbers, as a format code. */
  readonly numberFormat: string;
}

/** A sheet that is added after the last one. */
export interface NewSheet {
  readonly newSheet: string;
  readonly isHidden?: boolean;
  /** From column A on, in characters. */
  readonly columnWidths?: readonly number[];
  readonly cells: readonly SheetCell[];
  readonly print?: PrintSetup;
  /** Each names this sheet as its own. */
  readonly pictures?: readonly Picture[];
  readonly charts?: readonly Chart[];
}

/** A note beside a cell; null takes it away. */
export interface Note {
  readonly sheet: string;
  readonly cell: string;
  readonly note: string | null;
}

export interface Picture {
  readonly sheet: string;
  /** The cell under its upper left corner. */
  readonly at: string;
  readonly png: Uint8Array;
  /** In pixels. */
  readonly width: number;
  readonly height: number;
  /** What it shows, for those who do not see it. */
  readonly alt: string;
}

/**
 * A table that takes up rows below it or columns at its right, so that a new lot belongs to it. A new column has its
 * heading there or written with it. Cells are written after it has grown.
 */
export interface TableGrowth {
  readonly sheet: string;
  readonly table: string;
  /** The whole table with its heading row, from the same upper left cell. */
  readonly tableRange: string;
}

export type Change = CellWrite | NewSheet | Note | Picture | TableGrowth;

export interface Undo {
  undo(): Promise<void>;
}

export interface BookPort {
  /** The selected range; its first cell is where an insertion goes. */
  selection(): Promise<Place>;
  onSelection(listener: (place: Place) => void): () => void;
  /** Rows of cells, [row][column], exactly the shape of the place. */
  read(place: Place): Promise<readonly (readonly CellReading[])[]>;
  /**
   * Does every change or none: when one fails half-way the workbook is put back and the fault is thrown. What it gives
   * back takes all of it away again in one step.
   */
  write(changes: readonly Change[]): Promise<Undo>;
  select(place: Place): Promise<void>;
  /**
   * Has every formula computed anew, whether or not what it reads has changed; no content changes, and what was written
   * can still be taken back. In a file that is what holds a function of ours and what depends on it: the rest keeps its
   * stored value. Excel may show the new values a moment later.
   */
  recalculate(): Promise<void>;
  /** Every worksheet, in the order of the tabs, the hidden ones too. */
  sheets(): Promise<readonly SheetInfo[]>;
  /** Those names of the workbook that stand for a range. */
  names(): Promise<readonly NamedPlace[]>;
  /** The note beside a cell, or null. */
  note(at: { readonly sheet: string; readonly cell: string }): Promise<string | null>;
}
