import { find } from "../../catalogue/catalogue";
import { expression } from "../../formulas/expression";
import { lotNames, wholeCall } from "../../formulas/lot-calls";
import type { BookPort, CellReading } from "../../workbook/port";
import { type Area, type Spot, addressOf, areaText } from "../../workbook/xlsx/address";
import { evaluate } from "../../explaining/evaluate";
import { type Standing, readReferences } from "../../explaining/references";

/** Where the formula stands that gives a cell its value. */
export interface FoundFormula {
  readonly on: Standing;
  readonly shows: CellReading;
}

/** The selected cell's own formula, or the one whose result spills into it; else what the cell itself holds. */
export async function findFormula(on: Standing, port: BookPort): Promise<FoundFormula | CellReading> {
  const [[own] = []] = await port.read({ sheet: on.sheet, range: addressOf(on.spot) });
  if (!own) return { value: null, formula: null, error: false };
  if (own.formula !== null) return lotNames(own.formula).length > 0 ? { on, shows: own } : own;
  return own.value === null ? own : ((await spilledFrom(on, port)) ?? own);
}

const ROWS_ABOVE = 60;
const COLUMNS_LEFT = 12;
/** A column may spill over this many rows. */
const LONGEST_COLUMN = 20_000;

async function spilledFrom({ sheet, spot }: Standing, port: BookPort): Promise<FoundFormula | null> {
  const { row, column } = spot;
  const statement = { top: Math.max(1, row - ROWS_ABOVE), bottom: row, left: Math.max(1, column - COLUMNS_LEFT), right: column };
  const long = { top: Math.max(1, row - LONGEST_COLUMN), bottom: Math.max(1, statement.top - 1), left: column, right: column };
  for (const area of long.bottom < statement.top ? [statement, long] : [statement]) {
    const rows = await port.read({ sheet, range: areaText(area) });
    const nearestFirst = spillingIn(sheet, area, rows).sort((a, b) => away(a.on.spot, spot) - away(b.on.spot, spot));
    for (const formula of nearestFirst) if (await reaches(formula, spot, port)) return formula;
  }
  return null;
}

const away = (a: Spot, b: Spot): number => b.row - a.row + (b.column - a.column);

/** The cells in which a function of ours stands alone that may fill others. */
const spillingIn = (sheet: string, { top, left }: Area, rows: readonly (readonly CellReading[])[]): FoundFormula[] =>
  rows.flatMap((row, r) =>
    row.flatMap((shows, c) => {
      if (shows.formula === null || lotNames(shows.formula).length === 0) return [];
      const call = wholeCall(shows.formula);
      return call && find(call.name)?.spills ? [{ on: { sheet, spot: { row: top + r, column: left + c } }, shows }] : [];
    }),
  );

async function reaches({ on, shows }: FoundFormula, { row, column }: Spot, port: BookPort): Promise<boolean> {
  const formula = shows.formula ?? "";
  const found = evaluate(expression(formula.slice(1)), await readReferences(formula, on, port));
  if (found.kind !== "known" || !Array.isArray(found.holds)) return false;
  const rows = found.holds as readonly unknown[][];
  return row < on.spot.row + rows.length && column < on.spot.column + (rows[0]?.length ?? 0);
}
