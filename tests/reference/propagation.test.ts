import { spawnSync } from "node:child_process";
import { expect, it } from "vitest";
import { find } from "../../src/catalogue/catalogue";
import { outside } from "../outside";
import { program } from "../program";
import { random } from "../random";

const ROWS = 1000;
const SEED = 20261125;
/** Both compute with the same rule, the package in float64. */
const FLOAT64 = 1e-12;

/** Reads rows of readings and gives the standard uncertainty of each result. */
const PROGRAM = `
import json, statistics, sys
from uncertainties import ufloat
rows = json.load(sys.stdin)

def balance(opening, received, shipped, closing, bias):
    scale = ufloat(1, bias)
    return opening * scale + received * scale - shipped * scale - closing * scale

def pairs(row):
    return [ufloat(row[i], row[i + 1]) for i in range(0, 8, 2)]

json.dump({
    "FINEU": [(ufloat(w, uw) * ufloat(f, uf)).std_dev for w, uw, f, uf in rows["FINEU"]],
    "RECOVERYU": [(ufloat(o, uo) / ufloat(i, ui)).std_dev for o, uo, i, ui in rows["RECOVERYU"]],
    "BALANCE": [balance(*pairs(row), row[8]).std_dev for row in rows["BALANCE"]],
    "SAMPLEU": [statistics.stdev(row) / len(row) ** 0.5 for row in rows["SAMPLEU"]],
}, sys.stdout)
`;

type Row = readonly number[];

interface Propagated {
  readonly make: () => Row;
  /** Our function's expanded uncertainty for the readings of a row. */
  readonly ours: (row: Row, k: number) => unknown;
}

const { between, whole } = random(SEED);
const reading = (low: number, high: number): Row => {
  const x = between(low, high);
  return [x, x * between(0, 0.05)];
};
const call = (id: string, ...cells: readonly unknown[]): unknown => find(id)?.call(...cells).value();

const propagated: Readonly<Record<string, Propagated>> = {
  FINEU: { make: () => [...reading(0.01, 5000), ...reading(0.3, 0.9999)], ours: ([w, uw, f, uf], k) => call("FINEU", w, uw, "g", f, uf, k, "g") },
  RECOVERYU: { make: () => [...reading(0.01, 5000), ...reading(0.01, 5000)], ours: (row, k) => call("RECOVERYU", ...row, k) },
  BALANCE: {
    make: () => [...reading(0, 500), ...reading(1, 900), ...reading(1, 900), ...reading(0, 500), between(0, 0.02)],
    ours: ([o, uo, r, ur, s, us, c, uc, bias], k) => {
      const rows = call("BALANCE", o, r, s, c, uo, ur, us, uc, bias, k) as readonly (readonly unknown[])[];
      return rows.find(([label]) => label === "Expanded uncertainty")?.[1];
    },
  },
  SAMPLEU: {
    make: () => Array.from({ length: whole(2, 12) }, () => between(850, 999)),
    ours: (row, k) => call("SAMPLEU", row.map((ppt) => [ppt]), k),
  },
};

const given = Object.fromEntries(Object.entries(propagated).map(([id, { make }]) => [id, Array.from({ length: ROWS }, make)]));

outside("python uncertainties", "Python propagates uncertainties as we do", (python) => {
  const { status, stdout, stderr } = spawnSync(python, ["-c", PROGRAM], { input: JSON.stringify(given), encoding: "utf8" });
  const theirs = JSON.parse(status === 0 ? stdout : "{}") as Readonly<Record<string, readonly number[]>>;

  it.each([...program("uncertainties").functions, ...program("standard deviation").functions])(`%s on ${ROWS} random inputs`, (id) => {
    const results = theirs[id] ?? [];
    expect(results, stderr).toHaveLength(ROWS);
    given[id]?.forEach((row, i) => {
      const k = 1 + (i % 3);
      const ours = Number(propagated[id]?.ours(row, k));
      expect(Math.abs(ours / (k * (results[i] ?? NaN)) - 1), `${id} of ${row.join(", ")} (seed ${SEED})`).toBeLessThan(FLOAT64);
    });
  });
});
