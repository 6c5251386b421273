import { value } from "../../src/core/expression/value";
import { molarMass } from "../../src/core/matter";

/** Grams in a mol of a substance, as the core builds them from the table of atomic weights. */
export const gramsPerMol = (substance: string): number => value(molarMass(substance), {}).toNumber();
