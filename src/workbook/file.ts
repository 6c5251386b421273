import type { SheetInfo, TableInfo } from "./port";
import { readCells, type Cell } from "./xlsx/cells";
import type { Additions, CellChange } from "./xlsx/change";
import { gridParts } from "./xlsx/grid-parts";
import { readNotes } from "./xlsx/notes";
import { formatCodes } from "./xlsx/number-formats";
import { refuseOtherFiles } from "./xlsx/other-files";
import { Package } from "./xlsx/package";
import { patchWorkbook } from "./xlsx/patch-workbook";
import { readSharedStrings } from "./xlsx/shared-strings";
import { sheetFacts, tablesWithHeadings } from "./xlsx/sheet-facts";
import { styleFinder } from "./xlsx/style-finder";
import { type DefinedName, type SheetEntry, Workbook } from "./xlsx/workbook";
import { readZip } from "./xlsx/zip-read";

export type { Cell } from "./xlsx/cells";
export type { AddedCell, AddedSheet, Additions, CellChange, CellValue, TableInFile } from "./xlsx/change";
export { FileFault } from "./xlsx/file-fault";
export type { DefinedName, SheetEntry } from "./xlsx/workbook";

/**
 * Opens a workbook, or throws a FileFault that says what the file is and what to do. Parts are unpacked when they are
 * asked for, so damage inside a sheet shows when its cells are read.
 */
export function openXlsx(bytes: Uint8Array): XlsxFile {
  // Node's Buffer is a Uint8Array whose slice() shares its memory instead of copying it.
  const plain = new Uint8Array(bytes.buffer, bytes.byteOffset, bytes.length);
  refuseOtherFiles(plain);
  return new XlsxFile(plain, new Workbook(new Package(readZip(plain))));
}

/** An .xlsx file that was opened. It never changes: a patch gives new bytes. */
export class XlsxFile {
  readonly #workbook: Workbook;
  #sharedStrings: readonly string[] | undefined;
  #formats: readonly (string | undefined)[] | undefined;

  constructor(
    /** As it was opened. */
    readonly bytes: Uint8Array,
    workbook: Workbook,
  ) {
    this.#workbook = workbook;
  }

  get sheets(): readonly SheetEntry[] {
    return this.#workbook.sheets;
  }

  get definedNames(): readonly DefinedName[] {
    return this.#workbook.definedNames;
  }

  /** The cells of a sheet that hold something, in reading order; none on a chart sheet. */
  *cells(sheet: string): Generator<Cell, void, undefined> {
    const { kind, part } = this.#workbook.sheet(sheet);
    if (kind !== "worksheet") return;
    yield* readCells(this.#workbook.parts.text(part), { sharedStrings: () => this.#strings(), date1904: this.#workbook.date1904 });
  }

  /** The XML parts by their path, in the words that the embedded grid reads. */
  parts(): Record<string, string> {
    return gridParts(this.#workbook);
  }

  /** A sheet's part as it is written. */
  text(sheet: string): string {
    return this.#workbook.parts.text(this.#workbook.sheet(sheet).part);
  }

  /** What is to be known of a worksheet besides its cells. */
  facts(sheet: string): SheetInfo {
    return sheetFacts(this.#workbook.parts, this.#workbook.sheet(sheet));
  }

  /** The tables of a worksheet that have headings. */
  tables(sheet: string): readonly TableInfo[] {
    return tablesWithHeadings(this.#workbook.parts, this.#workbook.sheet(sheet).part);
  }

  /** The number format of a style, which every cell names; undefined where it is General. */
  numberFormat(style: number): string | undefined {
    const { parts, part } = this.#workbook;
    if (!this.#formats) {
      const styles = parts.related(part, "styles");
      this.#formats = styles === undefined ? [] : formatCodes(parts.text(styles));
    }
    return this.#formats[style];
  }

  /** Tells the style of cells that may hold nothing. */
  styles(sheet: string, cells: readonly string[]): (cell: string) => number {
    return styleFinder(this.#workbook.parts.text(this.#workbook.sheet(sheet).part), cells);
  }

  /** The text of every note on a sheet, by its cell. */
  notes(sheet: string): ReadonlyMap<string, string> {
    return readNotes(this.#workbook.parts, this.#workbook.sheet(sheet).part);
  }

  /** A file in which these cells are changed, these things added, and nothing else is, or a FileFault and no file. */
  patch(changes: readonly CellChange[], additions: Additions = {}): Uint8Array {
    return patchWorkbook(this.#workbook, changes, additions) ?? this.bytes;
  }

  #strings(): readonly string[] {
    const { parts, part } = this.#workbook;
    if (!this.#sharedStrings) {
      const strings = parts.related(part, "sharedStrings");
      this.#sharedStrings = strings === undefined ? [] : readSharedStrings(parts.text(strings));
    }
    return this.#sharedStrings;
  }
}
