import type { Expression } from "./expression";
import { type Condition } from "./expression";

/**
 * The fast reading: a formula over long columns in float64. Each number carries the magnitude of what went into it, so
 * that its error is known: at most magnitude × steps × 2⁻⁵³, first order, with the steps counted along the formula.
 * Where that error could change a rounding, the row is reported as doubtful and the exact reading decides it.
 */
export interface FastColumn {
  readonly values: Float64Array;
  /** Rows whose rounding or choice float64 cannot settle. */
  readonly doubtful: readonly number[];
}

/** Writes a column's numbers from a row on into an array; NaN where a row must be read exactly. */
export type Fill = (into: Float64Array, start: number, count: number) => void;

/** A column, or one number for every row. */
export type FastInputs = Readonly<Record<string, Fill | number>>;

const UNIT = 2 ** -53;
const LARGEST_WHOLE = 2 ** 52;
const BLOCK = 1024;
/** A cell's decimal and its float64 differ by one step; a unit's factor, its product and a division by 1000 are three more. */
const INPUT_STEPS = 4;

/** Numbers of one block of rows. `sizes` is the same array as `values` where nothing was subtracted and nothing is below zero. */
interface Lane {
  readonly values: Float64Array;
  readonly sizes: Float64Array;
  readonly steps: number;
}
type Run = (block: Block) => Lane;

interface Block {
  readonly inputs: ReadonlyMap<string, Lane>;
  readonly count: number;
  /** Marks the rows of the block that float64 cannot settle. */
  readonly doubt: Uint8Array;
}

export function fast(expression: Expression, inputs: FastInputs, rows: number): FastColumn {
  const run = compile(expression);
  const read = Object.entries(inputs).map(([name, given]) => [name, typeof given === "number" ? same(given) : column(given)] as const);
  const values = new Float64Array(rows);
  const unread = new Uint8Array(BLOCK);
  const doubt = new Uint8Array(BLOCK);
  const doubtful: number[] = [];
  for (let start = 0; start < rows; start += BLOCK) {
    const count = Math.min(BLOCK, rows - start);
    unread.fill(0);
    doubt.fill(0);
    const lane = run({ inputs: new Map(read.map(([name, lanes]) => [name, lanes(start, count, unread)])), count, doubt });
    values.set(lane.values.subarray(0, count), start);
    for (let i = 0; i < count; i++) if (unread[i] || doubt[i] || !Number.isFinite(lane.sizes[i] as number)) doubtful.push(start + i);
  }
  return { values, doubtful };
}

/** The lane of an input from a row on; rows that it cannot give are marked. */
type Read = (start: number, count: number, unread: Uint8Array) => Lane;

function column(fill: Fill): Read {
  const own = lane();
  return (start, count, unread) => {
    fill(own.values, start, count);
    let negative = false;
    for (let i = 0; i < count; i++) if (!((own.values[i] as number) >= 0)) negative = true;
    if (negative)
      for (let i = 0; i < count; i++) {
        own.sizes[i] = Math.abs(own.values[i] as number);
        if (Number.isNaN(own.values[i])) unread[i] = 1;
      }
    return { values: own.values, sizes: negative ? own.sizes : own.values, steps: INPUT_STEPS };
  };
}

function same(value: number): Read {
  const all = { ...filled(value), steps: INPUT_STEPS };
  return (_start, _count, unread) => {
    if (Number.isNaN(value)) unread.fill(1);
    return all;
  };
}

function filled(value: number): { values: Float64Array; sizes: Float64Array } {
  const values = new Float64Array(BLOCK).fill(value);
  return { values, sizes: value < 0 ? new Float64Array(BLOCK).fill(-value) : values };
}

function compile(expression: Expression): Run {
  const { node } = expression;
  switch (node.op) {
    case "input":
      return ({ inputs }) => inputs.get(node.name) ?? missing(node.name);
    case "constant":
      return constant(node.value.toNumber());
    case "named":
      return compile(node.a);
    case "add":
    case "subtract":
      return addition(compile(node.a), compile(node.b), node.op === "add" ? 1 : -1);
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

const lane = (): { values: Float64Array; sizes: Float64Array } => ({ values: new Float64Array(BLOCK), sizes: new Float64Array(BLOCK) });

const missing = (name: string): never => {
  throw new Error(`No column was given for ${name}`);
};

function constant(value: number): Run {
  const all = { ...filled(value), steps: Number.isInteger(value) ? 0 : 1 };
  return () => all;
}

const isPlain = (...lanes: readonly Lane[]): boolean => lanes.every(({ values, sizes }) => values === sizes);

function addition(a: Run, b: Run, sign: 1 | -1): Run {
  const own = lane();
  return (block) => {
    const [x, y] = [a(block), b(block)];
    const plain = sign === 1 && isPlain(x, y);
    for (let i = 0; i < block.count; i++) own.values[i] = (x.values[i] as number) + sign * (y.values[i] as number);
    if (!plain) for (let i = 0; i < block.count; i++) own.sizes[i] = (x.sizes[i] as number) + (y.sizes[i] as number);
    return { values: own.values, sizes: plain ? own.values : own.sizes, steps: Math.max(x.steps, y.steps) + 1 };
  };
}

function product(a: Run, b: Run): Run {
  const own = lane();
  return (block) => {
    const [x, y] = [a(block), b(block)];
    const plain = isPlain(x, y);
    for (let i = 0; i < block.count; i++) own.values[i] = (x.values[i] as number) * (y.values[i] as number);
    if (!plain) for (let i = 0; i < block.count; i++) own.sizes[i] = (x.sizes[i] as number) * (y.sizes[i] as number);
    return { values: own.values, sizes: plain ? own.values : own.sizes, steps: x.steps + y.steps + 1 };
  };
}

function quotient(a: Run, b: Run): Run {
  const own = lane();
  return (block) => {
    const [x, y] = [a(block), b(block)];
    const plain = isPlain(x, y);
    for (let i = 0; i < block.count; i++) own.values[i] = (x.values[i] as number) / (y.values[i] as number);
    if (!plain)
      for (let i = 0; i < block.count; i++) {
        const divisor = y.values[i] as number;
        own.sizes[i] = ((x.sizes[i] as number) * (y.sizes[i] as number)) / (divisor * divisor);
      }
    return { values: own.values, sizes: plain ? own.values : own.sizes, steps: x.steps + y.steps + 2 };
  };
}

function extreme(a: Run, b: Run, op: "min" | "max"): Run {
  const own = lane();
  const pick = Math[op];
  return (block) => {
    const [x, y] = [a(block), b(block)];
    for (let i = 0; i < block.count; i++) {
      own.values[i] = pick(x.values[i] as number, y.values[i] as number);
      own.sizes[i] = Math.max(x.sizes[i] as number, y.sizes[i] as number);
    }
    return { ...own, steps: Math.max(x.steps, y.steps) };
  };
}

function choice({ a, is, b }: Condition, then: Run, otherwise: Run): Run {
  const own = lane();
  const [left, right] = [compile(a), compile(b)];
  return (block) => {
    const [x, y] = [left(block), right(block)];
    // A branch that is not taken must not raise doubts.
    const doubts = [new Uint8Array(block.count), new Uint8Array(block.count)] as const;
    const [t, o] = [then({ ...block, doubt: doubts[0] }), otherwise({ ...block, doubt: doubts[1] })];
    for (let i = 0; i < block.count; i++) {
      const gap = (x.values[i] as number) - (y.values[i] as number);
      const takes = is === "<" ? gap < 0 : is === "<=" ? gap <= 0 : gap === 0;
      const exact = x.steps + y.steps === 0 || (gap === 0 && isGiven(a) && isGiven(b));
      if (!exact && Math.abs(gap) <= ((x.sizes[i] as number) + (y.sizes[i] as number)) * (x.steps + y.steps + 1) * UNIT) block.doubt[i] = 1;
      if (doubts[takes ? 0 : 1][i]) block.doubt[i] = 1;
      own.values[i] = (takes ? t : o).values[i] as number;
      own.sizes[i] = (takes ? t : o).sizes[i] as number;
    }
    return { ...own, steps: Math.max(t.steps, o.steps) };
  };
}

/** Numbers as they were given compare alike as decimals and as float64. */
const isGiven = ({ node }: Expression): boolean => node.op === "input" || node.op === "constant";

const TENS = Array.from({ length: 23 }, (_, power) => Number(`1e${power}`));

function rounded(a: Run, places: Run, rounding: "half away from zero" | "half to even" | "down" | Expression): Run {
  const own = lane();
  const shift = rounding === "down" ? 0 : 0.5;
  return (block) => {
    const [x, to] = [a(block), places(block)];
    for (let i = 0; i < block.count; i++) {
      const scale = TENS[to.values[i] as number] ?? NaN;
      const value = x.values[i] as number;
      const shifted = Math.abs(value) * scale + shift;
      const floor = Math.floor(shifted);
      const distance = Math.min(shifted - floor, floor + 1 - shifted);
      const error = ((x.sizes[i] as number) * scale * (x.steps + 3) + 1) * UNIT;
      if (!(distance > error) || shifted > LARGEST_WHOLE) block.doubt[i] = 1;
      own.values[i] = value < 0 ? -floor / scale : floor / scale;
      own.sizes[i] = floor / scale;
    }
    return { ...own, steps: 1 };
  };
}

function whole(a: Run, to: (x: number) => number): Run {
  const own = lane();
  return (block) => {
    const x = a(block);
    for (let i = 0; i < block.count; i++) {
      const value = x.values[i] as number;
      const distance = Math.abs(value - Math.round(value));
      if (!(distance > (x.sizes[i] as number) * (x.steps + 1) * UNIT) || Math.abs(value) > LARGEST_WHOLE) block.doubt[i] = 1;
      own.values[i] = to(value);
      own.sizes[i] = Math.abs(own.values[i] as number);
    }
    return { ...own, steps: 0 };
  };
}

/** Roots, powers, logarithms: the library's functions are taken to be right to two units in the last place. */
const CURVE_STEPS = 4;

function curve({ node }: Expression): Run {
  const own = lane();
  if (node.op === "power") {
    const [a, b] = [compile(node.a), compile(node.b)];
    return (block) => {
      const [x, y] = [a(block), b(block)];
      for (let i = 0; i < block.count; i++) {
        const [base, exponent] = [x.values[i] as number, y.values[i] as number];
        const value = base ** exponent;
        const stretch = (Math.abs(exponent) * (x.sizes[i] as number)) / Math.abs(base) + Math.abs(Math.log(Math.abs(base))) * (y.sizes[i] as number);
        own.values[i] = value;
        own.sizes[i] = Math.abs(value) * (1 + (value === 0 ? 0 : stretch));
      }
      return { ...own, steps: x.steps + y.steps + CURVE_STEPS };
    };
  }
  if (node.op !== "ln" && node.op !== "exp") throw new Error("Only powers, logarithms and exponentials are curves");
  const [a, isLn] = [compile(node.a), node.op === "ln"];
  return (block) => {
    const x = a(block);
    for (let i = 0; i < block.count; i++) {
      const [at, size] = [x.values[i] as number, x.sizes[i] as number];
      const value = isLn ? Math.log(at) : Math.exp(at);
      own.values[i] = value;
      own.sizes[i] = isLn ? Math.abs(value) + size / at : value * (1 + size);
    }
    return { ...own, steps: x.steps + CURVE_STEPS };
  };
}

const doubtfulLane: Run = (block) => {
  block.doubt.fill(1);
  const none = new Float64Array(BLOCK);
  return { values: none, sizes: none, steps: 0 };
};
