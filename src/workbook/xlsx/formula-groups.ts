import { addressOf, type Area, cellCount, isInside, LAST_ROW, readArea, type Spot, spotKey } from "./address";
import { damaged } from "./file-fault";
import { sheetPieces, type StoredFormula } from "./sheet-pieces";
import { shiftFormula } from "./shift";
import { textBetween } from "./xml-text";

/** The cell that has the text of a formula which other cells share. */
export interface Master extends Spot {
  readonly text: string;
}

export interface ArrayFormula extends Spot {
  readonly area: Area;
  readonly type: "dynamic" | "fixed" | "table";
}

/** The formulas of a sheet that belong to more than one cell. */
export interface FormulaGroups {
  /** By the number of the shared formula. */
  readonly masters: ReadonlyMap<string, Master>;
  /** The places, as keys, of the cells that only point at a master. */
  readonly sharers: ReadonlyMap<string, readonly number[]>;
  readonly arrays: readonly ArrayFormula[];
}

/** Read before the cells are: one that shares a formula may stand before the one that has its text. */
export function readFormulaGroups(xml: string): FormulaGroups {
  const masters = new Map<string, Master>();
  const sharers = new Map<string, number[]>();
  const arrays: ArrayFormula[] = [];
  if (!/["'](?:shared|array|dataTable)["']/.test(xml)) return { masters, sharers, arrays };
  for (const piece of sheetPieces(xml)) {
    if (piece.kind !== "cell" || !piece.formula) continue;
    const { formula, row, column, isDynamic } = piece;
    if (formula.shared !== undefined) {
      if (hasText(formula)) masters.set(formula.shared, { row, column, text: ownText(xml, formula) });
      else {
        const keys = sharers.get(formula.shared);
        if (keys) keys.push(spotKey(piece));
        else sharers.set(formula.shared, [spotKey(piece)]);
      }
    } else if (formula.type !== "normal") {
      const type = formula.type === "dataTable" ? "table" : isDynamic ? "dynamic" : "fixed";
      arrays.push({ row, column, area: filledArea(piece, formula), type });
    }
  }
  return { masters, sharers, arrays };
}

/** Four whole columns: whoever goes through the cells that a formula fills comes to an end. */
const MOST_FILLED = 4 * LAST_ROW;

/** The range that an array formula fills, the cell itself where it does not say. */
export function filledArea(spot: Spot, { ref }: StoredFormula): Area {
  const area = readArea(ref ?? addressOf(spot));
  if (!area || !isInside(spot, area)) throw damaged(`the formula in ${addressOf(spot)} fills an unreadable range`);
  if (cellCount(area) > MOST_FILLED) throw damaged(`the formula in ${addressOf(spot)} fills millions of cells`);
  return area;
}

const hasText = ({ textStart, textEnd }: StoredFormula): boolean => textEnd > textStart;

const ownText = (xml: string, { textStart, textEnd }: StoredFormula): string => textBetween(xml, textStart, textEnd);

/** The formula of a cell as the file stores it; null for a what-if table, which has none to show. */
export function formulaText(xml: string, spot: Spot, formula: StoredFormula, masters: ReadonlyMap<string, Master>): string | null {
  if (formula.type === "dataTable") return null;
  if (formula.shared === undefined || hasText(formula)) return ownText(xml, formula) || null;
  const master = masters.get(formula.shared);
  if (!master) throw damaged(`the formula that ${addressOf(spot)} shares is missing`);
  return shiftFormula(master.text, spot.row - master.row, spot.column - master.column);
}
