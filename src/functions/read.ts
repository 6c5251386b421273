/** The edge: every argument of a cell function is read through one of these. */
export { all, none, nothing, quarter, roundsToEven, single, twoPlaces, twoSigma, wasGiven } from "./bound";
export { fineness, inPerThousand, onScaleOf, standard } from "./fineness";
export { paired, range, total } from "./range";
export {
  aboveZero,
  anyNumber,
  coverage,
  finenessAboveZero,
  finenessReader,
  fromZero,
  perThousand,
  places,
  shareUpTo,
} from "./reader";
export {
  asGiven,
  countedIn,
  finenessScale,
  gramsInOne,
  mass,
  massInTroyOunces,
  massUnit,
  partsPerThousand,
  troyOunce,
  volumeUnit,
  withUnit,
} from "./unit";
