import { expect } from "vitest";
import uncertain from "../../shared/checks/uncertainty.json";
import { type Formula, type Inputs, formula, result } from "../../src/core/expression/formula";
import { Ratio } from "../../src/core/expression/ratio";
import { uncertainty } from "../../src/core/expression/slopes";
import { value } from "../../src/core/expression/value";
import { lot } from "./lot";
import { listOf, published } from "./published";

const plain = { unit: "" };
const about = { title: "A published example", rule: "" };

const compute = (of: Formula, given: Readonly<Record<string, number>>): number =>
  value(result(of).of, Object.fromEntries(Object.entries(given).map(([name, x]) => [name, Ratio.of(x)]))).toNumber();

/** The standard uncertainty of a formula whose every input x carries ux. */
function standardUncertainty<I extends Inputs>(of: Formula<I>, given: Readonly<Record<string, number>>): number {
  const names = Object.fromEntries(Object.keys(of.inputs).map((name) => [name, `u${name}`])) as Record<keyof I & string, string>;
  return compute(uncertainty(of, "", names), { ...given, k: 1 });
}

published(uncertain, {
  G01: () => {
    for (const [x, ux, y, uy] of [
      [91.8, 0.1, 100, 0.3],
      [3, 0.5, 0.25, 0.01],
    ] as const) {
      const relative = Math.hypot(ux / x, uy / y);
      expect(lot("RECOVERYU", x, ux, y, uy, 1) / lot("RECOVERY", x, y)).toBeCloseTo(relative, 14);
    }
    const [w, uw, f, uf] = [250, 0.2, 0.925, 0.002];
    expect(lot("FINEU", w, uw, "g", f, uf, 1, "g") / lot("FINEWEIGHT", w, "g", f, "g")).toBeCloseTo(Math.hypot(uw / w, uf / f), 14);
  },
  G03: (given) => {
    const volume = formula(about, { a: plain, b: plain, c: plain }, "volume", plain, ({ a, b, c }) => a.plus(b).plus(c));
    const u = { ua: given.number("tri") / Math.sqrt(6), ub: given.number("rep"), uc: given.number("temp") / Math.sqrt(3) };
    return standardUncertainty(volume, { a: 100, b: 0, c: 0, ...u });
  },
  G04: () => {
    const inputs = { r: plain, m: plain, P: plain, M: plain, V: plain };
    const strength = formula(about, inputs, "strength", plain, ({ r, m, P, M, V }) => r.times(1000).times(m).times(P).over(M.times(V)));
    const read = { r: 1, m: 0.3888, P: 1, M: 204.2212, V: 18.64 };
    return [compute(strength, read), standardUncertainty(strength, { ...read, ur: 0.0005, um: 0.00013, uP: 0.00029, uM: 0.0038, uV: 0.013 })];
  },
  G06: (given) => {
    const [V = NaN, u = NaN] = given.numbers("V");
    const twice = formula(about, { a: plain, b: plain }, "volume", plain, ({ a, b }) => a.plus(b));
    return [compute(twice, { a: V, b: V }), standardUncertainty(twice, { a: V, b: V, ua: u, ub: u })];
  },
  G07: (given) => {
    const side = (name: string) => {
      const [[weight = NaN, uWeight = NaN], [fineness = NaN, uFineness = NaN]] = [given.numbers(name), given.numbers(`f_${name}`)];
      return [lot("FINEWEIGHT", weight, "g", fineness, "g"), lot("FINEU", weight, uWeight, "g", fineness, uFineness, 1, "g")] as const;
    };
    const [[out, uOut], [into, uInto]] = [side("out"), side("in")];
    expect(listOf(given.expected, "expected")).toHaveLength(2);
    return [lot("RECOVERY", out, into) * 100, lot("RECOVERYU", out, uOut, into, uInto, 1) * 100];
  },
});
