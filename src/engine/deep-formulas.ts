import { CompiledFormula, EvaluationError } from "@odoo/o-spreadsheet";
import { NESTED_TOO_DEEP } from "./wording";

/** Where the grid's reader runs out of stack, its formula would give that very error, which is no value, and show 0. */
export function refuseDeepFormulas(): void {
  const compile = CompiledFormula.Compile.bind(CompiledFormula);
  CompiledFormula.Compile = (...given) => {
    const formula = compile(...given);
    if (!formula.isBadExpression) return formula;
    const { execute } = formula;
    return Object.assign(formula, {
      execute: (...about: Parameters<typeof execute>) => {
        const result: unknown = execute(...about);
        return result instanceof RangeError ? new EvaluationError(NESTED_TOO_DEEP) : (result as ReturnType<typeof execute>);
      },
    });
  };
}
