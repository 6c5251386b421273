import { evaluate } from "../explaining/evaluate";
import { explain } from "../explaining/explain";
import { readReferences } from "../explaining/references";
import { remarkOn } from "../explaining/remark";
import { expression } from "../formulas/expression";
import type { Fresh } from "../lots/reconcile";

/** Formulas computed afresh, as a cell is explained. */
export const freshValues: Fresh = {
  whole: async (on, formula, book) => evaluate(expression(formula.slice(1)), await readReferences(formula, on, book)),
  remark: async (on, shows, book) => remarkOn(await explain(on, shows, book)),
};
