import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { find } from "../../src/catalogue/catalogue";
import { Ratio } from "../../src/core/expression/ratio";
import { readFineness, scales } from "../../src/core/measure/fineness";
import { massUnits } from "../../src/core/measure/mass";
import type { UnitTable } from "../../src/core/measure/unit-table";
import { volumeUnits } from "../../src/core/measure/volume";
import mass from "../../shared/tables/mass-units.json";
import volume from "../../shared/tables/volume-units.json";

const call = (id: string, ...cells: readonly unknown[]): unknown => find(id)?.call(...cells).value();

/** Two cells each round once. */
const TWO_ROUNDINGS = 2 ** -51;

const kinds: readonly (readonly [string, string, UnitTable, { readonly units: Readonly<Record<string, { readonly spellings: readonly string[] }>> }])[] = [
  ["WEIGHT", "weight", massUnits, mass],
  ["VOLUME", "volume", volumeUnits, volume],
];

describe.each(kinds)("%s: a %s comes back from every other unit", (id, _, table, { units }) => {
  const pairs = table.symbols.flatMap((from) => table.symbols.map((to) => [from, to] as const));

  it.each(pairs)("%s to %s and back", (from, to) => {
    fc.assert(
      fc.property(fc.double({ min: 0.001, max: 1e6, noNaN: true }), (x) => {
        const back = Number(call(id, call(id, x, from, to), to, from));
        expect(Math.abs(back / x - 1)).toBeLessThanOrEqual(TWO_ROUNDINGS);
        const [one, other] = [table.find(from, "from").size, table.find(to, "to").size];
        expect(Ratio.of(x).times(one).over(other).times(other).over(one).compare(Ratio.of(x))).toBe(0);
      }),
      { numRuns: 20 },
    );
  });

  it.each(Object.entries(units))("%s means the same in all its spellings", (symbol, { spellings }) => {
    for (const spelling of [...spellings, symbol, ` ${symbol.toUpperCase()} `])
      expect(call(id, 7, spelling, table.symbols[0])).toBe(call(id, 7, symbol, table.symbols[0]));
  });

  it("takes no spelling for two units", () => {
    const all = Object.values(units).flatMap(({ spellings }) => spellings);
    expect(new Set(all).size).toBe(all.length);
    for (const spelling of all) expect(spelling).toBe(spelling.replace(/\s/g, "").toLowerCase());
  });
});

describe("a fineness comes back from every scale", () => {
  /** How a number on a scale is written so that the scale can be told. */
  const written: Readonly<Record<keyof typeof scales, (x: string) => string | number>> = {
    ppt: (x) => `${x}‰`,
    "%": (x) => `${x}%`,
    fraction: (x) => x,
    karat: (x) => `${x}k`,
  };

  it.each(Object.keys(scales) as (keyof typeof scales)[])("%s", (scale) => {
    fc.assert(
      fc.property(fc.integer({ min: 1001, max: 10_000 }), (tenths) => {
        const ppt = tenths / 10;
        const there = call("FINENESS", ppt, scale);
        expect(Number(call("FINENESS", written[scale](String(there))))).toBeCloseTo(ppt, 11);
      }),
    );
  });

  it("is the same fraction in every way of writing it", () => {
    for (const [texts, fraction] of [
      [[925, "925", 0.925, "0.925", "92.5%", "92.5 %", "925‰", "925/1000", " 925 / 1000 ", "sterling", "22.2k"], "0.925"],
      [[750, 0.75, "75%", "18k", "18 kt", "18K", "18 karat", "18ct", "gold 750"], "0.75"],
      [[1, 1000, "100%", "24k", "1000‰"], "1"],
    ] as const)
      for (const text of texts) expect(readFineness(text, "fineness").fraction.compare(Ratio.of(fraction)), String(text)).toBe(0);
  });
});
