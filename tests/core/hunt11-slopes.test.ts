import { describe, expect, it } from "vitest";
import { Expression } from "../../src/core/expression/expression";
import { Ratio, one } from "../../src/core/expression/ratio";
import { slope } from "../../src/core/expression/slopes";
import { type Given, value } from "../../src/core/expression/value";
import { FaultError } from "../../src/core/fault";
import { random } from "../random";
import { formulas, isDiscrete, sample, scalarAmounts, scalarInputs } from "./formulas";

const SEED = 11;
const POINTS = 8;
const TRIES = 4000;
/** The core computes to 50 digits, so that a step this small leaves a difference of some 30. */
const STEP = Ratio.of("1e-18");
const AGREES_WITHIN = 1e-12;

const all = (await formulas()).filter(({ formula }) => scalarAmounts(formula).length > 0);

describe("the slope of every formula is that of central differences", () => {
  it("has formulas to try", () => expect(all.length).toBeGreaterThan(30));

  it.each(all)("$name", ({ formula }) => {
    const r = random(SEED);
    for (const { of, name } of scalarAmounts(formula)) {
      const smooth = unrounded(of);
      let points = 0;
      for (let tries = 0; tries < TRIES && points < POINTS; tries++) {
        const given = Object.fromEntries(scalarInputs(formula).map(([input, q]) => [input, Ratio.of(sample(r, input, q))]));
        if (valued(smooth, given) === null) continue;
        points++;
        for (const [by] of scalarInputs(formula).filter(([input]) => !isDiscrete(input))) {
          const ours = value(slope(of, by), given).toNumber();
          const differences = difference(smooth, given, by);
          expect(Math.abs(ours - differences), `${name} by ${by}: ${ours} against ${differences} (seed ${SEED})`).toBeLessThanOrEqual(
            AGREES_WITHIN * Math.max(Math.abs(ours), Math.abs(differences)),
          );
        }
      }
      expect(points, `${name} refuses nearly every input`).toBe(POINTS);
    }
  });
});

function difference(of: Expression, given: Given, by: string): number {
  const at = given[by] as Ratio;
  const step = at.times(STEP);
  const moved = (to: Ratio): Ratio => value(of, { ...given, [by]: to });
  return moved(at.plus(step)).minus(moved(at.minus(step))).over(step.times(one.plus(one))).toNumber();
}

/** Null where the formula refuses these inputs. */
function valued(of: Expression, given: Given): Ratio | null {
  try {
    return value(of, given);
  } catch (fault) {
    if (fault instanceof FaultError) return null;
    throw fault;
  }
}

/** The number before it is rounded: that is what an uncertainty is told of. */
function unrounded(expression: Expression): Expression {
  const { node } = expression;
  switch (node.op) {
    case "round":
      return unrounded(node.a);
    case "named":
    case "ln":
    case "exp":
    case "floor":
    case "ceiling":
      return new Expression({ ...node, a: unrounded(node.a) });
    case "add":
    case "subtract":
    case "multiply":
    case "divide":
    case "power":
    case "min":
    case "max":
      return new Expression({ ...node, a: unrounded(node.a), b: unrounded(node.b) });
    case "choose": {
      const { a, is, b } = node.when;
      return new Expression({ ...node, when: { a: unrounded(a), is, b: unrounded(b) }, then: unrounded(node.then), otherwise: unrounded(node.otherwise) });
    }
    default:
      return expression;
  }
}
