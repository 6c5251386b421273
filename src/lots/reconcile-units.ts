import { massUnits } from "../core/measure/mass";
import { volumeUnits } from "../core/measure/volume";
import { type FieldId, type Kind, fieldOf } from "./fields";
import type { ListedCell, ListedLot } from "./listed-lot";
import type { ColumnMatch } from "./list";
import { type Contradiction, about, isFew, lots as countOf, short } from "./reconcile-contradiction";
import { offScale } from "./reconcile-scale";
import { computed } from "./reconcile-settlement";
import { unitIn } from "./words";

/** Units, scales and texts that differ from what their column is. */
export const unitContradictions = (matches: readonly ColumnMatch[], all: readonly ListedLot[]): readonly Contradiction[] => [
  ...unitColumn(matches, all),
  ...matches.flatMap((match) => [...textsAmongNumbers(match, all), ...shownInOtherUnit(match, all)]),
  ...(["fineness", "payable", "recovery"] as const).flatMap((field) => exceptions(all, field, (lot) => offScale(lot, field))),
];

/** Contradictions in a column, unless half of it or more would be one: then the column is understood wrongly. */
function exceptions(all: readonly ListedLot[], field: FieldId, sentence: (lot: ListedLot, cell: ListedCell) => string | null): readonly Contradiction[] {
  const filled = all.filter((lot) => lot.value(field) !== null);
  const found = filled.flatMap((lot) => {
    const cell = lot.cell(field);
    const said = cell && sentence(lot, cell);
    return cell && said ? [{ kind: "unit" as const, ...about(lot, cell), sentence: said }] : [];
  });
  return found.length * 2 <= filled.length ? found : [];
}

/** The unit column: no unit, none that is known, or another than nearly all lots have. */
function unitColumn(matches: readonly ColumnMatch[], all: readonly ListedLot[]): readonly Contradiction[] {
  const weighed = matches.filter(({ unit }) => unit?.from === "unit column").map(({ field }) => field);
  if (weighed.length === 0) return [];
  const symbols = new Map<string, number>();
  const units = all.map((lot) => {
    const written = String(lot.value("unit") ?? "").trim();
    const unit = unitIn(written);
    const symbol = unit?.kind === "mass" ? unit.unit : null;
    if (symbol !== null) symbols.set(symbol, (symbols.get(symbol) ?? 0) + 1);
    return { lot, written, symbol, asks: unit?.asks ?? null, hasWeight: weighed.some((field) => typeof lot.value(field) === "number") };
  });
  const known = [...symbols.values()].reduce((sum, count) => sum + count, 0);
  const [usual] = [...symbols].sort(([, a], [, b]) => b - a);
  return units.flatMap(({ lot, written, symbol, asks, hasWeight }) => {
    const cell = lot.cell("unit");
    if (!cell || !hasWeight) return [];
    const say = (sentence: string): Contradiction[] => [{ kind: "unit", ...about(lot, cell), sentence }];
    if (written === "") return say("There are weights in this row and no unit");
    if (asks !== null) return say(asks);
    if (symbol === null) return say(`‘${written}’ is no unit of weight: write one such as g, kg, lb or ozt`);
    const here = symbols.get(symbol) ?? 0;
    const isRare = usual !== undefined && symbol !== usual[0] && isFew(known - usual[1], known);
    return isRare ? say(`This lot is in ${symbol}, as ${here === 1 ? "no other is" : `${here - 1} more are`}; ${countOf(usual[1])} are in ${usual[0]}: look whether its weights are`) : [];
  });
}

const COUNTED: ReadonlySet<Kind> = new Set(["mass", "volume", "per mass", "money", "count"]);

/** "12 lb" where numbers stand: no sum and no function takes it for one. */
function textsAmongNumbers({ field, unit }: ColumnMatch, all: readonly ListedLot[]): readonly Contradiction[] {
  if (!COUNTED.has(fieldOf(field).kind)) return [];
  return exceptions(all, field, (lot, { match }) => {
    const held = lot.value(field);
    const [, digits, words = ""] = typeof held === "string" ? (/^[^\p{L}\d]{0,3}(\d[\d.,\s]*)\s*([^\d]*)$/u.exec(held.trim()) ?? []) : [];
    if (digits === undefined) return null;
    const text = `‘${String(held).trim()}’ is a text, and sums and functions pass over it or refuse it`;
    const symbol = unit?.from === "unit column" ? null : (unit?.symbol ?? null);
    const own = massUnits.lookUp(words)?.symbol ?? volumeUnits.lookUp(words)?.symbol;
    if (symbol === null || own === undefined) return `${text}: write the number alone`;
    if (own === symbol) return `${text}: write ${digits.trim()} alone, since ‘${match.column.heading}’ says ${symbol}`;
    const number = /^\d+(?:\.\d+)?$/.test(digits.trim()) ? Number(digits) : null;
    const inColumn = number === null ? null : computed(massUnits.lookUp(own) ? "WEIGHT" : "VOLUME", number, own, symbol);
    return `${text}; the column is in ${symbol}${inColumn === null ? ": write the number alone, in that unit" : `: write ${short(inColumn)}`}`;
  });
}

/** A number that is shown with a unit which its column has not. */
function shownInOtherUnit({ field, unit }: ColumnMatch, all: readonly ListedLot[]): readonly Contradiction[] {
  const symbol = unit?.from === "unit column" ? null : unit?.symbol;
  if (fieldOf(field).kind !== "mass" || !symbol) return [];
  return exceptions(all, field, (_, { reading, match }) => {
    const written = /"\s*(\p{L}[\p{L}. ]{0,12})"/u.exec(reading.numberFormat ?? "")?.[1];
    const shown = written === undefined ? undefined : massUnits.lookUp(written)?.symbol;
    return shown !== undefined && shown !== symbol ? `It is shown in ${shown}, and the column ‘${match.column.heading}’ is in ${symbol}` : null;
  });
}
