import { spawnSync } from "node:child_process";
import { describe, expect, it } from "vitest";
import flow from "../../shared/tables/flow-units.json";
import mass from "../../shared/tables/mass-units.json";
import volume from "../../shared/tables/volume-units.json";
import { outside } from "../outside";
import { program } from "../program";
import { functionsCalled, lot } from "./lot";

/** Our units as the program calls them. */
const theirs: Readonly<Record<string, string>> = {
  ozav: "oz",
  ozt: "troyounce",
  dwt: "pennyweight",
  gr: "grain",
  lbt: "troypound",
  L: "liter",
  mL: "ml",
  gal: "gallon",
  galimp: "brgallon",
  ft3: "ft^3",
  m3: "m^3",
  cfm: "ft^3/min",
  "m3/h": "m^3/hour",
  "L/min": "liter/min",
  "L/s": "liter/s",
};

/** The program computes in float64 through several factors. */
const PROGRAM_ROUNDS = 1e-14;

outside("units", "every unit of the tables has the size that GNU units gives it", (units) => {
  const size = (unit: string, base: string): number =>
    Number(spawnSync(units, ["--terse", "--output-format", "%.17g", theirs[unit] ?? unit, base], { encoding: "utf8" }).stdout);
  const agrees = (ours: number, unit: string, base: string): void => {
    expect(Math.abs(ours / size(unit, base) - 1)).toBeLessThan(PROGRAM_ROUNDS);
  };

  describe("weights", () => {
    it.each(Object.entries(mass.units))("%s", (unit, { grams }) => {
      agrees(Number(grams), unit, "gram");
      agrees(lot("WEIGHT", 1, unit, "g"), unit, "gram");
    });
  });

  describe("volumes", () => {
    it.each(Object.entries(volume.units))("%s", (unit, { litres }) => {
      agrees(Number(litres), unit, "liter");
      agrees(lot("VOLUME", 1, unit, "L"), unit, "liter");
    });
  });

  describe("prices per weight", () => {
    it.each(Object.keys(mass.units))("per %s", (unit) => {
      // A price per gram, times the grams in it: as the weight itself.
      agrees(lot("PRICE", 1, "g", unit), unit, "gram");
    });
  });

  describe("air flows", () => {
    it.each(Object.entries(flow.units))("%s", (unit, { litresPerHour }) => {
      agrees(Number(litresPerHour), unit, "liter/hour");
      agrees(lot("DILUTIONAIR", 1, 1, 1, 1, "L/min") / lot("DILUTIONAIR", 1, 1, 1, 1, unit), unit, "liter/min");
    });
  });

  it("holds the functions that the reference page says it does", () => expect(functionsCalled()).toEqual(program("units").functions.toSorted()));
});
