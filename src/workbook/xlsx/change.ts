import type { CellContent, NewSheet, Note, Picture, SheetCell, TableGrowth } from "../port";
import type { CellLink } from "./links";

export interface CellValue {
  readonly value: CellContent;
  /** True where the value is an error's code. */
  readonly error?: boolean;
}

/** What a cell of a file is to hold. */
interface CellContents extends CellValue {
  /** B4 */
  readonly cell: string;
  /**
   * A formula, in en-US form with LOT.NAME(…); null for a plain value.
   * Left out, a formula that is there stays and only its stored value changes.
   */
  readonly formula?: string | null;
  /** All cells that the formula fills, [row][column]. The first is this cell itself, whose value stands above. */
  readonly spill?: readonly (readonly CellValue[])[];
}

export interface CellChange extends CellContents {
  readonly sheet: string;
  readonly numberFormat?: string;
  /** The cell of the same sheet, as it was before the change, whose format this one takes. */
  readonly like?: string;
}

/** A change whose look has found its place in the list of cell formats. */
export interface StyledChange extends CellContents {
  readonly sheet: string;
  readonly style?: number;
}

/** A sheet to add, its formulas with their results. */
export interface AddedSheet extends Omit<NewSheet, "cells" | "pictures"> {
  readonly cells: readonly AddedCell[];
}

export type AddedCell = CellContents & Omit<SheetCell, "cell" | "content" | "asText">;

/** A growth with all the headings that the table then has. */
export interface TableInFile extends TableGrowth {
  readonly headings: readonly string[];
}

export interface Additions {
  readonly sheets?: readonly AddedSheet[];
  readonly notes?: readonly Note[];
  readonly pictures?: readonly Picture[];
  readonly tables?: readonly TableInFile[];
  readonly links?: readonly CellLink[];
  /** Sheets that are taken out. */
  readonly withoutSheets?: readonly string[];
  /** Tells by its part whether an add-in that the file refers to is one to be taken out. */
  readonly withoutAddIn?: (extension: string) => boolean;
}
