import table from "../../../shared/tables/mass-units.json";
import { Ratio } from "../expression/ratio";
import { UnitTable } from "./unit-table";

export const massUnits = new UnitTable(
  Object.fromEntries(
    Object.entries(table.units).map(([symbol, { grams, spellings }]) => [symbol, { size: Ratio.of(grams), spellings }]),
  ),
  table.ambiguous,
);
export const MASS_SOURCE = table.source;
