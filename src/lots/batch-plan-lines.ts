import { figure, fed, each, inOrder, rows, same } from "./batch-plan-figure";
import { type PlanCells, added, feeding, less, numberOf, product } from "./batch-plan-cells";
import { type PlanGroup, type PlanLine, type PlanContent, figures, line } from "./batch-plan-line";
import { Lacking, needed, told, together } from "./batch-plan-needs";

const linesOf = (group: PlanGroup) => (id: string, label: string, content: () => PlanContent): PlanLine => line(group, id, label, content);

/** In gallons and cubic feet air is reckoned in cubic feet too. */
const airUnit = (volumeUnit: string): "cfm" | "m3/h" => (volumeUnit === "gal" || volumeUnit === "ft3" ? "cfm" : "m3/h");

export function dissolvingLines(cells: PlanCells): PlanLine[] {
  const { lot: { net, fineness }, shop, choices, volumeUnit } = cells;
  const of = linesOf("Dissolving");
  const fume = () => {
    const at = (share: number | string) => figure("FUME", net.value, net.unit, fineness, share);
    return choices.strongShare === undefined ? inOrder({ least: at(0), most: at(1) }) : same(at(choices.strongShare));
  };
  return [
    of("acid", "Nitric acid", () => figures(cells.acid(), volumeUnit)),
    of("pails", "Pails", () => figures(pailsNeeded(cells), "")),
    of("fume", "Nitrogen oxides", () => figures(fume(), "mol")),
    of("air", "Air to dilute them", () => {
      const { fumeHours, airLimit } = needed(shop, "fumeHours", "airLimit");
      const unit = airUnit(volumeUnit);
      return figures(each(feeding("nitrogen oxides", fume()), (gas) => figure("DILUTIONAIR", gas, fumeHours.cell, airLimit.cell, told(shop, "airSafety")?.cell ?? null, unit)), unit);
    }),
  ];
}

export function pailsNeeded({ shop, liquor, volumeUnit }: PlanCells) {
  const [volumes, { pail }] = together(liquor, () => needed(shop, "pail"));
  const ends = each(volumes, (volume) => figure("VESSELS", volume, volumeUnit, pail.cell, pail.unit, told(shop, "pailFill")?.cell ?? null));
  return ends.least.value === ends.most.value ? same(ends.most) : ends;
}

export function dropLines(cells: PlanCells): PlanLine[] {
  const { shop, choices, volumeUnit, copperUnit } = cells;
  const of = linesOf("Drop");
  return [
    of("silver", "Fine silver in solution", () => figures(same(cells.silver()), "ozt")),
    of("load", "Silver per litre", () => figures(cells.load(), "g/L")),
    of("copper", "Copper that it takes", () => figures(same(cells.copper()), copperUnit)),
    of("copperBars", "Copper bars to hang", () => {
      const { copperBar } = needed(shop, "copperBar");
      return figures(same(figure("COPPERBARS", fed("copper that the drop takes", cells.copper().value), copperUnit, copperBar.cell, copperBar.unit, told(shop, "copperStub")?.cell ?? null)), "");
    }),
    choices.dropHours === undefined
      ? of("dropHours", "Hours of the drop", () => figures(cells.dropHours(), "h"))
      : of("dropped", "Share dropped by then", () => figures(same(figure("DROPPED", cells.hours().most, needed(shop, "dropRate").dropRate.cell)), "share")),
    of("times", "When", () => {
      const [{ settleHours }, hours, start] = together(
        () => needed(shop, "settleHours"),
        cells.hours,
        () => choices.start ?? lacks("start"),
      );
      const { rows: times, ...worked } = rows("DROPPLAN", start, hours.most, settleHours.cell);
      return { kind: "rows", rows: times.map(([label, time]) => ({ label: String(label), value: Number(time), unit: null })), workings: [{ end: null, ...worked }] };
    }),
    of("salt", "Salt for the last silver", () => {
      const { name, grams } = lastSilver(cells);
      return figures(same(figure("SALT", fed(name, grams), "g", told(shop, "saltExcess")?.cell ?? null)), "g");
    }),
  ];

  function lastSilver({ lot: { net, fineness } }: PlanCells): { readonly name: string; readonly grams: number } {
    if (choices.dropHours !== undefined) {
      const { dropRate } = needed(shop, "dropRate");
      const share = less(1, figure("DROPPED", choices.dropHours, dropRate.cell).value);
      return { name: "fine silver × share not dropped", grams: product(figure("FINEWEIGHT", net.value, net.unit, fineness, "g").value, share) };
    }
    const [volumes, { dropTarget }] = together(cells.liquor, () => needed(shop, "dropTarget"));
    const litres = figure("VOLUME", volumes.most, volumeUnit, "L").value;
    return { name: "silver per litre at the end × liquor", grams: product(numberOf(dropTarget, "silver per litre at the end"), litres) };
  }
}

const lacks = (choice: "start" | "barFineness"): never => {
  throw new Lacking([{ in: "batch", choice }]);
};

export function washingLines(cells: PlanCells): PlanLine[] {
  const { shop, volumeUnit } = cells;
  const of = linesOf("Washing");
  const parts = () => together(cells.spentCopper, () => needed(shop, "retained", "rinse", "rinseTarget"));
  const rinses = () => {
    const [spent, { retained, rinse, rinseTarget }] = parts();
    const water = rinse.unit === retained.unit ? rinse.cell : fed("The shop", figure("VOLUME", rinse.cell, rinse.unit, retained.unit).value);
    return figure("RINSES", fed("copper in the spent liquor, at most", spent.most.value), rinseTarget.cell, retained.cell, water);
  };
  return [
    of("rinses", "Rinses by decanting", () => figures(same(rinses()), "")),
    of("rinseWater", "Rinse water in all", () => {
      const [, { rinse }] = parts();
      return figures(same(figure("VOLUME", fed("rinses × water of one", product(rinses().value, numberOf(rinse, "water of one rinse"))), rinse.unit, volumeUnit)), volumeUnit);
    }),
  ];
}

export function meltLines(cells: PlanCells): PlanLine[] {
  const { shop, choices } = cells;
  const of = linesOf("Melt and cell");
  const silver = () => fed("fine silver", cells.silver().value);
  const efficiency = told(shop, "cellEfficiency")?.cell ?? null;
  return [
    of("heats", "Heats", () => {
      const { crucible } = needed(shop, "crucible");
      return figures(same(figure("HEATS", silver(), "ozt", crucible.cell, crucible.unit)), "");
    }),
    of("bars", "Silver bars", () => {
      const { mould } = needed(shop, "mould");
      const { rows: told, ...worked } = rows("BARS", silver(), "ozt", mould.cell, mould.unit);
      return { kind: "rows", rows: told.map(([label, value, unit]) => ({ label: String(label), value: Number(value), unit: String(unit) })), workings: [{ end: null, ...worked }] };
    }),
    of("cellHours", "Hours in the cell", () => figures(same(figure("CELLHOURS", silver(), "ozt", needed(shop, "cellAmps").cellAmps.cell, efficiency)), "h")),
    of("cellEnergy", "Energy of the cell", () => figures(same(figure("CELLENERGY", silver(), "ozt", needed(shop, "cellVolts").cellVolts.cell, efficiency)), "kWh")),
    of("cellDraw", "Silver drawn from the electrolyte", () => {
      const fineness = choices.barFineness ?? lacks("barFineness");
      const weight = figure("GROSSWEIGHT", silver(), "ozt", fineness, "ozt");
      return figures(same(figure("CELLDRAW", fed("weight of the silver bars", weight.value), "ozt", fineness, "ozt")), "ozt");
    }),
  ];
}

export function wasteLines(cells: PlanCells): PlanLine[] {
  const { lot: { net }, choices, volumeUnit } = cells;
  const of = linesOf("Waste");
  const copper = () => {
    const dropped = figure("COPPER", fed("fine silver", cells.silver().value), "ozt", null, null, net.unit);
    const other = cells.otherCopper();
    return fed(`${other.text} + copper for the silver`, added(Number(other.holds), dropped.value));
  };
  return [
    of("spentLiquor", "Spent liquor", () => figures(each(cells.liquor(), (volume) => figure("VOLUME", volume, volumeUnit, volumeUnit)), volumeUnit)),
    of("spentCopper", "Copper in it", () => figures(cells.spentCopper(), "g/L")),
    ...(choices.takesCopperOut ? [of("iron", "Iron that takes it out", () => figures(same(figure("IRON", copper(), net.unit)), net.unit))] : []),
    ...(choices.freeAcid ? [of("soda", "Soda ash for the free acid", () => figures(same(figure("SODA", choices.freeAcid ?? null)), "kg"))] : []),
  ];
}
