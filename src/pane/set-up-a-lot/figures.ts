import { find } from "../../catalogue/catalogue";
import { blamed } from "../../catalogue/blamed";
import { FaultError } from "../../core/fault";
import { readFineness } from "../../core/measure/fineness";
import { netWeight } from "../../lots/net-weight";
import type { CellValue } from "../../functions/answer";
import type { LotKey } from "./lot-keys";
import type { Amount, ReadLot } from "./read-lot";

/** What a lot comes to, as the functions give it. */
export interface Figures {
  readonly net: { readonly value: number; readonly unit: string } | null;
  /** In troy ounces. */
  readonly fine: number | null;
  /** Expanded uncertainty of the fine weight by that of the fineness, in troy ounces. */
  readonly fineU: number | null;
  readonly payout: number | null;
  /** The column's own formula may reckon otherwise than the terms are read here; "column" where the payout is what it gives. */
  readonly payoutBy: "column" | "terms" | null;
  readonly faults: ReadonlyMap<LotKey, string>;
}

/** The parameters of the functions, by the field of the form that gives them. */
const FIELDS: Readonly<Record<string, LotKey>> = {
  weight: "gross", net: "gross", value: "gross", fineness: "fineness", uFineness: "uncertainty", price: "price", payable: "payable",
  refiningCharge: "refiningCharge", treatmentCharge: "treatmentCharge", lotCharges: "lotCharges", deduction: "deduction",
};

export function figures({ weights, fineness, uncertainty, terms }: ReadLot): Figures {
  const faults = new Map<LotKey, string>();
  const call = (id: string, ...cells: unknown[]): CellValue[][] | null => called(id, cells, faults);
  const net = weights.gross ? netWeight(weights.gross, weights.tare ?? null) : null;
  const single = (id: string, ...cells: unknown[]): number | null => numberIn(call(id, ...cells));
  const fine = net && fineness !== undefined ? single("FINEWEIGHT", net.value, net.unit, fineness) : null;
  const fineU = net && fineness !== undefined && uncertainty !== undefined && fine !== null ? single("FINEU", net.value, 0, net.unit, fineness, uncertainty) : null;
  const per = (amount: Amount | undefined, unit: string): number | null => {
    if (!amount) return 0;
    return amount.unit === undefined || amount.unit === unit || amount.value === 0 ? Number(amount.value) : single("PRICE", amount.value, amount.unit, unit);
  };
  const payout = net && fine !== null && terms.price ? settled(net) : null;
  return { net, fine, fineU, payout, payoutBy: null, faults };

  function settled({ value, unit }: { readonly value: number; readonly unit: string }): number | null {
    const perUnit = terms.treatmentCharge?.unit ?? unit;
    const weight = perUnit === unit ? value : single("WEIGHT", value, unit, perUnit);
    const [price, refining, treatment] = [per(terms.price, "ozt"), per(terms.refiningCharge, "ozt"), per(terms.treatmentCharge, perUnit)];
    if (weight === null || price === null || refining === null || treatment === null) return null;
    const lines = call("SETTLEMENT", weight, perUnit, fineness, price, terms.payable?.value ?? 1, refining, treatment, terms.lotCharges?.value ?? 0, terms.deduction?.value ?? null);
    const last = lines?.at(-1)?.[1];
    return typeof last === "number" ? last : null;
  }
}

function called(id: string, cells: readonly unknown[], faults: Map<LotKey, string>): CellValue[][] | null {
  const entry = find(id);
  if (!entry) throw new Error(`${id} has no function`);
  try {
    const value = entry.call(...cells).value();
    return Array.isArray(value) ? value : [[value]];
  } catch (thrown) {
    if (!(thrown instanceof FaultError)) throw thrown;
    const named = blamed(thrown.fault, entry.parameters).flatMap((name) => FIELDS[name] ?? []);
    for (const key of named) if (!faults.has(key)) faults.set(key, thrown.message);
    return null;
  }
}

const numberIn = (rows: CellValue[][] | null): number | null => {
  const first = rows?.[0]?.[0];
  return typeof first === "number" ? first : null;
};

/** Parts of metal in one, of a fineness that can be read. */
export const fractionOf = (fineness: number | string): number => readFineness(fineness, "fineness").fraction.toNumber();
