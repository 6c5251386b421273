import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import dataSet from "../../shared/checks/decimal-vectors.json";
import { Ratio } from "../../src/core/expression/ratio";
import { type Rounding, round } from "../../src/core/expression/rounding";
import { outside } from "../outside";
import { inapplicable, unrounded, vectors } from "./vectors";

const roundings: Readonly<Record<string, Rounding>> = { half_up: "half away from zero", half_even: "half to even", down: "down" };
/** Toward a side: the core says these as whole numbers below and above. */
const wholes: Readonly<Record<string, "floor" | "ceiling">> = { floor: "floor", ceiling: "ceiling" };
const modes = [...Object.keys(roundings), ...Object.keys(wholes)];

function rounded(exact: Ratio, places: number, mode: string): Ratio {
  const [rounding, whole] = [roundings[mode], wholes[mode]];
  if (rounding) return round(exact, places, rounding);
  if (!whole) throw new Error(`No reading of ${mode}`);
  const scale = Ratio.of(`1e${places}`);
  return exact.times(scale)[whole]().over(scale);
}

const FILES = { "rounding.decTest": 560, "quantize.decTest": 500, "rescale.decTest": 380 } as const;
const lines = (text: string): number => text.split("->").length - 1;

outside("decimal vectors", "the rounding meets the General Decimal Arithmetic vectors", (folder) => {
  const texts = Object.keys(FILES).map((file) => readFileSync(`${folder}/${file}`, "utf8"));

  it.each(dataSet.rows)("$id: $statement [$source]", ({ expected }) =>
    expect(texts.map(lines).reduce((a, b) => a + b)).toBe(expected));

  it.each(Object.entries(FILES))("%s, at least %d of them", (file, atLeast) => {
    const reasons = new Map<string, number>();
    let held = 0;
    for (const vector of vectors(readFileSync(`${folder}/${file}`, "utf8"))) {
      const reason = inapplicable(vector, modes);
      if (reason !== null) reasons.set(reason, (reasons.get(reason) ?? 0) + 1);
      else {
        const { exact, places } = unrounded(vector);
        const ours = rounded(exact, places, vector.rounding);
        expect(ours.compare(Ratio.of(vector.result)), `${vector.id}: ours ${ours.decimal().toString()}, theirs ${vector.result}`).toBe(0);
        held++;
      }
    }
    console.log([`${file}: ${held} vectors held`, ...[...reasons].map(([reason, n]) => `  ${n} not: ${reason}`)].join("\n"));
    expect(held).toBeGreaterThanOrEqual(atLeast);
  });
});
