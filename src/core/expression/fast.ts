import type { Condition, Expression } from "./expression";

/**
 * The fast reading: a formula over long columns in float64, a block of rows at a time. Every lane of a block knows the
 * magnitude of what went into it, so that its error is known: at most size × steps × 2⁻⁵³, first order, with the steps
 * counted along the formula. Where that error could change a rounding or a choice, the row is doubtful and the exact
 * reading decides it.
 */

/** Writes a column's numbers from a row on into an array, NaN where a row must be read exactly; gives the largest magnitude, NaN where one is. */
export type Fill = (into: Float64Array, start: number, count: number) => number;

/** A column, or one number for every row. */
export type FastInputs = Readonly<Record<string, Fill | number>>;

/** Is given the results of a block of rows, in an array that the next block will be computed into. */
export type Take = (results: Float64Array, start: number, count: number) => void;

const UNIT = 2 ** -53;
const LARGEST_WHOLE = 2 ** 52;
const BLOCK = 2048;
/** A cell's decimal and its float64 differ by one step; a unit's factor, its product and a division by 1000 are three more. */
const INPUT_STEPS = 4;

/** Numbers of one block of rows. */
interface Lane {
  readonly values: Float64Array;
  /** None of the numbers, nor of those that they are a sum or difference of, is larger. */
  readonly size: number;
  readonly steps: number;
}
type Run = (block: Block) => Lane;

interface Block {
  readonly inputs: ReadonlyMap<string, Lane>;
  readonly count: number;
  readonly doubt: Doubt;
}

/** The rows of a block that float64 cannot settle. */
class Doubt {
  readonly rows = new Uint8Array(BLOCK);
  any = false;

  at(row: number): void {
    this.rows[row] = 1;
    this.any = true;
  }

  all(): void {
    this.rows.fill(1);
    this.any = true;
  }

  clear(): void {
    if (this.any) this.rows.fill(0);
    this.any = false;
  }
}

/** Hands over the results, and gives the rows of them that are doubtful. */
export function fast(expression: Expression, inputs: FastInputs, rows: number, take: Take): readonly number[] {
  const run = compile(expression);
  const read = Object.entries(inputs).map(([name, given]) => [name, typeof given === "number" ? same(given) : column(given)] as const);
  const lanes = new Map<string, Lane>();
  const doubt = new Doubt();
  const unread = new Doubt();
  const doubtful: number[] = [];
  for (let start = 0; start < rows; start += BLOCK) {
    const count = Math.min(BLOCK, rows - start);
    doubt.clear();
    unread.clear();
    for (const [name, lane] of read) lanes.set(name, lane(start, count, unread));
    const { values, size } = run({ inputs: lanes, count, doubt });
    if (!Number.isFinite(size)) doubt.all();
    take(values, start, count);
    if (doubt.any || unread.any) for (let i = 0; i < count; i++) if (doubt.rows[i] || unread.rows[i]) doubtful.push(start + i);
  }
  return doubtful;
}

/** The lane of an input from a row on; rows that it cannot give are marked. */
type Read = (start: number, count: number, unread: Doubt) => Lane;

function column(fill: Fill): Read {
  const values = new Float64Array(BLOCK);
  return (start, count, unread) => {
    const size = fill(values, start, count);
    return { values, size: Number.isNaN(size) ? sizeOfRead(values, count, unread) : size, steps: INPUT_STEPS };
  };
}

function sizeOfRead(values: Float64Array, count: number, unread: Doubt): number {
  let size = 0;
  for (let i = 0; i < count; i++) {
    const value = values[i] as number;
    if (Number.isNaN(value)) unread.at(i);
    else size = Math.max(size, Math.abs(value));
  }
  return size;
}

function same(value: number): Read {
  const all = constant(value, INPUT_STEPS);
  return (_start, _count, unread) => {
    if (Number.isNaN(value)) unread.all();
    return all;
  };
}

const constant = (value: number, steps: number): Lane => ({ values: new Float64Array(BLOCK).fill(value), size: Math.abs(value), steps });

function compile(expression: Expression): Run {
  const { node } = expression;
  switch (node.op) {
    case "input":
      return ({ inputs }) => inputs.get(node.name) ?? missing(node.name);
    case "constant":
      return fixed(node.value.toNumber());
    case "named":
      return compile(node.a);
    case "add":
    case "subtract":
      return sum(compile(node.a), compile(node.b), node.op === "add" ? 1 : -1);
    case "multiply":
      return product(compile(node.a), compile(node.b));
    case "divide":
      return quotient(compile(node.a), compile(node.b));
    case "min":
    case "max":
      return extreme(compile(node.a), compile(node.b), node.op);
    case "choose":
      return choice(node.when, compile(node.then), compile(node.otherwise));
    case "round":
      return rounded(compile(node.a), compile(node.places), node.rounding);
    case "floor":
      return whole(compile(node.a), Math.floor);
    case "ceiling":
      return whole(compile(node.a), Math.ceil);
    case "ln":
    case "exp":
    case "power":
      return curve(expression);
    case "refuse":
      return doubtfulLane;
    case "sum":
    case "count":
    case "column":
      throw new Error("The fast reading runs along columns; a formula with a sum of its own has none");
  }
}

const missing = (name: string): never => {
  throw new Error(`No column was given for ${name}`);
};

function fixed(value: number): Run {
  const all = constant(value, Number.isInteger(value) ? 0 : 1);
  return () => all;
}

function sum(a: Run, b: Run, sign: 1 | -1): Run {
  const values = new Float64Array(BLOCK);
  return (block) => {
    const [x, y] = [a(block), b(block)];
    const { values: left } = x;
    const { values: right } = y;
    for (let i = 0; i < block.count; i++) values[i] = (left[i] as number) + sign * (right[i] as number);
    return { values, size: x.size + y.size, steps: Math.max(x.steps, y.steps) + 1 };
  };
}

function product(a: Run, b: Run): Run {
  const values = new Float64Array(BLOCK);
  return (block) => {
    const [x, y] = [a(block), b(block)];
    const { values: left } = x;
    const { values: right } = y;
    for (let i = 0; i < block.count; i++) values[i] = (left[i] as number) * (right[i] as number);
    return { values, size: x.size * y.size, steps: x.steps + y.steps + 1 };
  };
}

function quotient(a: Run, b: Run): Run {
  const values = new Float64Array(BLOCK);
  return (block) => {
    const [x, y] = [a(block), b(block)];
    let least = Infinity;
    for (let i = 0; i < block.count; i++) {
      const divisor = y.values[i] as number;
      if (Math.abs(divisor) < least) least = Math.abs(divisor);
      values[i] = (x.values[i] as number) / divisor;
    }
    return { values, size: (x.size * y.size) / (least * least), steps: x.steps + y.steps + 2 };
  };
}

function extreme(a: Run, b: Run, op: "min" | "max"): Run {
  const values = new Float64Array(BLOCK);
  const pick = Math[op];
  return (block) => {
    const [x, y] = [a(block), b(block)];
    for (let i = 0; i < block.count; i++) values[i] = pick(x.values[i] as number, y.values[i] as number);
    return { values, size: Math.max(x.size, y.size), steps: Math.max(x.steps, y.steps) };
  };
}

function choice({ a, is, b }: Condition, then: Run, otherwise: Run): Run {
  const values = new Float64Array(BLOCK);
  const [left, right] = [compile(a), compile(b)];
  return (block) => {
    const [x, y] = [left(block), right(block)];
    // A branch that is not taken must not raise doubts.
    const doubts = [new Doubt(), new Doubt()] as const;
    const [t, o] = [then({ ...block, doubt: doubts[0] }), otherwise({ ...block, doubt: doubts[1] })];
    const margin = (x.size + y.size) * (x.steps + y.steps + 1) * UNIT;
    for (let i = 0; i < block.count; i++) {
      const gap = (x.values[i] as number) - (y.values[i] as number);
      const takes = is === "<" ? gap < 0 : is === "<=" ? gap <= 0 : gap === 0;
      const exact = x.steps + y.steps === 0 || (gap === 0 && isGiven(a) && isGiven(b));
      if ((!exact && !(Math.abs(gap) > margin)) || doubts[takes ? 0 : 1].rows[i]) block.doubt.at(i);
      values[i] = (takes ? t : o).values[i] as number;
    }
    return { values, size: Math.max(t.size, o.size), steps: Math.max(t.steps, o.steps) };
  };
}

/** Numbers as they were given compare alike as decimals and as float64. */
const isGiven = ({ node }: Expression): boolean => node.op === "input" || node.op === "constant";

const TENS = Array.from({ length: 23 }, (_, power) => Number(`1e${power}`));

function rounded(a: Run, places: Run, rounding: "half away from zero" | "half to even" | "down" | Expression): Run {
  const values = new Float64Array(BLOCK);
  const scales = new Float64Array(BLOCK);
  const shift = rounding === "down" ? 0 : 0.5;
  let scaled: Lane | undefined;
  return (block) => {
    const [x, to] = [a(block), places(block)];
    // A column's lane is another one in every block, a constant's is the same.
    if (to !== scaled) for (let i = 0; i < BLOCK; i++) scales[i] = TENS[to.values[i] as number] ?? NaN;
    scaled = to;
    const { values: from } = x;
    const error = x.size * (x.steps + 3) * UNIT;
    for (let i = 0; i < block.count; i++) {
      const scale = scales[i] as number;
      const value = from[i] as number;
      const shifted = Math.abs(value) * scale + shift;
      const floor = Math.floor(shifted);
      // Above 2⁵² all numbers are whole and lie on the border.
      const fromMiddle = Math.abs(shifted - floor - 0.5);
      if (!(fromMiddle < 0.5 - (error * scale + UNIT))) block.doubt.at(i);
      values[i] = value < 0 ? -(floor / scale) : floor / scale;
    }
    return { values, size: x.size + 1, steps: 1 };
  };
}

function whole(a: Run, to: (x: number) => number): Run {
  const values = new Float64Array(BLOCK);
  return (block) => {
    const x = a(block);
    const error = x.size * (x.steps + 1) * UNIT;
    for (let i = 0; i < block.count; i++) {
      const value = x.values[i] as number;
      if (!(Math.abs(value - Math.round(value)) > error) || Math.abs(value) > LARGEST_WHOLE) block.doubt.at(i);
      values[i] = to(value);
    }
    return { values, size: x.size + 1, steps: 0 };
  };
}

/** Roots, powers, logarithms: the library's functions are taken to be right to two units in the last place. */
const CURVE_STEPS = 4;

function curve({ node }: Expression): Run {
  const values = new Float64Array(BLOCK);
  if (node.op === "power") {
    const [a, b] = [compile(node.a), compile(node.b)];
    return (block) => {
      const [x, y] = [a(block), b(block)];
      let size = 0;
      for (let i = 0; i < block.count; i++) {
        const [base, exponent] = [x.values[i] as number, y.values[i] as number];
        const value = base ** exponent;
        if (Number.isNaN(value)) block.doubt.at(i);
        const stretch = (Math.abs(exponent) * x.size) / Math.abs(base) + Math.abs(Math.log(Math.abs(base))) * y.size;
        values[i] = value;
        if (value !== 0) size = largest(size, Math.abs(value) * (1 + stretch));
      }
      return { values, size, steps: x.steps + y.steps + CURVE_STEPS };
    };
  }
  if (node.op !== "ln" && node.op !== "exp") throw new Error("Only powers, logarithms and exponentials are curves");
  const [a, isLn] = [compile(node.a), node.op === "ln"];
  return (block) => {
    const x = a(block);
    let size = 0;
    for (let i = 0; i < block.count; i++) {
      const at = x.values[i] as number;
      const value = isLn ? Math.log(at) : Math.exp(at);
      if (Number.isNaN(value)) block.doubt.at(i);
      values[i] = value;
      size = largest(size, isLn ? Math.abs(value) + x.size / at : value * (1 + x.size));
    }
    return { values, size, steps: x.steps + CURVE_STEPS };
  };
}

/** Rows that could not be read are none. */
const largest = (a: number, b: number): number => (b > a ? b : a);

function doubtfulLane(block: Block): Lane {
  block.doubt.all();
  return constant(0, 0);
}
