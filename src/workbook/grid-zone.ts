import { type Zone, helpers } from "@odoo/o-spreadsheet";

export function zoneText({ left, top, right, bottom }: Zone): string {
  const first = helpers.toXC(left, top);
  const last = helpers.toXC(right, bottom);
  return first === last ? first : `${first}:${last}`;
}

export function zoneOf(range: string): Zone {
  if (!/^\$?[A-Z]{1,3}\$?[1-9]\d{0,6}(?::\$?[A-Z]{1,3}\$?[1-9]\d{0,6})?$/i.test(range)) throw new Error(`Cannot read "${range}" as a range: write it like B4 or B4:C9`);
  return helpers.toZone(range);
}
