import { expect } from "vitest";
import washing from "../../shared/checks/washing.json";
import { lot } from "./lot";
import { published } from "./published";

published(washing, {
  W01: () => {
    for (const [u, v, n] of [
      [50, 450, 3],
      [2, 7.5, 5],
    ] as const)
      expect(lot("RINSED", 40, u, v, n)).toBeCloseTo(40 * (u / (u + v)) ** n, 12);
  },
  // Washing is an extraction between equal liquids: D = 1, r = rinse over retained.
  W02: () => {
    expect(1 - lot("RINSED", 1, 30, 120, 4)).toBeCloseTo(1 - (120 / 30 + 1) ** -4, 14);
  },
  // K times as much goes into the rinse as stays behind: the rinse counts K times.
  W03: (given) => {
    const n = given.numbers("n");
    return given.numbers("v").map((v, i) => lot("RINSED", 1, given.number("u"), v * given.number("K"), n[i] ?? NaN));
  },
  W05: (given) => {
    const [u, v, start] = [given.number("u"), given.number("v"), given.number("c0")];
    const left = lot("RINSED", start, u, v, given.number("n"));
    expect(lot("RINSES", start, left, u, v)).toBe(given.number("n"));
    return left;
  },
});
