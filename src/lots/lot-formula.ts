import { literalText } from "../functions/reader";
import type { FieldId } from "./fields";
import type { ColumnUnit } from "./list";
import type { Operand, Operands } from "./operands";

/** What the shop's own settings put into formulas: a number, or the cell that holds it, written as it stands in a formula. */
export interface ShopTerms {
  readonly copperAllowance?: string;
  readonly barWeight?: string;
  readonly barUnit?: string;
  readonly stub?: string;
  readonly acidStrength?: string;
  readonly acidExcess?: string;
}

/** A formula of ours for a computed field over the row's own cells, or the name of what it still needs. */
export interface LotFormula {
  readonly formula: string | null;
  readonly needs: string | null;
}

const needs = (what: string): LotFormula => ({ formula: null, needs: what });

export function lotFormula(field: FieldId, unit: ColumnUnit | null, operands: Operands, shop: ShopTerms): LotFormula {
  const to = unit?.symbol ?? null;
  switch (field) {
    case "net":
      return net(operands, unitText(unit, operands));
    case "fineWeight": {
      const [weight, fineness] = [netWeight(operands), operands.fineness()];
      if (!weight) return needs("a weight");
      if (!fineness) return needs("a fineness");
      const wanted = unitText(unit, operands);
      return guarded([weight, fineness], `LOT.FINEWEIGHT(${weight.text},${weight.unit},${fineness.text}${wanted === OZT ? "" : `,${wanted}`})`);
    }
    case "copper": {
      const fine = fineWeight(operands);
      if (!fine) return needs("a fine weight");
      const wanted = unitText(unit, operands);
      const allowance = shop.copperAllowance;
      const rest = wanted !== fine.unit ? `,${allowance ?? 0},0,${wanted}` : allowance === undefined ? "" : `,${allowance}`;
      return guarded([fine], `LOT.COPPER(${fine.text},${fine.unit}${rest})`);
    }
    case "copperBars": {
      const copper = operands.of("copper");
      if (!copper) return needs("the copper");
      if (shop.barWeight === undefined || shop.barUnit === undefined) return needs("the weight of a copper bar, which The shop keeps");
      return guarded([copper], `LOT.COPPERBARS(${copper.text},${copper.unit},${shop.barWeight},${literalText(shop.barUnit)}${shop.stub === undefined ? "" : `,${shop.stub}`})`);
    }
    case "acid": {
      const [weight, fineness] = [netWeight(operands), operands.fineness()];
      if (!weight) return needs("a weight");
      if (!fineness) return needs("a fineness");
      return guarded([weight, fineness], `LOT.NITRIC(${weight.text},${weight.unit},${fineness.text},${shop.acidStrength ?? "0.68"},0,${shop.acidExcess ?? "0"},${literalText(to ?? "L")})`);
    }
    case "recovery": {
      const [out, fine] = [operands.of("outturn"), operands.of("fineWeight")];
      if (!out) return needs("the outturn");
      if (!fine) return needs("a fine weight");
      const recovery = `LOT.RECOVERY(${inUnit(out, fine.unit)},${fine.text})`;
      return guarded([out, fine], to === "%" ? `100*${recovery}` : recovery);
    }
    case "payout":
      return payout(operands);
    default:
      return needs("to be typed");
  }
}

const OZT = literalText("ozt");

/** The unit in which a result stands, as it is written in a formula. */
function unitText(unit: ColumnUnit | null, operands: Operands): string {
  if (unit?.from === "unit column") return operands.of("unit")?.text ?? OZT;
  return literalText(unit?.symbol ?? "ozt");
}

const inUnit = ({ text, unit }: Operand, wanted: string): string => (unit === wanted ? text : `LOT.WEIGHT(${text},${unit},${wanted})`);

function net(operands: Operands, wanted: string): LotFormula {
  const [gross, tare] = [operands.of("gross"), operands.of("tare")];
  if (!gross) return needs("a gross weight");
  return guarded([gross], `${inUnit(gross, wanted)}${tare ? `-${tareIn(tare, wanted)}` : ""}`);
}

/** An empty tare is none, and a tare of 0 is no weight that could be told in another unit. */
const tareIn = (tare: Operand, wanted: string): string => (tare.unit === wanted ? tare.text : `IF(SUM(${tare.text})>0,${inUnit(tare, wanted)},0)`);


/** The net weight, or where the list has no column for it, gross less tare. */
export function netWeight(operands: Operands): Operand | null {
  const own = operands.of("net");
  if (own) return own;
  const [gross, tare] = [operands.of("gross"), operands.of("tare")];
  if (!gross || !tare) return gross;
  return { ...gross, text: `(${gross.text}-${tareIn(tare, gross.unit)})` };
}

/** The fine weight, or where the list has no column for it, what it comes from. */
export function fineWeight(operands: Operands): Operand | null {
  const own = operands.of("fineWeight");
  if (own) return own;
  const [weight, fineness] = [netWeight(operands), operands.fineness()];
  return weight && fineness ? { text: `LOT.FINEWEIGHT(${weight.text},${weight.unit},${fineness.text})`, unit: OZT, awaits: weight.awaits ?? fineness.awaits } : null;
}

function payout(operands: Operands): LotFormula {
  const [fine, price] = [fineWeight(operands), operands.per("price", "ozt")];
  if (!fine) return needs("a fine weight");
  if (!price) return needs("a price");
  const payable = payableShare(operands);
  const refining = operands.per("refiningCharge", "ozt");
  const charges = lotCharges(operands);
  const terms = [payable?.text, refining?.text, charges];
  while (terms.length > 0 && terms.at(-1) === undefined) terms.pop();
  const written = terms.map((term, i) => `,${term ?? (i === 0 ? "1" : "0")}`).join("");
  // An empty charge is none, and LOT.PAYOUT takes it so; an empty share would be all.
  return guarded([fine, price, ...(payable ? [payable] : [])], `LOT.PAYOUT(${fine.text},${fine.unit},${price.text}${written})`);
}

function payableShare(operands: Operands): Operand | null {
  const [payable, deduction, fineness] = [operands.share("payable"), operands.of("deduction"), operands.fineness()];
  if (!deduction || !fineness) return payable;
  const parts = deduction.unit === literalText("%") ? 100 : 1000;
  const share = `MAX(0,MIN(${payable?.text ?? "1"},1-${deduction.text}/${parts}/LOT.FINENESS(${fineness.text},"fraction")))`;
  return { text: share, unit: "", awaits: payable?.awaits ?? fineness.awaits };
}

/** Charges for the lot, and a treatment charge for all of its net weight. */
function lotCharges(operands: Operands): string | undefined {
  const charges = operands.of("lotCharges");
  const treatment = operands.of("treatmentCharge");
  const weight = netWeight(operands);
  const treating = treatment && weight ? `${treatment.text}*${inUnit(weight, treatment.unit)}` : undefined;
  const parts = [charges?.text, treating].filter((part) => part !== undefined);
  return parts.length === 0 ? undefined : parts.join("+");
}

/** Nothing is shown while a cell that it needs is still empty. */
function guarded(operands: readonly Operand[], formula: string): LotFormula {
  const awaited = [...new Set(operands.flatMap(({ awaits }) => awaits ?? []))].map((cell) => `${cell}=""`);
  if (awaited.length === 0) return { formula: `=${formula}`, needs: null };
  return { formula: `=IF(${awaited.length === 1 ? (awaited[0] ?? "") : `OR(${awaited.join(",")})`},"",${formula})`, needs: null };
}
