import { helpers } from "@odoo/o-spreadsheet";

/** The addresses of a range's cells, row by row. */
export function addresses(range: string): string[] {
  const { top, bottom, left, right } = helpers.toZone(range);
  const all: string[] = [];
  for (let row = top; row <= bottom; row++) for (let col = left; col <= right; col++) all.push(helpers.toXC(col, row));
  return all;
}
