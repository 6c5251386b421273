import type { XlsxFile } from "./file";
import type { NamedPlace } from "./port";

export interface RangeName {
  readonly name: string;
  readonly range: string;
}

const RANGE = /^=((?:'(?:[^']|'')+'|[\p{L}\p{N}_.]+)!\$?[A-Z]{1,3}\$?\d+(?::\$?[A-Z]{1,3}\$?\d+)?)$/u;

/** The names that stand for a range, those of the whole workbook first. The grid knows no others, and none of one sheet alone. */
export function rangeNames(file: XlsxFile): RangeName[] {
  return [...file.definedNames]
    .sort((a, b) => Number(a.sheet !== null) - Number(b.sheet !== null))
    .flatMap(({ name, formula }) => {
      const range = RANGE.exec(formula)?.[1];
      return range !== undefined && /^[\p{L}_][\p{L}\p{N}_.]*$/u.test(name) && !name.startsWith("_xlnm.") ? [{ name, range }] : [];
    });
}

/** The same names with their places as the port tells them. */
export const namedPlaces = (file: XlsxFile): NamedPlace[] =>
  rangeNames(file).map(({ name, range }) => {
    const at = range.lastIndexOf("!");
    return { name, place: { sheet: range.slice(0, at).replace(/^'(.*)'$/, "$1").replaceAll("''", "'"), range: range.slice(at + 1).replaceAll("$", "") } };
  });
