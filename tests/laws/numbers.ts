import fc from "fast-check";

/** Numbers as scales and price lists show them. */
export const decimal = (low: number, high: number, places: number): fc.Arbitrary<number> =>
  fc.integer({ min: Math.ceil(low * 10 ** places), max: Math.floor(high * 10 ** places) }).map((n) => n / 10 ** places);

/** A decimal of the generator above as a whole number of its last place. */
export const whole = (x: number, places: number): bigint => BigInt(Math.round(x * 10 ** places));
