import weights from "../../shared/tables/atomic-weights.json";
import table from "../../shared/tables/reactions.json";
import { type Expression, constant } from "./expression/expression";

type Element = keyof typeof weights.elements;
export type ReactionName = keyof typeof table.reactions;

export const EDITION = weights.edition;

/** Molar mass of an element, g/mol. */
export function atomic(element: Element): Expression {
  const { weight, name } = weights.elements[element];
  return constant(weight, { name: `molar mass of ${name}`, unit: "g/mol", source: `${weights.source}, ${weights.edition}` });
}

/** Mol of one species per mol of another in a balanced reaction of the table. */
export function molar(reaction: ReactionName, of: string, per: string): Expression {
  const { equation } = table.reactions[reaction];
  return constant(coefficient(equation, of)).over(constant(coefficient(equation, per)));
}

function coefficient(equation: string, species: string): string {
  for (const term of equation.split(/ -> | \+ /)) {
    const [, many = "1", name] = /^(?:(\d+) )?(\S+)$/.exec(term) ?? [];
    if (name === species) return many;
  }
  throw new Error(`${species} does not stand in ${equation}`);
}
