import type { Fault } from "../fault";
import { Ratio } from "./ratio";
import type { Rounding } from "./rounding";

/** A formula of the trade as data: built once, then read as a value, a working, a native formula, slopes, a fast loop. */
export type Node =
  | { readonly op: "input"; readonly name: string }
  /** A range; it stands only inside a sum. */
  | { readonly op: "column"; readonly name: string }
  | { readonly op: "constant"; readonly value: Ratio; readonly text: string; readonly about?: About }
  | { readonly op: "add" | "subtract" | "multiply" | "divide" | "power"; readonly a: Expression; readonly b: Expression }
  | { readonly op: "min" | "max"; readonly a: Expression; readonly b: Expression }
  | { readonly op: "ln" | "exp" | "floor" | "ceiling"; readonly a: Expression }
  | { readonly op: "round"; readonly a: Expression; readonly places: Expression; readonly rounding: Rounding | Expression }
  | { readonly op: "sum"; readonly each: Expression }
  /** How many rows a column has. */
  | { readonly op: "count"; readonly each: Expression }
  | { readonly op: "choose"; readonly when: Condition; readonly then: Expression; readonly otherwise: Expression }
  /** No value: the fault says why. */
  | { readonly op: "refuse"; readonly fault: Fault }
  /** A part that has a name of its own in the trade. */
  | { readonly op: "named"; readonly name: string; readonly unit: string; readonly a: Expression };

/** Where a constant comes from. */
export interface About {
  readonly name: string;
  readonly unit: string;
  readonly source: string;
}

export interface Condition {
  readonly a: Expression;
  readonly is: "<" | "<=" | "=";
  readonly b: Expression;
}

type Term = Expression | number;

export class Expression {
  constructor(readonly node: Node) {}

  plus = (b: Term): Expression => this.with("add", b);
  minus = (b: Term): Expression => this.with("subtract", b);
  times = (b: Term): Expression => this.with("multiply", b);
  over = (b: Term): Expression => this.with("divide", b);
  power = (b: Term): Expression => this.with("power", b);
  min = (b: Term): Expression => this.with("min", b);
  max = (b: Term): Expression => this.with("max", b);
  sqrt = (): Expression => this.power(constant("0.5"));
  ln = (): Expression => new Expression({ op: "ln", a: this });
  exp = (): Expression => new Expression({ op: "exp", a: this });
  floor = (): Expression => new Expression({ op: "floor", a: this });
  ceiling = (): Expression => new Expression({ op: "ceiling", a: this });
  isBelow = (b: Term): Condition => ({ a: this, is: "<", b: term(b) });
  isAtMost = (b: Term): Condition => ({ a: this, is: "<=", b: term(b) });
  equals = (b: Term): Condition => ({ a: this, is: "=", b: term(b) });
  named = (name: string, unit: string): Expression => new Expression({ op: "named", name, unit, a: this });
  /** `rounding` may be an expression: 1 there means half to even, 0 half away from zero. */
  round = (places: Term, rounding: Rounding | Expression): Expression =>
    new Expression({ op: "round", a: this, places: term(places), rounding });

  private with(op: "add" | "subtract" | "multiply" | "divide" | "power" | "min" | "max", b: Term): Expression {
    return new Expression({ op, a: this, b: term(b) });
  }
}

export const input = (name: string): Expression => new Expression({ op: "input", name });
export const column = (name: string): Expression => new Expression({ op: "column", name });
export const constant = (text: string, about?: About): Expression =>
  new Expression({ op: "constant", value: Ratio.of(text), text, ...(about ? { about } : {}) });
export const sum = (each: Expression): Expression => new Expression({ op: "sum", each });
export const count = (each: Expression): Expression => new Expression({ op: "count", each });
export const choose = (when: Condition, then: Expression, otherwise: Expression): Expression =>
  new Expression({ op: "choose", when, then, otherwise });
export const refuse = (fault: Fault): Expression => new Expression({ op: "refuse", fault });

const term = (t: Term): Expression => (typeof t === "number" ? constant(String(t)) : t);
export const ZERO = term(0);
export const ONE = term(1);

/** The expressions that an expression is made of. */
export function parts({ node }: Expression): readonly Expression[] {
  switch (node.op) {
    case "input":
    case "column":
    case "constant":
    case "refuse":
      return [];
    case "ln":
    case "exp":
    case "floor":
    case "ceiling":
    case "named":
      return [node.a];
    case "sum":
    case "count":
      return [node.each];
    case "round":
      return node.rounding instanceof Expression ? [node.a, node.places, node.rounding] : [node.a, node.places];
    case "choose":
      return [node.when.a, node.when.b, node.then, node.otherwise];
    default:
      return [node.a, node.b];
  }
}
