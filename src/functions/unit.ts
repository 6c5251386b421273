import flows from "../../shared/tables/flow-units.json";
import { number, over, times } from "../core/expression/native";
import { type Piece, whole } from "../core/expression/notation";
import { Ratio, one } from "../core/expression/ratio";
import { show } from "../core/expression/show";
import { fail, quoted } from "../core/fault";
import { scales } from "../core/measure/fineness";
import { massUnits } from "../core/measure/mass";
import { UnitTable, type Unit } from "../core/measure/unit-table";
import { volumeUnits } from "../core/measure/volume";
import { type ArgumentNote, type BoundNumber, like, single } from "./bound";
import { Reference, held, isEmpty } from "./reference";
import { type Reader, aboveZero, literalText } from "./reader";

/** A unit, bound to the argument that names it. */
export interface BoundUnit {
  readonly notes: readonly ArgumentNote[];
  readonly table: UnitTable;
  read(): Unit;
  /** Base units in one of it. */
  native(): Piece;
  nativeSymbol(): string;
}

export const massUnit = (name: string, cell: unknown, otherwise?: BoundUnit): BoundUnit =>
  boundUnit(massUnits, name, cell, otherwise);
export const volumeUnit = (name: string, cell: unknown, otherwise?: BoundUnit): BoundUnit =>
  boundUnit(volumeUnits, name, cell, otherwise);

const finenessScales = new UnitTable(
  Object.fromEntries(
    Object.entries(scales).map(([symbol, size]) => [symbol, { size, spellings: [symbol, ...(symbol === "ppt" ? ["‰"] : [])] }]),
  ),
);
export const finenessScale = (name: string, cell: unknown): BoundUnit =>
  boundUnit(finenessScales, name, cell, fixed(finenessScales, "ppt"));
export const partsPerThousand: BoundUnit = fixed(finenessScales, "ppt");

const flowUnits = new UnitTable(
  Object.fromEntries(
    Object.entries(flows.units).map(([symbol, { litresPerHour, spellings }]) => [symbol, { size: Ratio.of(litresPerHour), spellings }]),
  ),
);
export const flowUnit = (name: string, cell: unknown): BoundUnit => boundUnit(flowUnits, name, cell, fixed(flowUnits, "cfm"));

/** A unit that no argument chooses. */
export function fixed(table: UnitTable, symbol: string): BoundUnit {
  const unit = table.find(symbol, "unit");
  return {
    notes: [],
    table,
    read: () => unit,
    native: () => number(unit.size),
    nativeSymbol: () => literalText(symbol),
  };
}
export const troyOunce = fixed(massUnits, "ozt");
export const gram = fixed(massUnits, "g");
export const kilogram = fixed(massUnits, "kg");
export const litre = fixed(volumeUnits, "L");

/** `otherwise` is the unit of an argument that may be left out. */
const boundUnit = (table: UnitTable, name: string, cell: unknown, otherwise?: BoundUnit): BoundUnit => new NamedUnit(table, name, cell, otherwise);

class NamedUnit implements BoundUnit {
  constructor(
    readonly table: UnitTable,
    private readonly name: string,
    private readonly cell: unknown,
    private readonly otherwise: BoundUnit | undefined,
  ) {}

  get notes(): readonly ArgumentNote[] {
    const { name, table, otherwise } = this;
    return [{ name, wants: table.wants, ...(otherwise ? { otherwise: otherwise.notes[0]?.name ?? otherwise.read().symbol } : {}) }];
  }

  read(): Unit {
    const { name, table, otherwise } = this;
    const value = held(this.cell);
    if (isEmpty(value)) return otherwise?.read() ?? fail({ kind: "missing", name, wants: table.wants });
    return typeof value === "string" ? table.find(value, name) : fail({ kind: "unfit", name, got: quoted(value), wants: table.wants });
  }

  native(): Piece {
    if (this.cell instanceof Reference) return lookUp(this.table, this.cell, this.otherwise);
    return isEmpty(this.cell) && this.otherwise ? this.otherwise.native() : number(this.read().size);
  }

  nativeSymbol(): string {
    if (this.cell instanceof Reference) return symbolIn(this.cell, this.otherwise);
    return isEmpty(this.cell) && this.otherwise ? this.otherwise.nativeSymbol() : literalText(this.read().symbol);
  }
}

const symbolIn = ({ text }: Reference, otherwise: BoundUnit | undefined): string =>
  otherwise ? `IF(${text}="",${otherwise.nativeSymbol()},${text})` : text;

/** A unit named in a cell stays live: the twin looks it up by its symbol, and by the spelling that stands there now. */
function lookUp(table: UnitTable, cell: Reference, otherwise: BoundUnit | undefined): Piece {
  const now = typeof cell.holds === "string" && !table.symbols.includes(cell.holds) ? [cell.holds] : [];
  const spellings = [...table.symbols, ...now];
  const sizes = spellings.map((spelling) => number(table.find(spelling, "unit").size).text).join(",");
  const found = `INDEX({${sizes}},1,MATCH(${cell.text},{${spellings.map(literalText).join(",")}},0))`;
  return whole(otherwise ? `IF(${cell.text}="",${otherwise.native().text},${found})` : found);
}

/** A number with its unit, in the base unit of its kind (grams, litres) or in another that is named. */
export const withUnit = (value: BoundNumber, unit: BoundUnit, into?: BoundUnit): BoundNumber => new WithUnit(value, unit, into);

class WithUnit implements BoundNumber {
  constructor(
    private readonly value: BoundNumber,
    private readonly given: BoundUnit,
    private readonly into: BoundUnit | undefined,
  ) {}

  get notes(): readonly ArgumentNote[] {
    return [...this.value.notes, ...this.given.notes];
  }

  get unit(): NonNullable<BoundNumber["unit"]> {
    return inUnit(this.given);
  }

  read(): Ratio {
    const number = this.value.read();
    const given = this.given.read();
    const into = this.into?.read();
    if (!into) return number.times(given.size);
    return given.symbol === into.symbol ? number : number.times(given.size).over(into.size);
  }

  native(): Piece | null {
    const [number, size] = [this.value.native(), this.given.native()];
    if (!number) return null;
    if (!this.into) return times(number, size);
    return size.text === this.into.native().text ? number : over(times(number, size), this.into.native());
  }

  words(): string {
    const { symbol } = this.given.read();
    const base = (this.into?.read() ?? this.given.table.units.find(({ size }) => size.compare(one) === 0))?.symbol;
    const given = `${this.value.words()} ${symbol}`;
    return symbol === base ? given : `${given} = ${show(this.read())} ${base}`;
  }
}

const inUnit = (unit: BoundUnit): NonNullable<BoundNumber["unit"]> => ({ symbol: () => unit.read().symbol, native: () => unit.nativeSymbol() });

/** How many troy ounces make one of a unit of mass, in float64; null where that must be looked at row by row. */
export function ouncesIn(unit: unknown): number | null {
  const found = typeof unit === "string" ? massUnits.lookUp(unit) : undefined;
  return found ? found.size.over(troyOunce.read().size).toNumber() : null;
}

/** A weight with its unit, in grams. */
export const mass = (name: string, cell: unknown, unit: BoundUnit, reader: Reader = aboveZero): BoundNumber =>
  withUnit(single(name, cell, reader), unit);

/** A volume with its unit, in litres. */
export const volume = (name: string, cell: unknown, unit: BoundUnit): BoundNumber =>
  withUnit(single(name, cell, aboveZero), unit);

/** A weight with its unit, in troy ounces. */
export const massInTroyOunces = (name: string, cell: unknown, unit: BoundUnit): BoundNumber =>
  withUnit(single(name, cell, aboveZero), unit, troyOunce);

/** The same number once more, as it was given: what is charged by the given unit is counted in it. */
export const asGiven = (name: string, cell: unknown, unit: BoundUnit): BoundNumber => like(single(name, cell, aboveZero), { unit: inUnit(unit) });

/** Grams in one of a unit. */
export const gramsInOne = (unit: BoundUnit): BoundNumber => ({
  notes: unit.notes,
  unit: inUnit(unit),
  read: () => unit.read().size,
  native: () => unit.native(),
  words: () => `${show(unit.read().size)} g in one ${unit.read().symbol}`,
});

/** A result's unit counted in another: for a formula whose result is in troy ounces. */
export const countedIn = (unit: BoundUnit, base: BoundUnit): BoundUnit =>
  like(unit, {
    read: () => ({ symbol: unit.read().symbol, size: unit.read().size.over(base.read().size) }),
    native: () => (unit.native().text === base.native().text ? number(one) : over(unit.native(), base.native())),
  });
