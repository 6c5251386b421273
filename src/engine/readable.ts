import { parse } from "@odoo/o-spreadsheet";

/** False for a formula that no spreadsheet could make sense of. */
export function isReadable(formula: string): boolean {
  try {
    parse(formula);
    return true;
  } catch {
    return false;
  }
}
