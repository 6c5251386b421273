/** A cell's place, counted from 1. */
export interface Spot {
  readonly row: number;
  readonly column: number;
}

export interface Area {
  readonly top: number;
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
}

export const LAST_ROW = 1_048_576;
export const LAST_COLUMN = 16_384;

const names: string[] = [""];

export function columnName(column: number): string {
  for (let n = names.length; n <= column; n++)
    names.push((names[Math.floor((n - 1) / 26)] ?? "") + String.fromCharCode(65 + ((n - 1) % 26)));
  return names[column] ?? "";
}

export function columnNumber(name: string): number {
  let column = 0;
  for (let i = 0; i < name.length; i++) column = column * 26 + (name.charCodeAt(i) & 31);
  return column;
}

export const addressOf = ({ row, column }: Spot): string => columnName(column) + row;

export function readAddress(text: string): Spot | null {
  const match = /^\$?([A-Za-z]{1,3})\$?([1-9][0-9]{0,6})$/.exec(text);
  if (!match) return null;
  const spot = { column: columnNumber(match[1] ?? ""), row: Number(match[2]) };
  return spot.column <= LAST_COLUMN && spot.row <= LAST_ROW ? spot : null;
}

/** B4 or B4:C9. */
export function readArea(text: string): Area | null {
  const [first, last, more] = text.split(":");
  const from = readAddress(first ?? "");
  const to = last === undefined ? from : readAddress(last);
  if (!from || !to || more !== undefined) return null;
  return {
    top: Math.min(from.row, to.row),
    left: Math.min(from.column, to.column),
    bottom: Math.max(from.row, to.row),
    right: Math.max(from.column, to.column),
  };
}

export function areaText({ top, left, bottom, right }: Area): string {
  const first = addressOf({ row: top, column: left });
  const last = addressOf({ row: bottom, column: right });
  return first === last ? first : `${first}:${last}`;
}

export const isInside = ({ row, column }: Spot, area: Area): boolean =>
  row >= area.top && row <= area.bottom && column >= area.left && column <= area.right;

export const cellCount = (area: Area): number => (area.bottom - area.top + 1) * (area.right - area.left + 1);

export function* spotsOf(area: Area): Generator<Spot> {
  for (let row = area.top; row <= area.bottom; row++)
    for (let column = area.left; column <= area.right; column++) yield { row, column };
}

/** One number for a place; in reading order. */
export const spotKey = ({ row, column }: Spot): number => row * (LAST_COLUMN + 1) + column;

export const spotOfKey = (key: number): Spot => ({ row: Math.floor(key / (LAST_COLUMN + 1)), column: key % (LAST_COLUMN + 1) });
