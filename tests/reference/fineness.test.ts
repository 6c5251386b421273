import fineness from "../../shared/checks/fineness.json";
import { lot } from "./lot";
import { type Given, published } from "./published";

/** Each published number of a metal's series, as we answer to its name: "silver 925". */
const standards = ({ expected }: Given): Readonly<Record<string, readonly number[]>> =>
  Object.fromEntries(
    Object.entries(expected as Record<string, readonly number[]>).map(([metal, series]) => [
      metal,
      series.map((ppt) => lot("STANDARD", `${metal} ${ppt}`)),
    ]),
  );

const inCarats = (given: Given): number =>
  lot("FINENESS", lot("RECOVERY", given.number("pure_gr"), given.number("gross_gr")), "karat");

published(fineness, {
  F01: standards,
  F03: standards,
  F05: () => {
    const inTwelve = (ounces: number, dwt: number): number =>
      lot("RECOVERY", lot("WEIGHT", ounces, "ozt", "dwt") + dwt, lot("WEIGHT", 12, "ozt", "dwt")) * 1000;
    return [inTwelve(11, 2), inTwelve(11, 10)];
  },
  F06: () => ["18k", "1k", "22k"].map((karat) => lot("FINENESS", karat)),
  F07: () => ["sterling", "coin"].map((name) => lot("STANDARD", name)),
  F11: () => {
    const first = lot("FINEWEIGHT", 416, "gr", 892.4, "gr");
    return [first, lot("FINEWEIGHT", 412.5, "gr", 900, "gr"), 416 - first];
  },
  F12: () => lot("FINEWEIGHT", 25.8, "gr", 900, "gr"),
  F14: (given) => {
    const bullion = given.numbers("bullion_g");
    return given.numbers("metal_g").map((metal, i) => lot("FINENESS", lot("RECOVERY", metal, bullion[i] ?? NaN)));
  },
  F15: inCarats,
  F17: inCarats,
});
