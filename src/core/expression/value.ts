import { fail } from "../fault";
import { type Condition, Expression, parts } from "./expression";
import { Ratio, zero } from "./ratio";
import { type Rounding, round } from "./rounding";

/** What the inputs hold: a number each, or a row of numbers for a column. */
export type Given = Readonly<Record<string, Ratio | readonly Ratio[]>>;

interface Frame {
  readonly given: Given;
  /** The row that a sum is at. */
  row: number;
  /** The value of each named part, once it is known. */
  readonly known: Map<Expression, Ratio>;
}
type Evaluate = (frame: Frame) => Ratio;

const compiled = new WeakMap<Expression, Evaluate>();

/** The exact value. Throws the fault of a refusal, and of a divisor that is zero. */
export function value(expression: Expression, given: Given): Ratio {
  return compile(expression)({ given, row: 0, known: new Map() });
}

function compile(expression: Expression): Evaluate {
  const known = compiled.get(expression);
  if (known) return known;
  const made = build(expression);
  compiled.set(expression, made);
  return made;
}

function build(expression: Expression): Evaluate {
  const { node } = expression;
  switch (node.op) {
    case "input":
      return ({ given }) => given[node.name] as Ratio;
    case "column":
      return ({ given, row }) => (given[node.name] as readonly Ratio[])[row] as Ratio;
    case "constant":
      return () => node.value;
    case "refuse":
      return () => fail(node.fault);
    case "named": {
      const a = compile(node.a);
      return (frame) => {
        let result = frame.known.get(expression);
        if (!result) frame.known.set(expression, (result = a(frame)));
        return result;
      };
    }
    case "sum":
      return total(node.each);
    case "count": {
      const name = columnIn(node.each);
      return ({ given }) => Ratio.of((given[name] as readonly Ratio[]).length);
    }
    case "choose": {
      const [when, then, otherwise] = [condition(node.when), compile(node.then), compile(node.otherwise)];
      return (frame) => (when(frame) ? then(frame) : otherwise(frame));
    }
    case "round":
      return rounded(node.a, node.places, node.rounding);
    case "ln":
    case "exp":
    case "floor":
    case "ceiling": {
      const a = compile(node.a);
      const { op } = node;
      return (frame) => finite(a(frame)[op]());
    }
    default: {
      const [a, b] = [compile(node.a), compile(node.b)];
      return binary(node.op, a, b);
    }
  }
}

function binary(op: "add" | "subtract" | "multiply" | "divide" | "power" | "min" | "max", a: Evaluate, b: Evaluate): Evaluate {
  switch (op) {
    case "add":
      return (f) => a(f).plus(b(f));
    case "subtract":
      return (f) => a(f).minus(b(f));
    case "multiply":
      return (f) => a(f).times(b(f));
    case "power":
      return (f) => {
        const [base, exponent] = [a(f), b(f)];
        if (base.isZero() && exponent.compare(zero) < 0) fail({ kind: "zero-divisor" });
        return finite(base.power(exponent));
      };
    case "divide":
      return (f) => {
        const divisor = b(f);
        if (divisor.isZero()) fail({ kind: "zero-divisor" });
        return a(f).over(divisor);
      };
    case "min":
      return (f) => lesser(a(f), b(f));
    case "max":
      return (f) => lesser(a(f).negated(), b(f).negated()).negated();
  }
}

const finite = (result: Ratio): Ratio => (result.isFinite() ? result : fail({ kind: "not-finite", what: "the result" }));

const lesser = (a: Ratio, b: Ratio): Ratio => (a.compare(b) <= 0 ? a : b);

function condition({ a, is, b }: Condition): (frame: Frame) => boolean {
  const [left, right] = [compile(a), compile(b)];
  return (frame) => holds(left(frame), is, right(frame));
}

export function holds(a: Ratio, is: Condition["is"], b: Ratio): boolean {
  const side = a.compare(b);
  return is === "<" ? side < 0 : is === "<=" ? side <= 0 : side === 0;
}

function rounded(of: Expression, places: Expression, rounding: Rounding | Expression): Evaluate {
  const [a, to] = [compile(of), compile(places)];
  if (!(rounding instanceof Expression)) return (frame) => round(a(frame), to(frame).toNumber(), rounding);
  const toEven = compile(rounding);
  return (frame) =>
    round(a(frame), to(frame).toNumber(), toEven(frame).isZero() ? "half away from zero" : "half to even");
}

function total(each: Expression): Evaluate {
  const [term, name] = [compile(each), columnIn(each)];
  return (frame) => {
    const rows = (frame.given[name] as readonly Ratio[]).length;
    const outer = frame.row;
    let result = zero;
    for (frame.row = 0; frame.row < rows; frame.row++) result = result.plus(term(frame));
    frame.row = outer;
    return result;
  };
}

/** The first column of a sum's term: it tells how many rows there are. */
function columnIn(each: Expression): string {
  const name = columnsIn(each)[0];
  if (name === undefined) throw new Error("A sum needs a column");
  return name;
}

export function columnsIn(expression: Expression): readonly string[] {
  const { node } = expression;
  return node.op === "column" ? [node.name] : parts(expression).flatMap(columnsIn);
}
