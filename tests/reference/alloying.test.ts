import alloying from "../../shared/checks/alloying.json";
import { column, lot, spill } from "./lot";
import { type Given, published } from "./published";

/** Carats of a melt of parts. */
const melt = (weights: readonly number[], carats: readonly number[]): number =>
  lot("FINENESS", lot("MELTFINENESS", column(weights), column(carats.map((carat) => `${carat}k`))), "karat");
const inCarats = (weights: string) => (given: Given) => melt(given.numbers(weights), given.numbers("carat"));

published(alloying, {
  L01: inCarats("oz"),
  L02: (given) => given.number("target") - inCarats("lb")(given),
  L04: inCarats("parts"),
  L06: (given) => melt([given.number("Au"), given.number("Ag"), given.number("Cu")], [24, 0, 0]),
  L07: (given) => {
    const gold = given.number("gold_oz");
    const alloy = lot("ALLOYADD", gold, "ozt", "24k", `${given.number("target")}k`);
    return [gold + alloy, alloy];
  },
  L08: (given) =>
    lot("ALLOYADD", given.number("dwt"), "dwt", `${given.number("from")}k`, `${given.number("to")}k`, `${given.number("with")}k`),
  L10: (given) => {
    const [high = NaN, low = NaN] = given.numbers("carat");
    const target = `${given.number("target")}k`;
    return [
      lot("ALLOYADD", 40, "g", `${low}k`, target, `${high}k`),
      lot("ALLOYADD", 80, "g", `${high}k`, target, `${low}k`),
    ];
  },
  L13: (given) => lot("ALLOYADD", given.number("g"), "g", 1 - given.number("Cu_from"), 1 - given.number("Cu_to"), 1),
  L14: () => (1 - lot("FINENESS", "22k", "fraction")) * 100,
  L16: () => [lot("LOTCOST", 44.5, 21), lot("LOTCOST", 46.725, 20)],
  M03: (given) => spill("INQUART", given.number("gold"), "g", "24k")[0]?.[0],
});
