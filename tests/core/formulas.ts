import { readdirSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { type Expression, parts } from "../../src/core/expression/expression";
import { type Amount, type Formula, type Quantity, type ResultCell, isAmount, isEither } from "../../src/core/expression/formula";
import type { Random } from "../random";

const core = fileURLToPath(new URL("../../src/core/", import.meta.url));

export interface NamedFormula {
  readonly name: string;
  readonly formula: Formula;
}

/** Every formula that a file of the core exports. */
export async function formulas(): Promise<readonly NamedFormula[]> {
  const found: NamedFormula[] = [];
  for (const file of readdirSync(core).filter((name) => name.endsWith(".ts")))
    for (const [name, one] of Object.entries((await import(core + file)) as Record<string, unknown>))
      if (typeof one === "object" && one !== null && "rows" in one && "inputs" in one) found.push({ name, formula: one as Formula });
  return found;
}

/** The amounts of a formula that no range goes into. */
export const scalarAmounts = ({ rows }: Formula): readonly Amount[] => rows.flat().flatMap(amounts).filter(({ of }) => !hasColumn(of));

function amounts(cell: ResultCell): readonly Amount[] {
  if (isEither(cell)) return [...amounts(cell.then), ...amounts(cell.otherwise)];
  return isAmount(cell) ? [cell] : [];
}

const hasColumn = (of: Expression): boolean => of.node.op === "column" || parts(of).some(hasColumn);

/** Inputs that say yes or no, or count decimals. */
export const isDiscrete = (name: string): boolean => /Given$|^halfToEven$|^decimals$/.test(name);

export const scalarInputs = ({ inputs }: Formula): readonly (readonly [string, Quantity])[] =>
  Object.entries(inputs).flatMap(([name, q]) => ("each" in q ? [] : [[name, q] as const]));

/** A number of the kind that an input takes. */
export function sample(r: Random, name: string, { unit }: Quantity): number {
  if (name === "decimals") return r.whole(0, 3);
  if (name === "halfToEven") return r.whole(0, 1);
  if (name.endsWith("Given")) return 1;
  switch (unit) {
    case "g/g":
      return r.decimal(0.3, 0.999, 4);
    case "‰":
      return r.pick([r.decimal(300, 999, 1), r.decimal(0.1, 20, 1)]);
    case "":
      return r.pick([r.decimal(0.05, 0.98, 3), r.decimal(1, 60, 2)]);
    default:
      return r.pick([r.decimal(0.1, 9, 3), r.decimal(1, 400, 2)]);
  }
}
