import { number } from "../core/expression/native";
import { type Piece, binds, whole } from "../core/expression/notation";
import type { Ratio } from "../core/expression/ratio";
import { show } from "../core/expression/show";
import { fail } from "../core/fault";
import { type Bound, like, piece } from "./bound";
import { Reference, held, isEmpty } from "./reference";
import type { Reader } from "./reader";

export interface Asked {
  readonly name: string;
  readonly cells: unknown;
  readonly reader: Reader;
}

export const range = (name: string, cells: unknown, reader: Reader): Asked => ({ name, cells, reader });

/** A range of its own: empty cells are skipped. */
export function total(name: string, cells: unknown, reader: Reader): Bound<readonly Ratio[]> {
  return paired(range(name, cells, reader))[0];
}

/**
 * Ranges that are read side by side, cell for cell. Rows that are empty in all of them are skipped; a row that is
 * half filled is refused with its number in the range.
 */
export function paired<const A extends readonly Asked[]>(...asked: A): { readonly [K in keyof A]: Bound<readonly Ratio[]> } {
  let read: readonly (readonly Ratio[])[] | undefined;
  const columns = (): readonly (readonly Ratio[])[] => (read ??= readAll(asked));
  const bound = asked.map((ask, i): Bound<readonly Ratio[]> => ({
    notes: [{ name: ask.name, wants: `a range, each cell ${ask.reader.wants}` }],
    read: () => columns()[i] ?? [],
    native: () => nativeRange(ask),
    words: () => {
      const values = columns()[i] ?? [];
      const shown = values.slice(0, SHOWN).map(show).join("; ");
      const where = ask.cells instanceof Reference ? `${ask.cells.text} = ` : "";
      return `${where}${shown}${values.length > SHOWN ? `; … (${values.length} in all)` : ""}`;
    },
  }));
  return bound as { readonly [K in keyof A]: Bound<readonly Ratio[]> };
}

/** A spreadsheet's formula takes an empty cell for 0; where that would tell, only a range without gaps has a twin. */
export function withoutGaps(bound: Bound<readonly Ratio[]>, cells: unknown): Bound<readonly Ratio[]> {
  const hasGaps = Array.isArray(held(cells)) && rowsOf(held(cells)).flat().some(isEmpty);
  return hasGaps ? like(bound, { native: () => null }) : bound;
}

const SHOWN = 6;

function readAll(asked: readonly Asked[]): readonly (readonly Ratio[])[] {
  const columns = asked.map((): Ratio[] => []);
  eachFilledRow(asked, (row, cells) => asked.forEach(({ reader, name }, i) => columns[i]?.push(reader.read(cells[i], `${name}, row ${row}`))));
  return columns;
}

/** Visits the rows of ranges side by side that hold something, with their number in the range; the cells change with each visit. */
export function eachFilledRow(asked: readonly Asked[], visit: (row: number, cells: readonly unknown[]) => void): void {
  const grids = asked.map(({ cells }) => rowsOf(held(cells)));
  const [first, ...others] = asked;
  const shape = grids[0] ?? [];
  if (!first) return;
  others.forEach((other, i) => sameShape(first, shape, other, grids[i + 1] ?? []));
  const cells: unknown[] = asked.map(() => null);
  let visited = 0;
  for (let r = 0; r < shape.length; r++)
    for (let c = 0; c < (shape[r] as readonly unknown[]).length; c++) {
      let empty = 0;
      for (let i = 0; i < grids.length; i++) {
        cells[i] = grids[i]?.[r]?.[c];
        if (isEmpty(cells[i])) empty++;
      }
      if (empty === asked.length) continue;
      if (empty > 0) fail({ kind: "half-filled", row: r + 1, names: asked.filter((_, i) => isEmpty(cells[i])).map(({ name }) => name) });
      visit(r + 1, cells);
      visited++;
    }
  // A list of nothing is a mistake; a single column may have a stretch without entries, but not a single empty cell.
  if (visited === 0 && (asked.length > 1 || shape.flat().length === 1)) fail({ kind: "missing", name: first.name, wants: first.reader.wants });
}

type Grid = readonly (readonly unknown[])[];

/** A range comes as rows of cells; a single cell may stand for a range of one. */
function rowsOf(cells: unknown): Grid {
  return Array.isArray(cells) ? cells.map((row) => (Array.isArray(row) ? row : [row])) : [[cells]];
}

function sameShape(first: Asked, a: Grid, second: Asked, b: Grid): void {
  const shape = (grid: Grid): string => `${grid.length} × ${grid[0]?.length ?? 0}`;
  if (shape(a) !== shape(b))
    fail({ kind: "shapes-differ", first: first.name, second: second.name, shapes: [shape(a), shape(b)] });
}

function nativeRange({ name, cells, reader }: Asked): Piece | null {
  if (cells instanceof Reference) {
    const values = rowsOf(cells.holds).flat();
    return values.some((value) => typeof value === "string" && value !== "") ? null : reader.nativeEach(piece(cells));
  }
  const written = (cell: unknown): string => (isEmpty(cell) ? "0" : number(reader.read(cell, name)).text);
  const rows = rowsOf(cells).map((row) => row.map(written).join(","));
  return rows.length === 1 && !rows[0]?.includes(",")
    ? { text: rows[0] as string, binds: binds.sum }
    : whole(`{${rows.join(";")}}`);
}
