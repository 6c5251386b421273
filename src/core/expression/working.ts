import { Expression, parts } from "./expression";
import { type Amount, type Formula, type ResultCell, isAmount, isEither } from "./formula";
import { type Notation, type Piece, binds, bracketed, whole, write } from "./notation";
import type { Rounding } from "./rounding";
import { show } from "./show";
import { spaced } from "./spaced";
import { type Given, holds, value } from "./value";

/** A line of a working, and what part of the working it is. */
export interface WorkingLine {
  readonly part: "rule" | "formula" | "given" | "constant" | "step" | "rounding" | "result" | "caution" | "source";
  readonly text: string;
}

export interface Working {
  readonly title: string;
  readonly lines: readonly WorkingLine[];
}

/**
 * The lines that an attentive client or bookkeeper would write: the rule, the formula, what was put in, the constants
 * and their sources, and each step with its numbers. `words` tells how each input was given; `results` the last lines.
 */
export function working(
  formula: Formula,
  given: Given,
  words: Readonly<Record<string, string | null>>,
  results: readonly string[],
): Working {
  const amounts = formula.rows.flat().flatMap(amountsIn);
  const all = partsOf(amounts);
  const used = unique(amounts.flatMap((amount) => within(amount.of, (of) => taken(of, given))));
  return {
    title: formula.title,
    lines: [
      ...ruleLines(formula, all, amounts),
      ...Object.entries(words)
        .filter(([, text]) => text !== null)
        .map(([name, text]) => line("given")(`${spaced(name)} = ${text}`)),
      ...constants(used).map(line("constant")),
      ...steps(used, amounts).map(({ name, of, quantity }) => stepText(name, of, quantity.unit, given)).map(line("step")),
      ...roundings(used, given).map(line("rounding")),
      ...results.map(line("result")),
      ...closingLines(formula),
    ],
  };
}

/** What of a working stands before any number is known. */
export function outline(formula: Formula): Working {
  const amounts = formula.rows.flat().flatMap(amountsIn);
  return { title: formula.title, lines: [...ruleLines(formula, partsOf(amounts), amounts), ...closingLines(formula)] };
}

const line = (part: WorkingLine["part"]) => (text: string): WorkingLine => ({ part, text });

const partsOf = (amounts: readonly Amount[]): readonly Expression[] => unique(amounts.flatMap((amount) => within(amount.of, parts)));

const ruleLines = ({ rule }: Formula, all: readonly Expression[], amounts: readonly Amount[]): readonly WorkingLine[] => [
  line("rule")(rule),
  ...steps(all, amounts).map(({ name, of }) => `${name} = ${symbolic(of)}`).map(line("formula")),
];

const closingLines = ({ caution, source }: Formula): readonly WorkingLine[] => [
  ...(caution ? [line("caution")(caution)] : []),
  ...(source ? [line("source")(source)] : []),
];

function stepText(name: string, of: Expression, unit: string, given: Given): string {
  const numbers = written(of, (node) => {
    if (node.op === "column") return whole(spaced(node.name));
    const known = show(value(new Expression(node), given));
    return { text: known, binds: known.startsWith("-") ? binds.sum : binds.whole };
  });
  const result = show(value(of, given));
  return [name, ...(numbers === result ? [] : [numbers]), `${result}${unit && ` ${unit}`}`].join(" = ");
}

const symbolic = (of: Expression): string =>
  written(of, (node) => {
    switch (node.op) {
      case "constant":
        return node.about ? whole(node.about.name) : { text: node.text, binds: node.text.startsWith("-") ? binds.sum : binds.whole };
      case "named":
        return whole(node.name);
      default:
        return whole(spaced(node.name));
    }
  });

/** A named part is written out where it is the whole, and by its name (or number) inside another. */
function written(of: Expression, leaf: Notation["leaf"]): string {
  return write(of.node.op === "named" ? of.node.a : of, { ...words, leaf }).text.replace(/\^2(?![\d.])/g, "²");
}

const words: Omit<Notation, "leaf"> = {
  signs: { add: " + ", subtract: " − ", multiply: " × ", divide: " ÷ ", power: "^" },
  folds: false,
  call: (op, pieces) => {
    const [a] = pieces as readonly [Piece];
    if (op === "count") return whole(`number of ${a.text}`);
    if (op === "sum" || op === "total") return { text: `Σ ${bracketed(a, binds.product)}`, binds: binds.sum };
    if (op === "sqrt") return whole(`√(${a.text})`);
    const name = { min: "the lesser of", max: "the greater of", ln: "ln", exp: "exp", floor: "whole part of", ceiling: "rounded up" }[op];
    return whole(`${name} (${pieces.map((p) => p.text).join("; ")})`);
  },
  round: (a, places) => whole(`round (${a.text}; ${places.text})`),
  choose: (a, is, b, then, otherwise) => ({
    text: `if ${a.text} ${is === "<=" ? "≤" : is} ${b.text} then ${then().text}, else ${otherwise().text}`,
    binds: 0,
  }),
  refuse: () => whole("no answer"),
};

function constants(all: readonly Expression[]): readonly string[] {
  const about = all.flatMap(({ node }) => (node.op === "constant" && node.about ? [{ text: node.text, ...node.about }] : []));
  return unique(about.map(({ name, text, unit, source }) => `${name} = ${text} ${unit} (${source})`));
}

function roundings(all: readonly Expression[], given: Given): readonly string[] {
  return unique(
    all.flatMap(({ node }) => {
      if (node.op !== "round") return [];
      const places = show(value(node.places, given));
      const rounding: Rounding =
        typeof node.rounding === "string" ? node.rounding : value(node.rounding, given).isZero() ? "half away from zero" : "half to even";
      return [`rounded once, at the end, ${rounding}, to ${places} decimals`];
    }),
  );
}

const within = (of: Expression, inside: typeof parts): readonly Expression[] => [
  ...inside(of).flatMap((part) => within(part, inside)),
  of,
];

/** The parts that the numbers lead through: of a choice, the branch that was taken. */
function taken(of: Expression, given: Given): readonly Expression[] {
  const { node } = of;
  if (node.op !== "choose") return parts(of);
  const { a, is, b } = node.when;
  return [a, b, holds(value(a, given), is, value(b, given)) ? node.then : node.otherwise];
}

/** Every named part, then the amounts themselves. */
const steps = (all: readonly Expression[], amounts: readonly Amount[]): readonly Amount[] => [
  ...all.filter(isNamed).map(step).filter(({ of }) => !amounts.some((amount) => amount.of === of)),
  ...amounts.filter(({ of }) => amounts.length === 1 || of.node.op !== "input"),
];

const unique = <T>(items: readonly T[]): readonly T[] => [...new Set(items)];
/** The amounts of a cell; a verdict has those of what it compares and of both its cells. */
function amountsIn(cell: ResultCell): readonly Amount[] {
  if (isEither(cell)) return [...amountsIn(cell.then), ...amountsIn(cell.otherwise)];
  return isAmount(cell) ? [cell] : [];
}

const isNamed = ({ node }: Expression): boolean => node.op === "named";
const step = (of: Expression): Amount => {
  if (of.node.op !== "named") throw new Error("Only a named part is a step");
  return { name: of.node.name, quantity: { unit: of.node.unit }, of };
};
