import { ONE } from "./expression/expression";
import { formula } from "./expression/formula";
import { SILVER_PER_COPPER } from "./drop";
import { atomic, natural } from "./matter";
import { amperes, fineness, grams, hours, share, volts } from "./measure/quantity";

const CELL_CAUTION =
  "The electrolyte is silver nitrate in nitric acid, and the cell runs at high current: local electrical and waste codes and licensed practice decide";
const SECONDS_IN_AN_HOUR = 3600;
const PER_AMPERE_HOUR = atomic("Ag").times(SECONDS_IN_AN_HOUR).over(natural("faraday")).named("silver per ampere-hour", "g/(A h)");

export const cellHours = formula(
  { title: "Hours in the cell", rule: "silver over what the current deposits in an hour at its efficiency", source: "Faraday's law, one electron for an atom of silver", caution: CELL_CAUTION },
  { fine: grams, amps: amperes, efficiency: share },
  "hours",
  hours,
  ({ fine, amps, efficiency }) => fine.over(PER_AMPERE_HOUR.times(amps).times(efficiency)),
);

export const cellEnergy = formula(
  { title: "Energy of the cell", rule: "ampere-hours that the silver takes at its efficiency, times the volts", source: "Faraday's law, one electron for an atom of silver", caution: CELL_CAUTION },
  { fine: grams, volts, efficiency: share },
  "energy",
  { unit: "kWh" },
  ({ fine, volts, efficiency }) => fine.over(PER_AMPERE_HOUR.times(efficiency)).named("charge", "A h").times(volts).over(1000),
);

export const cellDraw = formula(
  {
    title: "Silver that base metal in the bars draws out of the electrolyte",
    rule: "base metal in the bars, taken as copper, times silver per copper: each mol of copper that dissolves deposits two of silver that the bars did not bring",
    source: "Cu + 2 Ag⁺ → Cu²⁺ + 2 Ag",
    caution: CELL_CAUTION,
  },
  { weight: grams, fineness },
  "silver drawn",
  grams,
  ({ weight, fineness }) => weight.times(ONE.minus(fineness)).named("base metal", "g").times(SILVER_PER_COPPER),
);
