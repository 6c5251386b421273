import type { Condition, Expression } from "./expression";
import { type Notation, type Piece, binds, bracketed, infix, whole, write } from "./notation";
import type { Ratio } from "./ratio";
import { holds } from "./value";

/** The pieces that stand for the inputs in a spreadsheet: a cell's address, a range, a number, or a formula over them. */
export type Cells = Readonly<Record<string, Piece>>;

/** The expression as an ordinary spreadsheet formula, without its equals sign. */
export const native = (expression: Expression, cells: Cells): Piece => write(expression, spreadsheet(cells));

export const nativeCondition = ({ a, is, b }: Condition, cells: Cells): string =>
  comparison(native(a, cells), is, native(b, cells));

export function number(value: Ratio, text = String(value.toNumber())): Piece {
  return { text, binds: text.startsWith("-") ? binds.sum : binds.whole, is: value };
}

export const times = (a: Piece, b: Piece): Piece => infix("multiply", a, b, language);
export const over = (a: Piece, b: Piece): Piece => infix("divide", a, b, language);

const language = {
  signs: { add: "+", subtract: "-", multiply: "*", divide: "/", power: "^" },
  folds: true,
} as const;

const NAMES = { min: "MIN", max: "MAX", ln: "LN", exp: "EXP", sqrt: "SQRT" } as const;

/** A spreadsheet's 4.000000000000001 must not cost a fifth bar: noise is rounded off before a whole number is taken. */
const steady = (piece: Piece): string => `ROUND(${piece.text},9)`;

/** MIN and MAX leave out a text in a cell, such as 98 %, where arithmetic counts with it. */
const counted = ({ text, binds: tightness, is }: Piece): string =>
  tightness === binds.whole && is === undefined && !text.endsWith(")") ? `1*${text}` : text;

/** A limit is met within the noise of the spreadsheet's numbers; numbers as they stand are compared as they are. */
function comparison(a: Piece, is: Condition["is"], b: Piece): string {
  const asTheyStand = (a.binds === binds.whole && b.binds === binds.whole) || b.is !== undefined || is === "=";
  const limit = asTheyStand ? b.text : `${bracketed(b, binds.product)}*(1${is === "<=" ? "+" : "-"}1E-9)`;
  return `${a.text}${is}${limit}`;
}

const spreadsheet = (cells: Cells): Notation => ({
  ...language,
  leaf: (node) => {
    if (node.op === "named") return null;
    return node.op === "constant" ? number(node.value, node.text) : (cells[node.name] ?? null);
  },
  call: (op, pieces) => {
    const [a] = pieces;
    if (op === "ceiling") return whole(`ROUNDUP(${steady(a as Piece)},0)`);
    if (op === "floor") return whole(`INT(${steady(a as Piece)})`);
    if (op === "count") return whole(`SUMPRODUCT(ISNUMBER(${a?.text})*1)`);
    if (op === "total" && a?.binds === binds.whole) return whole(`SUM(${a.text})`);
    if (op === "total" || op === "sum") return whole(`SUMPRODUCT(${a?.text})`);
    const written = op === "min" || op === "max" ? counted : ({ text }: Piece) => text;
    return whole(`${NAMES[op]}(${pieces.map(written).join(",")})`);
  },
  round: (a, places, rounding) => {
    if (a.is?.isZero()) return a;
    if (rounding === "down") return whole(`ROUNDDOWN(${steady(a)},${places.text})`);
    const halfAway = `ROUND(${a.text},${places.text})`;
    if (rounding === "half away from zero") return whole(halfAway);
    // A tie above an even digit is cut; every other value rounds as usual. Noise must not hide a tie.
    const isTieOnEven = `MOD(ROUND(ABS(${a.text})*10^${bracketed(places, binds.whole)},6),2)=0.5`;
    const halfEven = `IF(${isTieOnEven},ROUNDDOWN(${a.text},${places.text}),${halfAway})`;
    if (rounding === "half to even") return whole(halfEven);
    if (rounding.is) return whole(rounding.is.isZero() ? halfAway : halfEven);
    return whole(`IF(${rounding.text}=0,${halfAway},${halfEven})`);
  },
  choose: (a, is, b, then, otherwise) => {
    if (a.is && b.is) return holds(a.is, is, b.is) ? then() : otherwise();
    return whole(`IF(${comparison(a, is, b)},${then().text},${otherwise().text})`);
  },
  refuse: () => whole("NA()"),
});
