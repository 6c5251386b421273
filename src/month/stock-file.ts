import type { StockLine } from "./month-input";
import { readPlain, readShare } from "./shop-measurement";

export interface StockFile {
  readonly counted: readonly StockLine[];
  readonly shipped: readonly StockLine[];
}

/** A stock file that cannot be read; the message says which line and what to write instead. */
export class StockFault extends Error {}

const COLUMNS = ["kind", "what", "weight", "unit", "fineness", "litres", "gramsPerLitre", "uncertainty"] as const;
type Column = (typeof COLUMNS)[number];
type Written = Readonly<Record<Column, string>>;

/** Reads the lines of stock of a month: columns by their names, in any order, parted by commas or by semicolons. */
export function readStock(text: string): StockFile {
  const plain = text.replace(/^\uFEFF/, "");
  const separator = (plain.split(/\r?\n/, 1)[0] ?? "").includes(";") ? ";" : ",";
  const [headings = [], ...rows] = records(plain, separator);
  const names = headings.map((heading) => heading.trim());
  const stranger = names.find((name) => !isColumn(name));
  if (stranger !== undefined || !names.includes("kind")) refuse(1, `its headings must be ${COLUMNS.join(",")}, and ${stranger === undefined ? "there is no kind" : `there is no column ‘${stranger}’`}`);
  const counted: StockLine[] = [];
  const shipped: StockLine[] = [];
  rows.forEach((cells, i) => {
    if (cells.every((cell) => cell.trim() === "")) return;
    if (cells.length > names.length) refuse(i + 2, `it has ${cells.length} cells under ${names.length} headings: put a text with a ${separator === "," ? "comma" : "semicolon"} in it in quotation marks`);
    const record = Object.fromEntries(COLUMNS.map((column) => [column, (cells[names.indexOf(column)] ?? "").trim()])) as Written;
    switch (record.kind.toLowerCase()) {
      case "counted":
        counted.push(lineOf(record, i + 2));
        break;
      case "shipped":
        shipped.push(lineOf(record, i + 2));
        break;
      case "lot":
        if (record.what === "") refuse(i + 2, "a lot that still lies as it came needs its number under what");
        counted.push({ kind: "lot", lot: record.what });
        break;
      default:
        refuse(i + 2, `its kind is ‘${record.kind}’: write counted, shipped, or lot for one that still lies as it came`);
    }
  });
  return { counted, shipped };
}

const isColumn = (name: string): name is Column => COLUMNS.some((column) => column === name);

function refuse(line: number, why: string): never {
  throw new StockFault(`Cannot read line ${line} of the stock file: ${why}`);
}

function lineOf({ what, weight, unit, fineness, litres, gramsPerLitre, uncertainty }: Written, line: number): StockLine {
  const number = (text: string, name: string): number => readPlain(text) ?? refuse(line, `${name} is ‘${text}’: write a plain number such as 12.5`);
  const share = uncertainty === "" ? null : (readShare(uncertainty) ?? refuse(line, `uncertainty is ‘${uncertainty}’: write a share such as 5% or 0.05`));
  const isLiquor = litres !== "" || gramsPerLitre !== "";
  if (isLiquor && (weight !== "" || fineness !== "")) refuse(line, "it has a weight and litres: write one line for the metal and one for the liquor");
  if (what === "") refuse(line, "say under what it is, such as crystal or stubs");
  if (isLiquor) {
    if (share === null) refuse(line, "liquor by test needs an uncertainty, such as 10%: how far the test can be off");
    return { kind: "liquor", what, litres: number(litres, "litres"), gramsPerLitre: number(gramsPerLitre, "gramsPerLitre"), uncertainty: share };
  }
  if (weight === "" || unit === "" || fineness === "") refuse(line, "it needs weight, unit and fineness, or litres, gramsPerLitre and uncertainty");
  return { kind: "metal", what, weight: number(weight, "weight"), unit, fineness: readPlain(fineness) ?? fineness.replace(/^(\d+),(\d+)/, "$1.$2"), uncertainty: share };
}

function records(text: string, separator: string): string[][] {
  const rows: string[][] = [[""]];
  let isQuoted = false;
  for (let i = 0; i < text.length; i++) {
    const sign = text[i] ?? "";
    const row = rows[rows.length - 1] ?? [];
    if (sign === '"' && isQuoted && text[i + 1] === '"') {
      row[row.length - 1] += '"';
      i += 1;
    } else if (sign === '"') isQuoted = !isQuoted;
    else if (sign === separator && !isQuoted) row.push("");
    else if (sign === "\n" && !isQuoted) rows.push([""]);
    else if (sign !== "\r" || isQuoted) row[row.length - 1] += sign;
  }
  return rows;
}
