import { elements } from "chemical-elements";
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import atomicWeights from "../../shared/checks/atomic-weights.json";
import table from "../../shared/tables/atomic-weights.json";
import { outside } from "../outside";
import { lot } from "./lot";
import { type Given, published } from "./published";
import { gramsPerMol } from "./substance";

const element = (given: Given): number => gramsPerMol(given.text("element"));
const formula = (given: Given): number => gramsPerMol(given.text("formula"));
const eachElement = ({ expected }: Given): Readonly<Record<string, number>> =>
  Object.fromEntries(Object.keys(expected as object).map((symbol) => [symbol, gramsPerMol(symbol)]));

published(atomicWeights, {
  A01: element,
  A02: element,
  A03: element,
  A06: element,
  A07: element,
  A08: element,
  A09: element,
  A10: element,
  A11: element,
  A12: element,
  A15: formula,
  A16: formula,
  A17: formula,
  A18: formula,
  A19: formula,
  A20: () => lot("CHLORIDESILVER", 1, "g"),
  A21: () => lot("CHLORIDESILVER", 100, "g"),
  A22: eachElement,
  A23: eachElement,
});

const symbols = Object.keys(table.elements);

/** Isotopes are weighted over by what the package takes for their abundance, which the standard weights round. */
const ISOTOPES_AGREE_WITHIN = 0.005;

describe(`atomic weights lie within ${ISOTOPES_AGREE_WITHIN} of those that npm chemical-elements weights over the isotopes`, () => {
  it.each(symbols)("%s", (symbol) => {
    const mass = elements.find((one) => one.symbol === symbol)?.mass;
    expect(Math.abs(gramsPerMol(symbol) - (mass ?? NaN))).toBeLessThanOrEqual(ISOTOPES_AGREE_WITHIN);
  });
});

/** The repository keeps the standard weight of gold that stood before 2017, 196.966569. */
const REPOSITORY_AGREES_WITHIN = 0.000001;

outside("bodr", `atomic weights lie within ${REPOSITORY_AGREES_WITHIN} of those of the Blue Obelisk Data Repository`, (folder) => {
  const data = readFileSync(`${folder}/elements.xml`, "utf8");
  it.each(symbols)("%s", (symbol) => {
    const atom = data.slice(data.indexOf(`<atom id="${symbol}">`)).split("</atom>")[0] ?? "";
    const mass = Number(/dictRef="bo:mass"[^>]*>([\d.]+)</.exec(atom)?.[1]);
    expect(Math.abs(gramsPerMol(symbol) - mass)).toBeLessThan(REPOSITORY_AGREES_WITHIN * 1.001);
  });
});
