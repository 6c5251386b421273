import { expect } from "vitest";
import values from "../../shared/checks/value.json";
import { Ratio } from "../../src/core/expression/ratio";
import { round } from "../../src/core/expression/rounding";
import { column, lot } from "./lot";
import { published } from "./published";

const cut = (x: number): number => round(Ratio.of(x), 2, "down").toNumber();
const product = (a: number, b: number): number => Ratio.of(a).times(Ratio.of(b)).toNumber();

/** Grains of standard metal, and of fine metal, that the law puts into one dollar. */
const GOLD_DOLLAR = { standard: 25.8, fine: 23.22 };
const SILVER_DOLLAR = { standard: 412.5 };
const perOunce = (grains: number): number => lot("PRICE", 1 / grains, "gr", "ozt");

published(values, {
  // The published practice cuts each step to cents; we round once, at the end.
  V01: (given) => {
    const [fine, pounds, ounces] = [given.number("fine"), given.number("lb"), given.number("oz")];
    const perPound = product(18.85, fine);
    const perOunceAv = product(1.17, fine);
    expect(lot("LOTCOST", column([pounds, ounces]), column([perPound, perOunceAv]))).toBe(1501.47);
    return cut(product(cut(perPound), pounds)) + cut(product(cut(perOunceAv), ounces));
  },
  V03: () => [lot("PRICE", 1.2929, "ozt", "lb"), lot("PRICE", 20.672, "ozt", "lb")],
  V04: (given) => {
    const ounces = given.number("oz");
    expect(lot("PAYOUT", ounces, "ozt", Number(given.expected))).toBe(128);
    return 128 / ounces;
  },
  V05: () => {
    for (const [gross, fineness] of [
      [1164.9, 999],
      [100, 925],
      [31.25, 892.4],
    ] as const)
      expect(lot("FINEWEIGHT", gross, "ozt", fineness)).toBe(Ratio.of(gross).times(Ratio.of(fineness)).over(Ratio.of(1000)).toNumber());
  },
  V07: () => [perOunce(GOLD_DOLLAR.standard), perOunce(GOLD_DOLLAR.fine), perOunce(SILVER_DOLLAR.standard)],
  V08: () => lot("FINEWEIGHT", SILVER_DOLLAR.standard, "gr", 900, "gr") / lot("FINEWEIGHT", GOLD_DOLLAR.standard, "gr", 900, "gr"),
  V09: (given) => lot("FINEWEIGHT", given.number("mg"), "mg", 900, "mg"),
});
