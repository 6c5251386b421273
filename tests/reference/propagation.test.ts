import { spawnSync } from "node:child_process";
import { expect, it } from "vitest";
import { find } from "../../src/catalogue/catalogue";
import { outside } from "../outside";
import { random } from "../random";

const ROWS = 1000;
const SEED = 20261125;
/** Both compute with the same rule, the package in float64. */
const FLOAT64 = 1e-12;

/** Reads rows of readings and gives the standard uncertainty of each result. */
const PROGRAM = `
import json, sys
from uncertainties import ufloat
rows = json.load(sys.stdin)
product = [(ufloat(w, uw) * ufloat(f, uf)).std_dev for w, uw, f, uf in rows["product"]]
quotient = [(ufloat(o, uo) / ufloat(i, ui)).std_dev for o, uo, i, ui in rows["quotient"]]
json.dump({"product": product, "quotient": quotient}, sys.stdout)
`;

outside("python uncertainties", "the Python package uncertainties propagates as we do", (python) => {
  const { between } = random(SEED);
  const reading = (low: number, high: number): readonly [number, number] => {
    const x = between(low, high);
    return [x, x * between(0, 0.05)];
  };
  const rows = <T>(make: () => T): readonly T[] => Array.from({ length: ROWS }, make);
  const given = {
    product: rows(() => [...reading(0.01, 5000), ...reading(0.3, 0.9999)] as const),
    quotient: rows(() => [...reading(0.01, 5000), ...reading(0.01, 5000)] as const),
  };
  const { status, stdout, stderr } = spawnSync(python, ["-c", PROGRAM], { input: JSON.stringify(given), encoding: "utf8" });
  const theirs = JSON.parse(status === 0 ? stdout : "{}") as Partial<Record<keyof typeof given, readonly number[]>>;
  const agree = (id: string, ours: (row: (typeof given.product)[number], k: number) => readonly unknown[], of: keyof typeof given): void => {
    const results = theirs[of] ?? [];
    expect(results, stderr).toHaveLength(ROWS);
    given[of].forEach((row, i) => {
      const k = 1 + (i % 3);
      const value = Number(find(id)?.call(...ours(row, k)).value());
      expect(Math.abs(value / (k * (results[i] ?? NaN)) - 1), `${id} of ${row.join(", ")} (seed ${SEED})`).toBeLessThan(FLOAT64);
    });
  };

  it(`FINEU on ${ROWS} random lots`, () => agree("FINEU", ([w, uw, f, uf], k) => [w, uw, "g", f, uf, k, "g"], "product"));
  it(`RECOVERYU on ${ROWS} random lots`, () => agree("RECOVERYU", (row, k) => [...row, k], "quotient"));
});
