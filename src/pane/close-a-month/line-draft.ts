import { readShare } from "../../month/shop-measurement";
import type { StockLine } from "../../month/month-input";
import { readArgument } from "../argument";
import type { Notation } from "../notation";

export const METALS = ["Crystal", "Bars", "Cement silver", "Stubs", "Residues", "Other metal"] as const;
export const LIQUOR = "Liquor, by test";
export const LOT = "A lot, as it came";

/** A line of stock as it was typed. */
export interface LineDraft {
  /** One of the above. */
  kind: string;
  which: string;
  weight: string;
  unit: string;
  fineness: string;
  litres: string;
  gramsPerLitre: string;
  uncertainty: string;
  lot: string;
}

export type LineField = Exclude<keyof LineDraft, "kind" | "unit">;

export const freshLine = (kind: string = METALS[0]): LineDraft => ({ kind, which: "", weight: "", unit: "g", fineness: "", litres: "", gramsPerLitre: "", uncertainty: "", lot: "" });

export interface ReadLine {
  /** Null while something is missing or wrong. */
  readonly line: StockLine | null;
  readonly faults: ReadonlyMap<LineField, string>;
  /** Nothing was typed into it. */
  readonly isEmpty: boolean;
}

const TYPED: Readonly<Record<"metal" | "liquor" | "lot", readonly LineField[]>> = {
  metal: ["weight", "fineness", "uncertainty", "which"],
  liquor: ["litres", "gramsPerLitre", "uncertainty", "which"],
  lot: ["lot"],
};

export const formOf = ({ kind }: LineDraft): keyof typeof TYPED => (kind === LIQUOR ? "liquor" : kind === LOT ? "lot" : "metal");

export function readLine(draft: LineDraft, notation: Notation): ReadLine {
  const faults = new Map<LineField, string>();
  const form = formOf(draft);
  const isEmpty = TYPED[form].every((field) => draft[field] === "");
  const number = (field: LineField): number => {
    const read = readArgument(draft[field], notation);
    if (read.kind === "value" && typeof read.value === "number") return read.value;
    if (read.kind === "unreadable") faults.set(field, read.sentence);
    else if (read.kind !== "nothing") faults.set(field, "Write a number here");
    return NaN;
  };
  const share = (): number | null => {
    const read = readArgument(draft.uncertainty, notation);
    if (read.kind === "nothing") return null;
    const found = read.kind === "value" ? readShare(read.value) : null;
    if (found === null) faults.set("uncertainty", "Write a share such as 5% or 0.05".replace(".", notation.decimal));
    return found;
  };
  const line = lineOf(draft, form, number, share, notation, faults);
  return { line: faults.size > 0 ? null : line, faults, isEmpty };
}

function lineOf(draft: LineDraft, form: keyof typeof TYPED, number: (field: LineField) => number, share: () => number | null, notation: Notation, faults: Map<LineField, string>): StockLine | null {
  const what = draft.which === "" ? draft.kind : draft.kind === "Other metal" ? draft.which : `${draft.kind}, ${draft.which}`;
  if (form === "lot") return draft.lot === "" ? null : { kind: "lot", lot: draft.lot };
  const uncertainty = share();
  if (form === "liquor") {
    const [litres, gramsPerLitre] = [number("litres"), number("gramsPerLitre")];
    return Number.isNaN(litres) || Number.isNaN(gramsPerLitre) || uncertainty === null ? null : { kind: "liquor", what, litres, gramsPerLitre, uncertainty };
  }
  const weight = number("weight");
  const fineness = readArgument(draft.fineness, notation);
  if (fineness.kind === "unreadable") faults.set("fineness", fineness.sentence);
  else if (fineness.kind !== "nothing" && fineness.kind !== "value") faults.set("fineness", 'Write a fineness such as 999.9, 92.5% or sterling');
  return Number.isNaN(weight) || fineness.kind !== "value" ? null : { kind: "metal", what, weight, unit: draft.unit, fineness: fineness.value, uncertainty };
}
