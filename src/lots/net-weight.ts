import { Ratio } from "../core/expression/ratio";
import { massUnits } from "../core/measure/mass";

/** What a scale showed, in one unit; several readings add up. */
export interface Readings {
  readonly values: readonly number[];
  readonly unit: string;
}

export const sumOf = ({ values }: Readings): Ratio => values.reduce((sum, value) => sum.plus(Ratio.of(value)), Ratio.of(0));

/** Gross less tare, in the unit of the gross; null where a unit is not known. */
export function netWeight(gross: Readings, tare: Readings | null): { readonly value: number; readonly unit: string } | null {
  const [of, to] = [massUnits.lookUp(tare?.unit ?? gross.unit), massUnits.lookUp(gross.unit)];
  if (!of || !to) return null;
  const less = tare ? sumOf(tare).times(of.size).over(to.size) : Ratio.of(0);
  return { value: sumOf(gross).minus(less).toNumber(), unit: to.symbol };
}
