import { expect } from "vitest";
import kinetics from "../../shared/checks/kinetics.json";
import { column, lot } from "./lot";
import { type Given, published } from "./published";

/** Numbers of a data set are made small, so that silver that falls as their exponential fits a cell. */
const SCALE = 1000;

/** The slope of a line, of which DROPRATE is told through silver = exp(−y). */
const slope = (x: readonly number[], y: readonly number[]): number =>
  lot("DROPRATE", column(x), column(y.map((one) => Math.exp(-one / SCALE)))) * SCALE;

const line = (given: Given): number => slope(given.numbers("x"), given.numbers("y"));

/** A line through the origin is the line through the points and their mirror images; hours are counted from the first. */
function throughOrigin(given: Given): number {
  const [x, y] = [given.numbers("x"), given.numbers("y")];
  const mirrored = (numbers: readonly number[]): readonly number[] => [...numbers, ...numbers.map((one) => -one)];
  const first = Math.max(...x);
  return slope(mirrored(x).map((one) => one + first), mirrored(y));
}

published(kinetics, {
  // First order: every hour takes the same share of what is left.
  Q01: () => {
    const rate = 0.19;
    const left = (hours: number): number => 1 - lot("DROPPED", hours, rate);
    expect(left(5) * left(7)).toBeCloseTo(left(12), 14);
    expect(lot("DROPRATE", column([0, 5, 12]), column([80, 80 * left(5), 80 * left(12)]))).toBeCloseTo(rate, 13);
    expect(lot("DROPHOURS", 80, 80 * left(12), rate)).toBeCloseTo(12, 12);
  },
  // The rate's unit of time is that of the answer: seconds here.
  Q05: (given) => lot("DROPHOURS", 1, 1 - given.number("fraction"), given.number("k")),
  Q06: (given) => -lot("DROPRATE", column(given.numbers("t_h")), column(given.numbers("c_M"))),
  Q09: line,
  Q10: throughOrigin,
  Q11: throughOrigin,
});
