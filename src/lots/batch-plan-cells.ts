import { Ratio } from "../core/expression/ratio";
import { fail, quoted } from "../core/fault";
import type { Reference } from "../functions/reference";
import { type Ends, type Figure, each, fed, figure, inOrder, isRange, same } from "./batch-plan-figure";
import { Lacking, type Told, needed, told, together } from "./batch-plan-needs";
import type { Weight } from "./plausible";
import type { Shop } from "./shop";

export interface PlanLot {
  readonly net: Weight;
  readonly fineness: number | string;
  readonly lot: string;
}

/** What is decided for this batch alone; what is absent is left open. */
export interface BatchChoices {
  /** The share of the metal that dissolves by the strong route; without it both ends are planned. */
  readonly strongShare?: number | string;
  /** All the water that is added before the drop. */
  readonly water?: { readonly value: number; readonly unit: string };
  readonly pails?: number;
  /** In mol. */
  readonly freeAcid?: number;
  readonly dropHours?: number;
  /** A spreadsheet's number of a day and time. */
  readonly start?: number;
  readonly barFineness?: number | string;
  readonly takesCopperOut?: boolean;
}

/** The figures that feed others, each worked out when it is first asked for. */
export interface PlanCells {
  readonly lot: PlanLot;
  readonly shop: Shop;
  readonly choices: BatchChoices;
  /** In which volumes are told: that of the pail. */
  readonly volumeUnit: string;
  /** In which copper is told: that of a bar. */
  readonly copperUnit: string;
  /** Fine silver, in troy ounces. */
  silver(): Figure;
  acid(): Ends<Figure>;
  /** All the liquor when the drop begins. */
  liquor(): Ends<Reference>;
  load(): Ends<Figure>;
  copper(): Figure;
  /** Until the drop is down to its target. */
  dropHours(): Ends<Figure>;
  /** Those that the user gives, else those until the target. */
  hours(): Ends<Reference>;
  /** Copper in the charge and what free acid takes from the bars, in the unit of the lot. */
  otherCopper(): Reference;
  spentCopper(): Ends<Figure>;
}

export const added = (a: number, b: number): number => Ratio.of(a).plus(Ratio.of(b)).toNumber();
export const less = (a: number, b: number): number => Ratio.of(a).minus(Ratio.of(b)).toNumber();
export const product = (a: number, b: number): number => Ratio.of(a).times(Ratio.of(b)).toNumber();

/** The name of one end of a figure, for the working of another. */
export const endName = <T>(name: string, ends: Ends<T>, end: T): string => (isRange(ends) ? `${name}, at ${end === ends.least ? "least" : "most"}` : name);

/** The ends of a figure, as they feed another. */
export const feeding = (name: string, ends: Ends<Figure>): Ends<Reference> => each(ends, (end) => fed(endName(name, ends, end), end.value));

export function planCells(lot: PlanLot, shop: Shop, choices: BatchChoices): PlanCells {
  const { net, fineness } = lot;
  const volumeUnit = told(shop, "pail")?.unit ?? "L";
  const copperUnit = told(shop, "copperBar")?.unit ?? net.unit;

  const silver = once(() => figure("FINEWEIGHT", net.value, net.unit, fineness, "ozt"));

  const acid = once(() => {
    const { acidStrength } = needed(shop, "acidStrength");
    const at = (share: number | string): Figure =>
      figure("NITRIC", net.value, net.unit, fineness, acidStrength.cell, share, told(shop, "acidExcess")?.cell ?? null, volumeUnit);
    return choices.strongShare === undefined ? { least: at(0), most: at(1) } : same(at(choices.strongShare));
  });

  const liquor = once(() => {
    const { water } = choices;
    const start = told(shop, "dropStart");
    const [poured] = together(acid, () => {
      if (!water && !start) throw new Lacking([{ in: "batch", choice: "water" }]);
    });
    const named = feeding("nitric acid", poured);
    if (water) {
      if (water.value === 0) return named;
      const more = water.unit === volumeUnit ? water.value : figure("VOLUME", water.value, water.unit, volumeUnit).value;
      return each(poured, (end) => fed(`${endName("nitric acid", poured, end)} + water`, added(end.value, more)));
    }
    const thinned = thinnedTo(numberOf(start, "silver per litre at the start"));
    // Acid alone can be more than that; nothing is taken out of it.
    const isFilled = ({ value }: Figure): boolean => value >= Number(thinned.holds);
    return isFilled(poured.least) ? named : isFilled(poured.most) ? { least: thinned, most: named.most } : same(thinned);
  });

  /** The volume in which the silver stands at a load. */
  function thinnedTo(load: number): Reference {
    const grams = figure("FINEWEIGHT", net.value, net.unit, fineness, "g").value;
    return fed("silver ÷ silver per litre at the start", figure("VOLUME", grams / load, "L", volumeUnit).value);
  }

  const load = once(() => inOrder(each(liquor(), (volume) => figure("SILVERLOAD", fed("fine silver", silver().value), "ozt", volume, volumeUnit))));

  const copper = once(() =>
    figure("COPPER", fed("fine silver", silver().value), "ozt", told(shop, "copperAllowance")?.cell ?? null, choices.freeAcid ?? null, copperUnit),
  );

  const dropHours = once(() => {
    const [loads, { dropTarget, dropRate }] = together(load, () => needed(shop, "dropTarget", "dropRate"));
    return inOrder(each(feeding("silver per litre", loads), (start) => figure("DROPHOURS", start, dropTarget.cell, dropRate.cell)));
  });

  const hours = once(() => (choices.dropHours === undefined ? feeding("hours of the drop", dropHours()) : same(fed("your hours", choices.dropHours))));

  const otherCopper = once(() => {
    const own = less(net.value, figure("FINEWEIGHT", net.value, net.unit, fineness, net.unit).value);
    if (!choices.freeAcid) return fed("net weight − fine weight", own);
    const taken = (freeAcid: number): number => figure("COPPER", silver().value, "ozt", null, freeAcid, net.unit).value;
    return fed("net weight − fine weight + copper that free acid takes", added(own, less(taken(choices.freeAcid), taken(0))));
  });

  const spentCopper = once(() =>
    inOrder(each(liquor(), (volume) => figure("SPENTCOPPER", fed("fine silver", silver().value), "ozt", otherCopper(), net.unit, volume, volumeUnit))),
  );

  return { lot, shop, choices, volumeUnit, copperUnit, silver, acid, liquor, load, copper, dropHours, hours, otherCopper, spentCopper };
}

/** A value of the shop with which an ordinary product or quotient is made. */
export function numberOf(value: Told | null, name: string): number {
  const number = value?.cell.holds;
  return typeof number === "number" && number > 0 ? number : fail({ kind: "unfit", name, got: quoted(number), wants: "a number above 0" });
}

function once<T>(work: () => T): () => T {
  let done: { readonly result: T } | undefined;
  return () => (done ??= { result: work() }).result;
}
