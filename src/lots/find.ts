import { columnName, readArea } from "../workbook/xlsx/address";
import { type Candidate, assign } from "./assign";
import { contentOf } from "./content";
import { IDENTITY, WEIGHTS } from "./fields";
import { type HeadingRow, columnsOf, headingRows, rated } from "./heading-rows";
import type { ListColumn, LotList, Proposal, Refusal } from "./list";
import { listRows } from "./list-rows";
import { isOwnSheet } from "./own-sheets";
import { readHeading } from "./words";
import { type SheetReading, isTyped } from "./sheet-reading";

export interface Found {
  /** The places where lots can be listed, the likeliest first. */
  readonly proposals: readonly Proposal[];
  /** Why other places, or the whole workbook, will not do, and what to do. */
  readonly refusals: readonly Refusal[];
}

/** Looks through a workbook for the places where lots are listed. */
export function findLots(sheets: readonly SheetReading[]): Found {
  const proposals: Proposal[] = [];
  const refusals: Refusal[] = [];
  for (const sheet of sheets.filter((one) => !isOwnSheet(one))) {
    const here = proposalsOn(sheet);
    const refusal = here.length > 0 ? refusalOf(sheet) : null;
    if (refusal) refusals.push(refusal);
    else proposals.push(...here);
  }
  proposals.sort((a, b) => b.score - a.score);
  if (proposals.length === 0 && refusals.length === 0) refusals.push(nothingFound(sheets));
  return { proposals, refusals };
}

function refusalOf({ info }: SheetReading): Refusal | null {
  const refused = (sentence: string): Refusal => ({ sheet: info.name, sentence });
  if (info.isProtected) return refused(`Sheet ‘${info.name}’ lists lots but is protected, so that nothing can be written there: unprotect it (Review, Unprotect Sheet), then look again`);
  if (!info.isVisible) return refused(`Sheet ‘${info.name}’ lists lots but is hidden: unhide it (right-click a sheet's tab, Unhide), then look again`);
  return null;
}

function nothingFound(sheets: readonly SheetReading[]): Refusal {
  const filled = sheets.filter(({ area }) => area !== null);
  if (filled.length === 0) return { sheet: null, sentence: "The workbook is empty: open the one that lists your lots, or have a new sheet made" };
  const names = filled.slice(0, 6).map(({ info }) => `‘${info.name}’`).join(", ");
  return {
    sheet: null,
    sentence: `No list of lots was found (looked through ${names}): it needs a row of headings such as Lot, Date, Client and Gross (g) above its columns: write them and look again, or have a new sheet made`,
  };
}

export function proposalsOn(sheet: SheetReading): Proposal[] {
  const tables = sheet.info.tables.flatMap((table) => {
    const area = readArea(table.range);
    return area ? [{ table, area }] : [];
  });
  const inTables = tables.flatMap(({ table, area }): Proposal[] => {
    const headings = new Map<number, string>();
    for (let column = area.left; column <= area.right; column++) headings.set(column, sheet.text(area.top, column));
    const row = rated(area.top, area.top, headings);
    const columns = [...headings.keys()];
    return row ? accepted(propose(sheet, row, columns, { name: table.name, bottom: area.bottom, totals: table.hasTotals })) : [];
  });
  const rows = headingRows(sheet).filter(({ row }) => !tables.some(({ area }) => row >= area.top && row <= area.bottom));
  const plainRanges = rows.flatMap((row, i): Proposal[] => {
    const bottom = (rows[i + 1]?.upper ?? (sheet.area?.bottom ?? row.row) + 1) - 1;
    const all = [...row.headings.keys()].sort((a, b) => a - b);
    const columns = columnsOf(sheet, row, listRows(sheet, all, row.row + 1, bottom).rows);
    return accepted(propose(sheet, row, columns, { name: null, bottom, totals: false }));
  });
  return [...inTables, ...plainRanges];
}

function accepted(proposal: Proposal): Proposal[] {
  const has = (some: ReadonlySet<string>): boolean => proposal.matches.some(({ field }) => some.has(field));
  return proposal.matches.length >= 3 && has(IDENTITY) && has(WEIGHTS) ? [proposal] : [];
}

interface Bounds {
  readonly name: string | null;
  readonly bottom: number;
  readonly totals: boolean;
}

function propose(sheet: SheetReading, heading: HeadingRow, numbers: readonly number[], { name, bottom, totals }: Bounds): Proposal {
  const columns = numbers.map((number): ListColumn => ({
    number,
    letter: columnName(number),
    heading: heading.headings.get(number) ?? "",
    isHidden: sheet.isHidden(number),
  }));
  const found = listRows(sheet, numbers, heading.row + 1, totals ? bottom - 1 : bottom);
  const list: LotList = {
    sheet: sheet.info.name,
    table: name,
    headingRow: heading.row,
    upperHeadingRow: heading.upper,
    columns,
    firstRow: heading.row + 1,
    lastRow: found.rows.at(-1) ?? heading.row,
    rows: found.rows,
    totalRow: totals ? bottom : found.totalRow,
  };
  const matches = assign(candidatesOf(sheet, list));
  const certainty = matches.reduce((sum, { doubt }) => sum + 1 - 0.5 * (doubt?.degree ?? 0), 0);
  return {
    list,
    matches,
    remarks: remarksOn(sheet, list, matches.map(({ column }) => column)),
    reason: reasonFor(list, matches.length),
    score: certainty + Math.min(1, found.rows.length / 10) + (name === null ? 0 : 0.5),
  };
}

const candidatesOf = (sheet: SheetReading, { columns, rows }: LotList): Candidate[] =>
  columns.map((column) => ({
    column,
    heading: readHeading(column.heading),
    content: contentOf(rows.map((row) => sheet.at(row, column.number))),
  }));

function reasonFor({ sheet, table, headingRow, upperHeadingRow, rows, firstRow, lastRow }: LotList, matched: number): string {
  const where = table === null ? `sheet ‘${sheet}’` : `table ‘${table}’ on sheet ‘${sheet}’`;
  const headings = upperHeadingRow === headingRow ? `row ${headingRow} holds` : `rows ${upperHeadingRow} and ${headingRow} together hold`;
  const lots = rows.length === 0 ? "no lot is entered yet" : rows.length === 1 ? `one lot stands in row ${firstRow}` : `${rows.length} lots stand in rows ${rows[0] ?? firstRow} to ${lastRow}`;
  return `In ${where} ${headings} headings for ${matched} of the fields; ${lots}`;
}

function remarksOn(sheet: SheetReading, list: LotList, matched: readonly ListColumn[]): string[] {
  const hidden = list.columns.filter(({ isHidden }) => isHidden).map(({ letter, heading }) => `${letter} ‘${heading}’`);
  const others = list.columns.filter((column) => column.heading !== "" && !matched.includes(column)).map(({ heading }) => `‘${heading}’`);
  const newestFirst = isNewestFirst(sheet, list);
  return [
    ...(hidden.length > 0 ? [`Hidden ${hidden.length === 1 ? "column" : "columns"} ${hidden.join(", ")} ${hidden.length === 1 ? "is" : "are"} read and written like the others`] : []),
    ...(sheet.info.hasHiddenRows ? ["Some rows are hidden, by a filter or by hand: the new lot goes below the last one, hidden or not; clear the filter to see it"] : []),
    ...(others.length > 0 ? [`Left alone, since no field fits: ${others.join(", ")}`] : []),
    ...(newestFirst ? ["The newest lots stand on top: a new one is written below the last, and can then be sorted up"] : []),
  ];
}

function isNewestFirst(sheet: SheetReading, { rows, columns }: LotList): boolean {
  if (rows.length < 3) return false;
  return columns.slice(0, 4).some(({ number, heading }) => {
    if (!/dat|re[cç]/i.test(heading)) return false;
    const days = rows.map((row) => sheet.at(row, number)).filter(isTyped).map(({ value }) => value).filter((value) => typeof value === "number");
    return days.length >= 3 && days.every((day, i) => i === 0 || day <= (days[i - 1] ?? day)) && (days[0] ?? 0) > (days.at(-1) ?? 0);
  });
}
