import { setTranslationMethod } from "@odoo/o-spreadsheet";

/** The grid's messages that a refiner would not know what to do with, said as what to do instead. */
const WORDING: ReadonlyMap<string, string> = new Map([
  [
    "Invalid number of arguments for the %(functionName)s function. Expected %(minArgRequired)s minimum, but got %(nbrArgSupplied)s instead.",
    "Cannot compute %(functionName)s: it needs at least %(minArgRequired)s arguments and got %(nbrArgSupplied)s: give the rest, with a comma between them",
  ],
  [
    "Invalid number of arguments for the %(functionName)s function. Expected %(maxArgPossible)s maximum, but got %(nbrArgSupplied)s instead.",
    "Cannot compute %(functionName)s: it takes at most %(maxArgPossible)s arguments and got %(nbrArgSupplied)s: leave out the rest",
  ],
  ['Unknown function: "%s"', 'Cannot find the function "%s": check how it is written'],
  ["Invalid expression", "Cannot read the formula: something in it is missing or stands twice"],
  ["Invalid formula", "Cannot read the formula: a name in it is not known here, or something in it is missing"],
  ["Wrong function call", "Cannot read the formula: put a comma between arguments"],
  ["Missing closing parenthesis", "Cannot read the formula: a bracket in it is not closed"],
  ["Unexpected token: %s", "Cannot read the formula: %s does not belong where it stands"],
  ["Circular reference", "Cannot compute: the cell depends on itself: break the circle"],
  ["An unexpected error occurred. Submit a support ticket at odoo.com/help.", "Cannot compute: the grid does not manage this formula:"],
]);

export function setWording(): void {
  setTranslationMethod((...[text]) => WORDING.get(text) ?? text);
}

/** What the grid says when it loses its way in a chain of cells; it does not pass through its list of messages. */
const LOST = "Maximum call stack size exceeded";
const CHAIN_TOO_LONG = "Cannot compute: the cell depends on thousands of cells one after another, further on in the sheet: turn the chain round, so that each depends on one before it";
export const NESTED_TOO_DEEP = "Cannot read the formula: it is nested too deep: work a part of it out in a cell of its own";

export const reworded = (message: string): string => (message === LOST ? CHAIN_TOO_LONG : message);

/** Whether the formula may be right and the grid does not manage it. */
export const isBeyondGrid = (message: string | undefined): boolean => message === CHAIN_TOO_LONG || message === NESTED_TOO_DEEP;
