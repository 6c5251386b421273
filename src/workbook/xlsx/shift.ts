import { columnName, columnNumber, LAST_COLUMN, LAST_ROW } from "./address";
import { mapCode } from "../../formulas/pieces";

/** Whole columns A:C, whole rows 1:3, or one cell; not a part of a longer name, a function or a sheet's name. */
const REFERENCE =
  /(?<![\p{L}\p{N}_.\\?$])(?!LOG10\s*\()(?:(\$?)([A-Z]{1,3}):(\$?)([A-Z]{1,3})|(\$?)(\d{1,7}):(\$?)(\d{1,7})|(\$?)([A-Z]{1,3})(\$?)(\d{1,7}))(?![\p{L}\p{N}_.\\?!(])/giu;

/** What a formula becomes when it is filled to another cell; a reference pushed off the sheet becomes #REF!. */
export function shiftFormula(formula: string, rows: number, columns: number): string {
  if (rows === 0 && columns === 0) return formula;
  return mapCode(formula, (code) =>
    code.replace(REFERENCE, (whole, ...groups: (string | undefined)[]) => {
      const [columnLock, column, lastColumnLock, lastColumn, rowLock, row, lastRowLock, lastRow, lockA, cellColumn, lockB, cellRow] = groups;
      if (column !== undefined) return pair(whole, shiftColumn(columnLock, column, columns), shiftColumn(lastColumnLock, lastColumn, columns));
      if (row !== undefined) return pair(whole, shiftRow(rowLock, row, rows), shiftRow(lastRowLock, lastRow, rows));
      const shifted = [shiftColumn(lockA, cellColumn, columns), shiftRow(lockB, cellRow, rows)];
      return shifted.includes(NO_REFERENCE) ? whole : shifted.includes(OFF_SHEET) ? OFF_SHEET : shifted.join("");
    }),
  );
}

const OFF_SHEET = "#REF!";
/** Not a column or row that a sheet has, so it is the name of something else. */
const NO_REFERENCE = "";

const pair = (whole: string, first: string, last: string): string =>
  first === NO_REFERENCE || last === NO_REFERENCE ? whole : first === OFF_SHEET || last === OFF_SHEET ? OFF_SHEET : `${first}:${last}`;

function shiftColumn(lock = "", name = "", by: number): string {
  const column = columnNumber(name);
  if (column > LAST_COLUMN) return NO_REFERENCE;
  if (lock) return lock + name;
  const shifted = column + by;
  return shifted < 1 || shifted > LAST_COLUMN ? OFF_SHEET : columnName(shifted);
}

function shiftRow(lock = "", number = "", by: number): string {
  const row = Number(number);
  if (row < 1 || row > LAST_ROW) return NO_REFERENCE;
  if (lock) return lock + number;
  const shifted = row + by;
  return shifted < 1 || shifted > LAST_ROW ? OFF_SHEET : String(shifted);
}
