import Decimal from "decimal.js";
import { expect, it } from "vitest";
import { ExactSum } from "../../src/core/expression/exact-sum";
import { type Random, random } from "../random";

const SEED = 20261125;
const Exact = Decimal.clone({ precision: 2000 });

/** Scale readings, and what a cell may hold besides: quotients, amounts far too small or too large for millionths. */
const numbers: Readonly<Record<string, (r: Random) => number>> = {
  "readings of scales": (r) => r.decimal(0, 400, 3),
  "numbers with every digit of a float64": (r) => r.between(0, 400),
  "numbers of every size": (r) => r.pick([1e-12, 1e-6, 2.5e-7, 0.1, 1e9, 1e15]) * r.whole(1, 999),
  "amounts that fill the whole part of a float64 again and again": (r) => r.decimal(900_000_000, 999_999_999, 6),
  "numbers below zero as well": (r) => r.decimal(-400, 400, 3),
};

it.each(Object.entries(numbers))("the sum of many %s is that of their decimals", (_, number) => {
  const r = random(SEED);
  const sum = new ExactSum();
  let decimal = new Exact(0);
  for (let i = 0; i < 20_000; i++) {
    const next = number(r);
    sum.add(next);
    decimal = decimal.plus(next);
  }
  expect(sum.sum.toNumber(), `seed ${SEED}`).toBe(decimal.toNumber());
  expect(sum.sum.decimal().toFixed()).toBe(decimal.toSD(50).toFixed());
});
