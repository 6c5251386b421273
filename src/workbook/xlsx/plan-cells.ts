import { type Area, addressOf, areaText, cellCount, isInside, LAST_COLUMN, LAST_ROW, readAddress } from "./address";
import { type Spot, spotKey, spotOfKey, spotsOf } from "./address";
import type { CellValue, StyledChange } from "./change";
import { FileFault } from "./file-fault";
import type { ArrayFormula, FormulaGroups } from "./formula-groups";
import { shiftFormula } from "./shift";
import { toStored } from "./stored-formula";
import type { CellPlan, FormulaPlan } from "./write-cell";

export interface SheetPlan {
  /** In reading order. */
  readonly cells: readonly CellPlan[];
  /** What earlier results filled: cells there that the plan does not name lose their values. */
  readonly released: readonly Area[];
}

/** From the changes asked of a sheet, what becomes of every cell that they touch. */
export function planCells(changes: readonly StyledChange[], groups: FormulaGroups): SheetPlan {
  const asked = byPlace(changes);
  const arrayAt = arrayFinder(groups.arrays);
  const plans = new Map<number, CellPlan>();
  /** Cells whose formula is set or taken away. */
  const rewritten = new Set<number>();
  const results: Result[] = [];

  for (const [key, change] of asked) {
    const spot = spotOfKey(key);
    const array = arrayAt(spot);
    const isAnchor = array !== undefined && spotKey(array) === key;
    const fills = change.spill && filledBy(change, spot, change.spill);
    const keepsArea = fills && isAnchor && (array.type === "fixed" || areaText(array.area) === areaText(fills));
    const keepsFormula = change.formula === undefined && (!fills || keepsArea);
    if (!keepsFormula) rewritten.add(key);
    plans.set(key, {
      ...spot,
      ...(keepsFormula ? {} : { formula: formulaPlan(change, fills) }),
      content: change,
      ...(change.style === undefined ? {} : { style: change.style }),
      isSpilledInto: change.formula === undefined && array !== undefined && !isAnchor,
    });
    const area = keepsFormula && array ? array.area : fills;
    if (change.spill && area) results.push({ change, anchor: spot, rows: change.spill, area });
  }

  for (const result of results) planResult(result, arrayAt, asked, plans);
  const released = releaseArrays(rewritten, arrayAt, changes[0]?.sheet ?? "");
  rehomeShared(groups, rewritten, plans);
  return { cells: [...plans.values()].sort((a, b) => spotKey(a) - spotKey(b)), released };
}

interface Result {
  readonly change: StyledChange;
  readonly anchor: Spot;
  readonly rows: NonNullable<StyledChange["spill"]>;
  readonly area: Area;
}

function byPlace(changes: readonly StyledChange[]): Map<number, StyledChange> {
  const asked = new Map<number, StyledChange>();
  for (const change of changes) {
    const spot = readAddress(change.cell);
    if (!spot) throw new FileFault(`Cannot change ${change.sheet}!${change.cell}: write a cell of the sheet, such as B4`);
    const key = spotKey(spot);
    if (asked.has(key)) throw twice(change, spot);
    asked.set(key, change);
  }
  return asked;
}

const twice = ({ sheet }: StyledChange, spot: Spot): FileFault =>
  new FileFault(`Cannot change ${sheet}!${addressOf(spot)} in two ways at once: give it one content`);

/** Most array formulas fill their own cell alone: those are found by their place. */
function arrayFinder(arrays: readonly ArrayFormula[]): (spot: Spot) => ArrayFormula | undefined {
  const anchors = new Map(arrays.map((array) => [spotKey(array), array]));
  const wide = arrays.filter(({ area }) => cellCount(area) > 1);
  return (spot) => anchors.get(spotKey(spot)) ?? wide.find(({ area }) => isInside(spot, area));
}

function filledBy({ sheet, cell, formula }: StyledChange, { row, column }: Spot, rows: Result["rows"]): Area {
  const width = rows[0]?.length ?? 0;
  const area = { top: row, left: column, bottom: row + rows.length - 1, right: column + width - 1 };
  const name = `${sheet}!${cell}`;
  if (formula === null) throw new FileFault(`Cannot fill cells from ${name} without a formula: give it one, or write each cell`);
  if (width === 0 || rows.some((cells) => cells.length !== width))
    throw new FileFault(`Cannot fill cells from ${name}: its rows are empty or differ in length: give rows of one length`);
  if (area.bottom > LAST_ROW || area.right > LAST_COLUMN)
    throw new FileFault(`Cannot fill cells from ${name}: the result reaches over the edge of the sheet: put the formula elsewhere`);
  return area;
}

function formulaPlan({ formula }: StyledChange, area: Area | undefined): FormulaPlan | null {
  if (area) return { kind: "spill", ref: areaText(area), ...(formula ? { text: toStored(formula) } : {}) };
  return typeof formula === "string" ? { kind: "plain", text: toStored(formula) } : null;
}

function planResult(
  { change, anchor, rows, area }: Result,
  arrayAt: (spot: Spot) => ArrayFormula | undefined,
  asked: ReadonlyMap<number, StyledChange>,
  plans: Map<number, CellPlan>,
): void {
  for (const spot of spotsOf(area)) {
    const key = spotKey(spot);
    if (key === spotKey(anchor)) continue;
    const other = asked.get(key);
    const isEmptied = other !== undefined && !other.formula && (other.value ?? "") === "";
    if (plans.has(key) && !isEmptied) throw twice(change, spot);
    const filling = arrayAt(spot);
    const isFilledAlready = filling !== undefined && spotKey(filling) === spotKey(anchor);
    const content = resultAt(rows, spot.row - anchor.row, spot.column - anchor.column);
    plans.set(key, { ...spot, ...(isEmptied ? { formula: null } : {}), content, isSpilledInto: true, mustBeFree: !isFilledAlready && !isEmptied });
  }
}

/**
 * An array formula entered with Ctrl+Shift+Enter has a range of its own, whatever the shape of its result: a single row
 * or column is repeated over it, and what the result does not reach is #N/A.
 */
function resultAt(rows: Result["rows"], row: number, column: number): CellValue {
  const cells = rows[rows.length === 1 ? 0 : row];
  return cells?.[cells.length === 1 ? 0 : column] ?? { value: "#N/A", error: true };
}

/** Looks at every array formula of which a cell is rewritten, and returns what spilled results no longer fill. */
function releaseArrays(rewritten: ReadonlySet<number>, arrayAt: (spot: Spot) => ArrayFormula | undefined, sheet: string): Area[] {
  const touched = new Map<ArrayFormula, number>();
  for (const key of rewritten) {
    const array = arrayAt(spotOfKey(key));
    if (array) touched.set(array, (touched.get(array) ?? 0) + 1);
  }
  const released: Area[] = [];
  for (const [array, count] of touched) {
    const { type, area } = array;
    const range = `${sheet}!${areaText(area)}`;
    if (type === "table") throw new FileFault(`Cannot change a part of the what-if table ${range}: change it in Excel`);
    if (type === "fixed" && count < cellCount(area))
      throw new FileFault(`Cannot change a part of the array formula that fills ${range}: change all of these cells at once`);
    if (type === "fixed") continue;
    if (!rewritten.has(spotKey(array)))
      throw new FileFault(`Cannot change a part of the result that fills ${range}: change its formula in ${addressOf(array)}`);
    released.push(area);
  }
  return released;
}

/** Where the cell goes that held the text of a shared formula, the next one that shares it takes the text over. */
function rehomeShared({ masters, sharers }: FormulaGroups, rewritten: ReadonlySet<number>, plans: Map<number, CellPlan>): void {
  for (const [number, master] of masters) {
    if (!rewritten.has(spotKey(master))) continue;
    const left = (sharers.get(number) ?? []).filter((key) => !rewritten.has(key)).map(spotOfKey);
    const [heir] = left;
    if (!heir) continue;
    const area = { top: heir.row, left: heir.column, bottom: heir.row, right: heir.column };
    for (const { row, column } of left) {
      area.left = Math.min(area.left, column);
      area.bottom = Math.max(area.bottom, row);
      area.right = Math.max(area.right, column);
    }
    const text = shiftFormula(master.text, heir.row - master.row, heir.column - master.column);
    const key = spotKey(heir);
    plans.set(key, { ...plans.get(key), ...heir, formula: { kind: "shared", text, number, ref: areaText(area) } });
  }
}
