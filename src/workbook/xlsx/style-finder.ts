import { readAddress, spotKey } from "./address";
import { type Columns, sheetPieces } from "./sheet-pieces";

/** The place in the list of cell formats of each of these cells, whether it is there or would be when something is written. */
export function styleFinder(xml: string, cells: readonly string[]): (cell: string) => number {
  const wanted = new Map<number, number | undefined>();
  const rows = new Map<number, string | undefined>();
  for (const cell of cells) {
    const spot = readAddress(cell);
    if (!spot) continue;
    wanted.set(spotKey(spot), undefined);
    rows.set(spot.row, undefined);
  }
  const columns: Columns[] = [];
  for (const piece of sheetPieces(xml))
    if (piece.kind === "columns") columns.push(piece);
    else if (piece.kind === "row" && rows.has(piece.row)) rows.set(piece.row, piece.style);
    else if (piece.kind === "cell" && wanted.has(spotKey(piece))) wanted.set(spotKey(piece), Number(piece.style ?? 0));
  return (cell) => {
    const spot = readAddress(cell);
    if (!spot) return 0;
    const { row, column } = spot;
    return wanted.get(spotKey(spot)) ?? Number(rows.get(row) ?? columns.find(({ min, max }) => column >= min && column <= max)?.style ?? 0);
  };
}
