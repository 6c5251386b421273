/** The edge: every argument of a cell function is read through one of these. */
export { commonAcid, density, strength, strengthReader } from "./acid";
export { all, alongWith, cellEfficiency, fourFifths, justOne, none, nothing, quarter, roundsToEven, single, together, twoPlaces, twoSigma, wasGiven } from "./bound";
export { fineness, inPerThousand, onScaleOf, standard } from "./fineness";
export { paired, range, total, withoutGaps } from "./range";
export {
  aboveZero,
  aboveZeroToTenThousand,
  anyNumber,
  chloride,
  coverage,
  dateTime,
  finenessAboveZero,
  finenessReader,
  fromOne,
  fromZero,
  halfEvenReader,
  perThousand,
  perThousandFineness,
  places,
  share,
  shareAboveZero,
  shareBelowOne,
  shareUpToTen,
  upToTenThousand,
  wholeNumber,
} from "./reader";
export {
  asGiven,
  countedIn,
  finenessScale,
  ouncesIn,
  flowUnit,
  gram,
  gramsInOne,
  kilogram,
  litre,
  mass,
  massInTroyOunces,
  massUnit,
  partsPerThousand,
  troyOunce,
  volume,
  volumeUnit,
  withUnit,
} from "./unit";
export { chlorideCaustic, chlorideReductants, goldReductants, neutralisers, reagent } from "./reagent";
