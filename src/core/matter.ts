import weights from "../../shared/tables/atomic-weights.json";
import constants from "../../shared/tables/constants.json";
import table from "../../shared/tables/reactions.json";
import { type Expression, constant } from "./expression/expression";

type Element = keyof typeof weights.elements;
export type ReactionName = keyof typeof table.reactions;

export const EDITION = weights.edition;

export const reactions: Readonly<Record<ReactionName, { readonly equation: string; readonly name: string }>> = table.reactions;

/** A constant of nature, with its name, unit and source. */
export function natural(name: keyof typeof constants): Expression {
  const { value, ...about } = constants[name];
  return constant(value, about);
}

/** Molar mass of an element, g/mol. */
export function atomic(element: string): Expression {
  const { weight, name } = weights.elements[element as Element];
  return constant(weight, { name: `molar mass of ${name}`, unit: "g/mol", source: `${weights.source}, ${weights.edition}` });
}

/** Molar mass of a substance, g/mol: HNO3, Cu(NO3)2, FeSO4·7H2O, Ag+. */
export function molarMass(substance: string): Expression {
  const { elements } = composition(substance);
  const [first, ...others] = [...elements].map(([element, n]) => (n === 1 ? atomic(element) : atomic(element).times(n)));
  if (!first) throw new Error(`${substance} holds no element`);
  return others.length === 0 ? first : others.reduce((a, b) => a.plus(b), first).named(`molar mass of ${substance}`, "g/mol");
}

/** Mol of one substance per mol of another in a balanced reaction of the table. */
export function molar(reaction: ReactionName, of: string, per: string): Expression {
  const { left, right } = parseEquation(table.reactions[reaction].equation);
  const many = (substance: string): string => {
    const found = [...left, ...right].find((term) => term.substance === substance);
    if (!found) throw new Error(`${substance} does not stand in ${reaction}`);
    return String(found.many);
  };
  return many(per) === "1" ? constant(many(of)) : constant(many(of)).over(constant(many(per)));
}

/** Grams of one substance per gram of another. */
export const massRatio = (reaction: ReactionName, of: string, per: string): Expression =>
  molar(reaction, of, per).times(molarMass(of)).over(molarMass(per)).named(`${of} per ${per}`, "g/g");

interface Term {
  readonly many: number;
  readonly substance: string;
}

export function parseEquation(equation: string): { readonly left: readonly Term[]; readonly right: readonly Term[] } {
  const [left = "", right = ""] = equation.split(" -> ");
  return { left: left.split(" + ").map(parseTerm), right: right.split(" + ").map(parseTerm) };
}

function parseTerm(term: string): Term {
  const [, many = "1", substance] = /^(?:(\d+) )?(\S+)$/.exec(term) ?? [];
  if (!substance) throw new Error(`${term} is no term of an equation`);
  return { many: Number(many), substance };
}

/** Elements and charge of a substance as it is written. */
export function composition(substance: string): { readonly elements: ReadonlyMap<string, number>; readonly charge: number } {
  const [, neutral = "", size = "", sign] = /^(.*?)(?:(\d*)([+-]))?$/.exec(substance) ?? [];
  const elements = new Map<string, number>();
  for (const part of neutral.split("·")) {
    const [, many = "1", formula = ""] = /^(\d+)?(.*)$/.exec(part) ?? [];
    count(formula, Number(many || 1), elements);
  }
  return { elements, charge: sign ? Number(`${sign}${size || 1}`) : 0 };
}

function count(formula: string, times: number, into: Map<string, number>): void {
  const pattern = /\(([^()]*)\)(\d*)|([A-Z][a-z]?)(\d*)/g;
  for (const [, group, groupTimes, element, elementTimes] of formula.matchAll(pattern)) {
    if (group !== undefined) count(group, times * Number(groupTimes || 1), into);
    else if (element) into.set(element, (into.get(element) ?? 0) + times * Number(elementTimes || 1));
  }
}
