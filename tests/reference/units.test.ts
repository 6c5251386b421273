import units from "../../shared/checks/units.json";
import { round } from "../../src/core/expression/rounding";
import { Ratio } from "../../src/core/expression/ratio";
import { expect } from "vitest";
import { lot } from "./lot";
import { published } from "./published";

const grams = (unit: string) => () => lot("WEIGHT", 1, unit, "g");
const litres = (unit: string) => () => lot("VOLUME", 1, unit, "L");

published(units, {
  U01: grams("lb"),
  U02: grams("ozav"),
  U03: grams("ozt"),
  U04: grams("dwt"),
  U05: grams("gr"),
  U06: grams("lbt"),
  U08: litres("gal"),
  U09: litres("ft3"),
  U10: () => [
    lot("WEIGHT", 1, "dwt", "gr"),
    lot("WEIGHT", 1, "ozt", "gr"),
    lot("WEIGHT", 1, "lbt", "gr"),
    lot("WEIGHT", 1, "lbt", "dwt"),
    lot("WEIGHT", 16, "ozav", "gr"),
  ],
  U11: (given) => {
    expect(lot("WEIGHT", 192, "ozav", "ozt")).toBe(175);
    return lot("WEIGHT", given.number("lb"), "lb", "ozt");
  },
  U12: (given) => lot("WEIGHT", given.number("kg"), "kg", "ozt"),
  U13: (given) => lot("WEIGHT", given.number("g"), "g", "ozt"),
  // The rule's factor is rounded, ours is exact: to a tenth of an ounce they agree.
  U14: (given) => {
    expect(Math.round((given.number("g") / given.number("factor")) * 10) / 10).toBe(given.expected);
    return round(Ratio.of(lot("WEIGHT", given.number("g"), "g", "ozt")), 1, "half away from zero").toNumber();
  },
  U15: (given) => given.numbers("g").map((g) => lot("WEIGHT", g, "g", "gr")),
  U16: (given) => {
    const thousandths = given.number("thousandths_of_oz");
    expect((thousandths / 2) * 0.96).toBe(given.expected);
    return lot("WEIGHT", thousandths / 1000, "ozt", "gr");
  },
  U17: (given) => lot("WEIGHT", given.number("lb"), "lb", "ozt"),
});
