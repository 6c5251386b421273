import { type Expression, ONE, ZERO, choose, input } from "./expression";
import { type Formula, type Inputs, type Quantity, formula, result } from "./formula";

/**
 * The partial derivative of an expression by one of its inputs, as an expression.
 * Rounding and steps are passed through: an uncertainty is that of the number before it was rounded.
 */
export function slope(expression: Expression, by: string): Expression {
  const { node } = expression;
  const d = (e: Expression): Expression => slope(e, by);
  switch (node.op) {
    case "input":
      return node.name === by ? ONE : ZERO;
    case "constant":
    case "column":
    case "refuse":
    case "floor":
    case "ceiling":
    case "count":
      return ZERO;
    case "named":
    case "round":
      return d(node.a);
    case "sum":
      throw new Error("A sum over a range has no slope by a single input");
    case "add":
      return plus(d(node.a), d(node.b));
    case "subtract":
      return minus(d(node.a), d(node.b));
    case "multiply":
      return plus(times(d(node.a), node.b), times(node.a, d(node.b)));
    case "divide":
      return minus(over(d(node.a), node.b), over(times(node.a, d(node.b)), node.b.power(2)));
    case "ln":
      return over(d(node.a), node.a);
    case "exp":
      return times(expression, d(node.a));
    case "power":
      return plus(
        times(times(node.b, node.a.power(node.b.minus(1))), d(node.a)),
        isZero(d(node.b)) ? ZERO : times(times(expression, node.a.ln()), d(node.b)),
      );
    case "min":
      return pick(node.a.isAtMost(node.b), d(node.a), d(node.b));
    case "max":
      return pick(node.b.isAtMost(node.a), d(node.a), d(node.b));
    case "choose":
      return pick(node.when, d(node.then), d(node.otherwise));
  }
}

/**
 * The expanded uncertainty of a formula's result by the law of propagation (GUM, JCGM 100:2008, 5.1.2), the inputs
 * taken as independent: k √Σ(slope × standard uncertainty)². `standard` names, for each uncertain input, the input that
 * carries its standard uncertainty.
 */
export function uncertainty<I extends Inputs>(
  of: Formula<I>,
  title: string,
  standard: Partial<Record<keyof I & string, string>>,
): Formula {
  const { of: expression, name, quantity } = result(of);
  const uncertain = Object.entries(standard) as [keyof I & string, string][];
  const extra = Object.fromEntries(uncertain.map(([by, u]) => [u, of.inputs[by] as Quantity]));
  const variance = uncertain
    .map(([by, u]) => times(slope(expression, by), input(u)).power(2))
    .reduce((a, b) => a.plus(b));
  return formula(
    {
      title,
      rule: `law of propagation for ${of.title.toLowerCase()}, the readings independent: coverage factor k times the root of the sum of (slope × standard uncertainty) squared`,
      source: "JCGM 100:2008 (GUM), 5.1.2 and 6.2.1",
    },
    { ...of.inputs, ...extra, k: { unit: "" } } as Inputs,
    `expanded uncertainty of ${name}`,
    quantity,
    ({ k }) => (k as Expression).times(variance.sqrt()),
  );
}

// Slopes are mostly zeros and ones; leaving them out keeps the working and the native formula readable.
const isZero = (e: Expression): boolean => e.node.op === "constant" && e.node.value.isZero();
const isOne = (e: Expression): boolean => e.node.op === "constant" && e.node.text === "1";
const plus = (a: Expression, b: Expression): Expression => (isZero(a) ? b : isZero(b) ? a : a.plus(b));
const minus = (a: Expression, b: Expression): Expression =>
  isZero(b) ? a : a.minus(b);
const times = (a: Expression, b: Expression): Expression =>
  isZero(a) || isZero(b) ? ZERO : isOne(a) ? b : isOne(b) ? a : a.times(b);
const over = (a: Expression, b: Expression): Expression => (isZero(a) ? ZERO : a.over(b));

const pick = (when: Parameters<typeof choose>[0], a: Expression, b: Expression): Expression =>
  isZero(a) && isZero(b) ? ZERO : choose(when, a, b);
