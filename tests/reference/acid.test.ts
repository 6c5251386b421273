import acid from "../../shared/checks/acid.json";
import { acidMolarity } from "../../src/core/dissolve";
import { result } from "../../src/core/expression/formula";
import { Ratio } from "../../src/core/expression/ratio";
import { value } from "../../src/core/expression/value";
import { lot } from "./lot";
import { type Given, published } from "./published";
import { gramsPerMol } from "./substance";

/** Density and molarity; a litre weighs what its acid weighs, over the share that is acid. */
function byStrength(given: Given): readonly number[] {
  const percent = given.number("w_pct");
  const molarity = lot("ACIDMOLARITY", `${percent}%`);
  return [(molarity * gramsPerMol("HNO3")) / (percent * 10), molarity];
}

/** Of an acid that is not in the table, from its own density. */
const molarity = (strength: number, density: number): number =>
  value(result(acidMolarity).of, { strength: Ratio.of(strength), density: Ratio.of(density) }).toNumber();

published(acid, {
  N01: byStrength,
  N02: byStrength,
  N04: byStrength,
  N05: byStrength,
  N06: byStrength,
  N08: byStrength,
  N09: byStrength,
  N10: byStrength,
  N11: byStrength,
  N12: byStrength,
  N13: byStrength,
  N14: (given) => molarity(given.number("w_pct") / 100, given.number("d")),
  N17: (given) => {
    const acidPerKilogram = given.number("molality") * gramsPerMol("HNO3");
    return molarity(acidPerKilogram / (1000 + acidPerKilogram), given.number("d"));
  },
  M01: (given) => lot("ACIDMOLARITY", `${given.number("w_pct")}%`),
  M02: (given) => {
    const [acidIn, water] = [given.number("HNO3_kg"), given.number("water_kg")];
    return lot("ACIDMOLARITY", acidIn / (acidIn + water));
  },
});
