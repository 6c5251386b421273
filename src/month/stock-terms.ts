import type { LotMetal } from "./lot-metal";
import { uncertaintyOf } from "./lot-metal";
import type { Measured } from "./measured";
import type { StockLine } from "./month-input";
import { type Term, call, cell, literal, outcome, times } from "./term";

/** What a line of stock comes to, in troy ounces, over the cells of its row. */
export interface StockTerms {
  readonly line: StockLine;
  readonly fine: Term;
  readonly uncertainty: Term;
}

/** The columns in which what was entered stands. */
export const STOCK = { weight: "D", unit: "E", fineness: "F", litres: "G", gramsPerLitre: "H", uncertainty: "I" } as const;

/** The terms of a line that stands in a row of the month's sheet, or the sentence that says why it cannot be used. */
export function stockTerms(line: StockLine, row: number, measured: Measured, lotOf: (number: string) => LotMetal | string): StockTerms | string {
  const terms = termsOf(line, row, measured, lotOf);
  if (typeof terms === "string") return terms;
  const fault = [terms.fine, terms.uncertainty].map(outcome).find((found) => typeof found === "string");
  return typeof fault === "string" ? fault : { line, ...terms };
}

function termsOf(line: StockLine, row: number, measured: Measured, lotOf: (number: string) => LotMetal | string): Omit<StockTerms, "line"> | string {
  const at = (column: keyof typeof STOCK, holds: number | string): Term => cell(`${STOCK[column]}${row}`, holds);
  switch (line.kind) {
    case "metal": {
      const [weight, unit, fineness] = [at("weight", line.weight), at("unit", line.unit), at("fineness", line.fineness)];
      const fine = call("FINEWEIGHT", weight, unit, fineness);
      if (line.uncertainty !== null) return { fine, uncertainty: own(fine, row, line.uncertainty) };
      const onScale = { weight: call("WEIGHT", weight, unit, literal(measured.scaleUnit)), unit: literal(measured.scaleUnit) };
      return { fine, uncertainty: uncertaintyOf(onScale, call("FINENESS", fineness, literal("fraction")), measured) };
    }
    case "liquor": {
      const fine = call("FINEWEIGHT", times(at("litres", line.litres), at("gramsPerLitre", line.gramsPerLitre)), literal("g"), literal(1));
      return { fine, uncertainty: own(fine, row, line.uncertainty) };
    }
    case "lot":
      return lotOf(line.lot);
  }
}

const own = (fine: Term, row: number, share: number): Term => times({ text: `B${row}`, value: fine.value }, cell(`${STOCK.uncertainty}${row}`, share));

export const whatOf = (line: StockLine): string => (line.kind === "lot" ? `Lot ${line.lot}, as it came` : line.what);
