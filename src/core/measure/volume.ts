import table from "../../../shared/tables/volume-units.json";
import { Ratio } from "../expression/ratio";
import { UnitTable } from "./unit-table";

/** A bare gallon is the US liquid gallon. */
export const volumeUnits = new UnitTable(
  Object.fromEntries(
    Object.entries(table.units).map(([symbol, { litres, spellings }]) => [symbol, { size: Ratio.of(litres), spellings }]),
  ),
);
