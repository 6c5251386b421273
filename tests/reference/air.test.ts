import air from "../../shared/checks/air.json";
import { lot } from "./lot";
import { published } from "./published";
import { gramsPerMol } from "./substance";

/** Cubic metres that one mol makes a mixture of one ppm of. */
const cubicMetres = (): number => lot("DILUTIONAIR", 1, 1, 1, 1, "m3/h");
/** Molar volumes in litres at 293 K, at which the example reckons, and at 298.15 K, at which we do. */
const MOLAR = { at293K: 24.04, at298K: 24.45 };
const MINUTES = 60;

published(air, {
  H07: (given) => {
    const ppm = given.numbers("ppm");
    return ["NO2", "NO", "HNO3"].map((gas, i) => ((ppm[i] ?? NaN) * gramsPerMol(gas) * 1000) / cubicMetres());
  },
  H12: (given) => {
    const grams = lot("VOLUME", given.number("gal_h"), "gal", "mL") * given.number("v") * given.number("SG");
    const vapour = ((grams / given.number("MW")) * MOLAR.at293K) / MINUTES;
    const rounded = Number(vapour.toFixed(2));
    return [vapour, lot("DILUTIONAIR", (rounded * MINUTES) / MOLAR.at298K, 1, given.number("ppm"), given.number("K"), "L/min")];
  },
});
