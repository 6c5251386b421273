import { type Expression, ZERO } from "../core/expression/expression";
import { native, number } from "../core/expression/native";
import { type Piece, whole } from "../core/expression/notation";
import { show } from "../core/expression/show";
import { value } from "../core/expression/value";
import { fail, quoted } from "../core/fault";
import { type ReactionName, massRatio, molar, molarMass, reactions } from "../core/matter";
import type { BoundNumber } from "./bound";
import { literalText } from "./reader";
import { Reference, held, isEmpty } from "./reference";

/** A reagent that a name chooses: how much of it goes with one of what it works on, and by which reaction. */
interface Reagent {
  readonly amount: Expression;
  readonly unit: string;
  readonly reaction: ReactionName;
}
type Reagents = Readonly<Record<string, Reagent>>;

const perGram = (reaction: ReactionName, substance: string, of: string): Reagent => ({
  amount: massRatio(reaction, substance, of),
  unit: "g/g",
  reaction,
});

export const neutralisers: Reagents = Object.fromEntries(
  ([["Na2CO3", "sodaAsh"], ["NaOH", "causticSoda"]] as const).map(([substance, reaction]) => [
    substance,
    { amount: molar(reaction, substance, "HNO3").times(molarMass(substance)), unit: "g per mol of acid", reaction },
  ]),
);

export const goldReductants: Reagents = {
  "sodium metabisulfite": perGoldGram("goldMetabisulfite", "Na2S2O5"),
  "ferrous sulfate heptahydrate": perGoldGram("goldFerrous", "FeSO4·7H2O"),
  "sulfur dioxide": perGoldGram("goldSulfurDioxide", "SO2"),
  "oxalic acid": perGoldGram("goldOxalic", "H2C2O4"),
  "oxalic acid dihydrate": perGoldGram("goldOxalicDihydrate", "H2C2O4·2H2O"),
};

function perGoldGram(reaction: ReactionName, substance: string): Reagent {
  return perGram(reaction, substance, "Au");
}

export const chlorideReductants: Reagents = {
  zinc: perGram("chlorideZinc", "Zn", "AgCl"),
  iron: perGram("chlorideIron", "Fe", "AgCl"),
  glucose: perGram("chlorideGlucose", "C6H12O6", "AgCl"),
};

/** The caustic soda that goes with each of them. */
export const chlorideCaustic: Reagents = {
  zinc: { amount: ZERO, unit: "g/g", reaction: "chlorideZinc" },
  iron: { amount: ZERO, unit: "g/g", reaction: "chlorideIron" },
  glucose: perGram("chlorideGlucose", "NaOH", "AgCl"),
};

/** The amount of the reagent that an argument names. */
export function reagent(name: string, cell: unknown, table: Reagents, otherwise?: string): BoundNumber {
  const known = Object.keys(table);
  const wants = `one of ${known.join(", ")}`;
  const chosen = (): string => {
    const text = held(cell);
    if (isEmpty(text)) return otherwise ?? fail({ kind: "missing", name, wants });
    if (typeof text !== "string") return fail({ kind: "unfit", name, got: quoted(text), wants });
    const found = known.find((one) => spelling(one) === spelling(text));
    return found ?? fail({ kind: "unknown-name", name, got: quoted(text), known });
  };
  const entry = (): Reagent => table[chosen()] as Reagent;
  return {
    notes: [{ name, wants, ...(otherwise ? { otherwise } : {}) }],
    read: () => value(entry().amount, {}),
    native: () => (cell instanceof Reference ? lookUp(cell, table, otherwise) : native(entry().amount, {})),
    words: () => `${chosen()}, ${show(value(entry().amount, {}))} ${entry().unit} (${reactions[entry().reaction].equation})`,
  };
}

const spelling = (text: string): string => text.replace(/\s+/g, " ").trim().toLowerCase();

function lookUp(cell: Reference, table: Reagents, otherwise: string | undefined): Piece {
  const amounts = Object.values(table).map(({ amount }) => number(value(amount, {})).text);
  const found = `INDEX({${amounts.join(",")}},1,MATCH(${cell.text},{${Object.keys(table).map(literalText).join(",")}},0))`;
  const usual = otherwise ? table[otherwise] : undefined;
  return whole(usual ? `IF(${cell.text}="",${native(usual.amount, {}).text},${found})` : found);
}
