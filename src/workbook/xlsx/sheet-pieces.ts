import { LAST_COLUMN, LAST_ROW, readAddress } from "./address";
import { damaged } from "./file-fault";
import { readRoot } from "./xml-part";
import { Tags } from "./xml-tags";

interface Stretch {
  readonly start: number;
  readonly end: number;
}

export interface Dimension extends Stretch {
  readonly kind: "dimension";
}

export interface Columns {
  readonly kind: "columns";
  readonly min: number;
  readonly max: number;
  readonly style: string | undefined;
  readonly isHidden: boolean;
}

/** The opening tag of the rows, or the whole element where there are none. */
export interface Data extends Stretch {
  readonly kind: "data";
  readonly isEmpty: boolean;
}

/** The opening tag of a row, or the whole element where it has no cells. */
export interface Row extends Stretch {
  readonly kind: "row";
  readonly row: number;
  readonly isEmpty: boolean;
  /** The style that new cells of the row take. */
  readonly style: string | undefined;
  readonly isHidden: boolean;
}

export interface StoredFormula extends Stretch {
  readonly type: "normal" | "array" | "dataTable" | "shared";
  readonly textStart: number;
  readonly textEnd: number;
  readonly ref: string | undefined;
  /** The number of the shared formula it belongs to. */
  readonly shared: string | undefined;
}

export interface StoredCell extends Stretch {
  readonly kind: "cell";
  readonly row: number;
  readonly column: number;
  readonly tagEnd: number;
  /** Where its closing tag begins; its end, where it is an empty element. */
  readonly closeStart: number;
  readonly type: string;
  readonly style: string | undefined;
  /** True where Excel marked the formula as one whose result spills. */
  readonly isDynamic: boolean;
  readonly formula: StoredFormula | null;
  /** The text of the value, or the runs of an inline string. */
  readonly value: Stretch | null;
  /** Where formula and value end and anything else the cell holds begins. */
  readonly contentEnd: number;
}

export interface Close {
  readonly kind: "row-end" | "data-end";
  readonly at: number;
}

export type SheetPiece = Dimension | Columns | Data | Row | StoredCell | Close;

/** The parts of a sheet that a reading or a patch looks at, in their order in the text. What follows the rows is not read. */
export function* sheetPieces(xml: string): Generator<SheetPiece, void, undefined> {
  const tags = new Tags(xml);
  const { prefix } = readRoot(tags);
  const data = yield* head(tags, prefix);
  if (data.isEmpty) return;

  const [ROW, CELL, DATA] = [`${prefix}row`, `${prefix}c`, `${prefix}sheetData`];
  let row = 0;
  let column = 0;
  while (tags.next()) {
    if (tags.kind === "close") {
      if (tags.name === ROW) yield { kind: "row-end", at: tags.start };
      else if (tags.name === DATA) return yield { kind: "data-end", at: tags.start };
    } else if (tags.name === ROW) {
      row = next(row, Number(tags.attribute("r") ?? row + 1), LAST_ROW, "rows");
      column = 0;
      const style = isOn(tags.attribute("customFormat")) ? tags.attribute("s") : undefined;
      yield { kind: "row", row, start: tags.start, end: tags.end, isEmpty: tags.kind === "empty", style, isHidden: isOn(tags.attribute("hidden")) };
    } else if (tags.name === CELL) {
      const address = tags.attribute("r");
      const spot = address === undefined ? { row, column: column + 1 } : readAddress(address);
      if (spot?.row !== row) throw damaged(`its cell ${address} stands in row ${row}`);
      column = next(column, spot.column, LAST_COLUMN, "cells");
      yield readCell(tags, prefix, row, column);
    } else tags.skip();
  }
  throw damaged("the rows of a sheet break off");
}

function* head(tags: Tags, prefix: string): Generator<SheetPiece, Data, undefined> {
  while (tags.next()) {
    if (tags.kind === "close") continue;
    const { start, end } = tags;
    switch (tags.name) {
      case `${prefix}dimension`:
        yield { kind: "dimension", start, end };
        break;
      case `${prefix}col`:
        yield { kind: "columns", min: Number(tags.attribute("min")), max: Number(tags.attribute("max")), style: tags.attribute("style"), isHidden: isOn(tags.attribute("hidden")) };
        break;
      case `${prefix}sheetData`: {
        const data = { kind: "data", start, end, isEmpty: tags.kind === "empty" } as const;
        yield data;
        return data;
      }
    }
  }
  throw damaged("a sheet of it has no rows element");
}

/** Two cells in one place, or rows out of order, could be patched in the wrong one. */
function next(previous: number, found: number, last: number, what: string): number {
  if (!(found > previous && found <= last)) throw damaged(`the ${what} of a sheet are out of order`);
  return found;
}

export const isOn = (flag: string | undefined): boolean => flag === "1" || flag === "true";

function readCell(tags: Tags, prefix: string, row: number, column: number): StoredCell {
  const { start, end: tagEnd } = tags;
  const isEmpty = tags.kind === "empty";
  const type = tags.attribute("t") ?? "n";
  const style = tags.attribute("s");
  const isDynamic = tags.attribute("cm") !== undefined;
  let formula: StoredFormula | null = null;
  let value: Stretch | null = null;
  let contentEnd = tagEnd;
  while (!isEmpty) {
    if (!tags.next()) throw damaged("a cell of it is not closed");
    if (tags.kind === "close") {
      if (tags.name === `${prefix}c`) break;
      throw damaged("a cell of it is not closed");
    }
    if (tags.name === `${prefix}f`) formula = readFormula(tags);
    else if (tags.name === `${prefix}v` || tags.name === `${prefix}is`) value = inside(tags);
    else {
      tags.skip();
      continue;
    }
    contentEnd = tags.end;
  }
  const closeStart = isEmpty ? tagEnd : tags.start;
  // One literal: a sheet may have millions of cells, and copying a half-made one costs more than reading it.
  return { kind: "cell", row, column, start, tagEnd, closeStart, end: tags.end, type, style, isDynamic, formula, value, contentEnd };
}

function readFormula(tags: Tags): StoredFormula {
  const { start } = tags;
  const kind = tags.attribute("t");
  const type = kind === "shared" || kind === "array" || kind === "dataTable" ? kind : "normal";
  const ref = tags.attribute("ref");
  const shared = type === "shared" ? tags.attribute("si") : undefined;
  const text = inside(tags);
  return { type, ref, shared, start, end: tags.end, textStart: text.start, textEnd: text.end };
}

/** What stands between an opening tag and its closing one; steps onto the closing one. */
function inside(tags: Tags): Stretch {
  const start = tags.end;
  const isEmpty = tags.kind === "empty";
  tags.skip();
  return { start, end: isEmpty ? start : tags.start };
}
