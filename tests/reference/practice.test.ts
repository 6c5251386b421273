import { expect } from "vitest";
import practice from "../../shared/checks/practice.json";
import { column, lot, spill } from "./lot";
import { published } from "./published";
import { gramsPerMol } from "./substance";

const A_DAY = 24;

published(practice, {
  P01: (given) => lot("COPPER", given.number("silver_lb"), "lb", given.number("allowance")),
  // One line goes through what is left at the start, after a day and at the end.
  P02: (given) => {
    const [hours, left] = [given.numbers("hours"), given.numbers("left")];
    const [first = NaN, , last = NaN] = left;
    const [, aDay = NaN, all = NaN] = hours;
    const rate = lot("DROPRATE", column(hours), column(left));
    const steps = new Map(spill("DROPPLAN", 46000, all, given.number("settle")).map(([step, at]) => [step, (Number(at) - 46000) * A_DAY]));
    expect(steps.get("Lift the bars")).toBeCloseTo(all, 9);
    return [lot("DROPHOURS", first, last, rate), lot("DROPPED", aDay, rate), steps.get("Decant")];
  },
  P03: (given) => {
    const loads = given.numbers("silver_lb").map((pounds) => lot("SILVERLOAD", pounds, "lb", given.number("pail_gal"), "gal"));
    for (const load of loads) expect(load / gramsPerMol("Ag")).toBeLessThan(given.number("forty_percent_mol_L"));
    expect((40 / 60) * 100).toBeLessThan(given.number("soluble_g_per_100mL"));
    return loads;
  },
  P04: (given) =>
    given.numbers("charge_kg").map((charge) => {
      const heats = lot("HEATS", charge, "kg", given.number("rating_kg"), "kg");
      expect(lot("HEATS", charge, "kg", given.number("brim_kg"), "kg", given.number("fill"))).toBe(heats);
      return heats;
    }),
  P05: (given) => [
    lot("WEARCOST", given.number("paddle_price"), given.number("paddle_life_lb"), given.number("lot_lb")),
    lot("WEARCOST", given.number("crucible_price"), given.number("crucible_life_heats"), given.number("lot_heats")),
  ],
  P06: (given) => lot("PRICE", given.number("price_per_ozt"), "ozt", "lb"),
});
