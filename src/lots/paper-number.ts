import type { Day } from "./calendar";
import { type NumberedLot, nextNumber } from "./next-number";
import { shapeOf } from "./number-pattern";
import type { SheetReading } from "./sheet-reading";

/** What clients get, each on a sheet of its own. */
export type Paper = "Quote" | "Statement";

/** The papers that stand in the workbook, by what their sheets say, or else by the sheets' names. */
export function paperNumbers(paper: Paper, sheets: readonly SheetReading[]): NumberedLot[] {
  const prefix = new RegExp(`^${paper} `, "i");
  return sheets.filter(({ info }) => prefix.test(info.name)).map((sheet) => {
    // Where the sheet of a paper has its number and date.
    const [number, date] = [sheet.at(2, 5).value, sheet.at(3, 5).value];
    const isOwn = sheet.text(2, 4) === `${paper} number` && (typeof number === "number" || (typeof number === "string" && number !== ""));
    return { number: isOwn ? number : sheet.info.name.replace(prefix, ""), ...(isOwn && typeof date === "number" ? { date } : {}) };
  });
}

/** What the next one is called: `series` is the number with which the shop begins. */
export function nextPaperNumber(paper: Paper, series: string | number | undefined, papers: readonly NumberedLot[], today: Day): string | number {
  const first = series === undefined || series === "" ? null : series;
  const isFollowed = first === null || papers.some(({ number }) => shapeOf(String(number)) === shapeOf(String(first)));
  if (papers.length === 0 || !isFollowed) return first ?? `${paper.charAt(0)}-${today.year}-001`;
  return nextNumber(papers, today).next;
}

const LONGEST = 31;

/** A name for the paper's sheet that the workbook takes and that no other sheet has. */
export function paperSheetName(paper: Paper, number: string | number, taken: readonly string[]): string {
  const known = new Set(taken.map((name) => name.toLowerCase()));
  const plain = `${paper} ${String(number).replace(/[[\]:*?/\\\u0000-\u001f]/g, "-").trim()}`;
  // Not in the middle of a character that takes two places.
  const named = (end: string): string => `${plain.slice(0, LONGEST - end.length).replace(/[\uD800-\uDBFF]$/, "").replace(/[\s']+$/, "")}${end}`;
  let name = named("");
  for (let n = 2; known.has(name.toLowerCase()); n++) name = named(` (${n})`);
  return name;
}
