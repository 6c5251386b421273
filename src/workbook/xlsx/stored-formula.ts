import { FileFault } from "./file-fault";
import { type FormulaPiece, formulaPieces, mapCode } from "../../formulas/pieces";
import { FUTURE_FUNCTIONS } from "./future-functions";

const STORED_LOT = /(?<![\p{L}\p{N}_.\\])_xldudf_LOT_([A-Z0-9_]+)\s*\(/giu;
const STORED_FUTURE = /(?<![\p{L}\p{N}_.\\])_xlfn\.(?:_xlws\.)?([A-Z0-9.]+)(?=\s*\()/giu;
const LOT = /(?<![\p{L}\p{N}_.\\])LOT\.([A-Z0-9.]+)\s*\(/giu;
const FUNCTION = /(?<![\p{L}\p{N}_.\\])[A-Z][A-Z0-9.]*(?=\s*\()/giu;
/** These rename their arguments, or take functions as arguments, in ways only Excel's own parser writes right. */
const NAMING = /(?<![\p{L}\p{N}_.\\])(LET|LAMBDA|MAP|REDUCE|SCAN|BYROW|BYCOL|MAKEARRAY|ISOMITTED|GROUPBY|PIVOTBY)\s*\(/iu;
const LONGEST_FORMULA = 8192;

/** A formula as a person reads it, from the one a file stores: LOT.COPPER(…) for _xldudf_LOT_COPPER(…). */
export function fromStored(formula: string): string {
  if (!/_xl/i.test(formula)) return formula;
  return mapCode(formula, (code) =>
    code
      .replace(STORED_LOT, (_, id: string) => `LOT.${id.replaceAll("_", ".")}(`)
      .replace(STORED_FUTURE, (whole, name: string) => (FUTURE_FUNCTIONS.has(name.toUpperCase()) ? name : whole)),
  );
}

/** A formula as Excel stores it, without its equals sign. Ids hold no underscores, so their dots can come back. */
export function toStored(formula: string): string {
  const text = formula.replace(/^\s*=/, "");
  if (text.trim() === "") throw new FileFault("Cannot write an empty formula: write what it computes, or a plain value");
  if (text.length > LONGEST_FORMULA) throw new FileFault("Cannot write a formula of more than 8,192 characters: split it over several cells");
  formulaPieces(text).forEach(refuseWhatOnlyExcelWrites);
  return mapCode(text, (code) =>
    code
      .replace(FUNCTION, (name) => FUTURE_FUNCTIONS.get(name.toUpperCase()) ?? name)
      .replace(LOT, (_, id: string) => `_xldudf_LOT_${id.toUpperCase().replaceAll(".", "_")}(`),
  );
}

function refuseWhatOnlyExcelWrites({ text, isCode }: FormulaPiece): void {
  const naming = isCode && NAMING.exec(text)?.[1];
  if (naming) throw new FileFault(`Cannot write ${naming.toUpperCase()}( into a file: type that formula in Excel`);
  if (isCode ? text.includes("@") || /[A-Z0-9_)]#/i.test(text) : /^\[\s*@/.test(text))
    throw new FileFault("Cannot write @ or # beside a reference into a file: name the cells instead, or type that formula in Excel");
}
