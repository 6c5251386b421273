import type { Fault } from "../fault";
import { type Condition, Expression, type Node } from "./expression";
import { type Ratio, one, zero } from "./ratio";
import type { Rounding } from "./rounding";

/** A piece of written formula. */
export interface Piece {
  readonly text: string;
  /** How tightly it holds together: a piece is put in brackets where it stands beside something tighter. */
  readonly binds: number;
  /** The number it is, where that is known while writing. */
  readonly is?: Ratio;
}

export const binds = { comparison: 1, sum: 2, product: 3, power: 4, whole: 5 } as const;

type Leaf = Extract<Node, { op: "input" | "column" | "constant" | "named" }>;

/** How a formula is written: in a spreadsheet's language, in words, with the numbers put in. */
export interface Notation {
  readonly signs: Readonly<Record<"add" | "subtract" | "multiply" | "divide" | "power", string>>;
  /** Null lets a named part be written out. */
  leaf(node: Leaf): Piece | null;
  call(op: "min" | "max" | "ln" | "exp" | "floor" | "ceiling" | "sum" | "total" | "count" | "sqrt", pieces: readonly Piece[]): Piece;
  round(a: Piece, places: Piece, rounding: Rounding | Piece): Piece;
  choose(a: Piece, is: Condition["is"], b: Piece, then: () => Piece, otherwise: () => Piece): Piece;
  refuse(fault: Fault): Piece;
  /** Leave out what adds nothing or multiplies by one. */
  readonly folds: boolean;
}

export const whole = (text: string): Piece => ({ text, binds: binds.whole });

export function write(expression: Expression, notation: Notation): Piece {
  const { node } = expression;
  const piece = (e: Expression): Piece => write(e, notation);
  switch (node.op) {
    case "input":
    case "column":
    case "constant":
      return notation.leaf(node) ?? whole("");
    case "named":
      return notation.leaf(node) ?? piece(node.a);
    case "refuse":
      return notation.refuse(node.fault);
    case "sum":
      return notation.call(node.each.node.op === "column" ? "total" : "sum", [piece(node.each)]);
    case "count":
      return notation.call("count", [piece(node.each)]);
    case "ln":
    case "exp":
    case "floor":
    case "ceiling":
      return notation.call(node.op, [piece(node.a)]);
    case "min":
    case "max":
      return notation.call(node.op, [piece(node.a), piece(node.b)]);
    case "round":
      return notation.round(
        piece(node.a),
        piece(node.places),
        node.rounding instanceof Expression ? piece(node.rounding) : node.rounding,
      );
    case "choose":
      return notation.choose(
        piece(node.when.a),
        node.when.is,
        piece(node.when.b),
        () => piece(node.then),
        () => piece(node.otherwise),
      );
    case "power":
      return isHalf(node.b) ? notation.call("sqrt", [piece(node.a)]) : infix("power", piece(node.a), piece(node.b), notation);
    default:
      return infix(node.op, piece(node.a), piece(node.b), notation);
  }
}

type Infix = keyof Notation["signs"];

const strength: Record<Infix, number> = {
  add: binds.sum,
  subtract: binds.sum,
  multiply: binds.product,
  divide: binds.product,
  power: binds.power,
};

export function infix(op: Infix, a: Piece, b: Piece, notation: Pick<Notation, "signs" | "folds">): Piece {
  const folded = notation.folds ? fold(op, a, b) : null;
  if (folded) return folded;
  const own = strength[op];
  const left = bracketed(a, op === "power" ? own + 1 : own);
  const right = bracketed(b, op === "add" || op === "multiply" ? own : own + 1);
  return { text: left + notation.signs[op] + right, binds: own };
}

export const bracketed = (piece: Piece, atLeast: number): string =>
  piece.binds < atLeast ? `(${piece.text})` : piece.text;

function fold(op: Infix, a: Piece, b: Piece): Piece | null {
  const [aIs, bIs] = [a.is, b.is];
  const isZero = (r: Ratio | undefined): boolean => r !== undefined && r.isZero();
  const isOne = (r: Ratio | undefined): boolean => r !== undefined && r.compare(one) === 0;
  switch (op) {
    case "add":
      if (isZero(aIs)) return b;
      if (isZero(bIs)) return a;
      return null;
    case "subtract":
      return isZero(bIs) ? a : null;
    case "multiply":
      if (isZero(aIs) || isZero(bIs)) return { ...whole("0"), is: zero };
      return isOne(aIs) ? b : isOne(bIs) ? a : null;
    case "divide":
      if (isOne(bIs)) return a;
      if (isZero(aIs) && !isZero(bIs)) return { ...whole("0"), is: zero };
      return bIs && !isZero(bIs) ? timesReciprocal(a, bIs) : null;
    case "power":
      return isOne(bIs) ? a : null;
  }
}

/** To divide by 0.001 is to multiply by 1000, and reads so. */
function timesReciprocal(a: Piece, by: Ratio): Piece | null {
  const reciprocal = one.over(by);
  return by.compare(one) < 0 && by.compare(zero) > 0 && reciprocal.isInteger() && Number.isSafeInteger(reciprocal.toNumber())
    ? { text: `${bracketed(a, binds.product)}*${reciprocal.toNumber()}`, binds: binds.product }
    : null;
}

const isHalf = ({ node }: Expression): boolean => node.op === "constant" && node.text === "0.5";
