import { CompiledFormula, EvaluationError } from "@odoo/o-spreadsheet";

const TOO_DEEP = "Cannot read the formula: it is nested too deep: work a part of it out in a cell of its own";

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
        return result instanceof RangeError ? new EvaluationError(TOO_DEEP) : (result as ReturnType<typeof execute>);
      },
    });
  };
}
