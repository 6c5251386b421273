import { expect, it } from "vitest";
import { find } from "../../src/catalogue/catalogue";
import { outside } from "../outside";
import { program } from "../program";
import { type Random, random } from "../random";
import { shownBy } from "../workbook/libreoffice";
import { Sheet, type SheetCell, address, workbook } from "./workbook";

const SEED = 20261129;
const LISTS = 40;
const A_BUSY_MACHINE = 120_000;
const AGREES_WITHIN = 1e-12;

type Lot = readonly (number | string | null)[];

interface List {
  readonly lots: readonly Lot[];
  readonly grouped: boolean;
}

const COLUMNS = { dates: 0, fineIn: 1, fineOut: 2, group: 3, month: 5, named: 6, in: 7, out: 8, recovery: 9, count: 10 } as const;
const NAMES = ["Client A", "Client B", "C-12", "east", 17, "(none)"];

/** Two years of lots in the order they came, some with their time of day; empty rows between. */
function list(r: Random): List {
  const grouped = r.chance(0.6);
  const lot = (): Lot => [
    r.whole(45_000, 45_730) + r.pick([0, 0.25, r.next()]),
    r.pick([r.decimal(0.1, 400, 3), r.decimal(0.1, 400, 3), 0]),
    r.decimal(0, 400, 3),
    grouped ? r.pick(NAMES) : null,
  ];
  const empty: Lot = [null, null, null, null];
  return { lots: Array.from({ length: r.whole(1, 80) }, (_, i) => (i > 0 && r.chance(0.1) ? empty : lot())), grouped };
}

function months({ lots, grouped }: List): readonly (readonly unknown[])[] {
  const column = (i: number) => lots.map((lot) => [lot[i]]);
  const rows = find("MONTHS")?.call(column(0), column(1), column(2), ...(grouped ? [column(3)] : [])).value() as unknown[][];
  // Month, group, in, out, recovery, lots.
  return rows.slice(1).map((row) => (grouped ? row : row.toSpliced(1, 0, "")));
}

/** The same months by an ordinary spreadsheet's own sums. */
function sheetOf(name: string, { lots, grouped }: List, ours: readonly (readonly unknown[])[]): Sheet {
  const sheet = new Sheet(name);
  lots.forEach((lot, r) => lot.forEach((cell, c) => cell !== null && sheet.set(r, c, cell)));
  const range = (column: number): string => `${absolute(address(0, column))}:${absolute(address(lots.length - 1, column))}`;
  ours.forEach(([month, group], r) => {
    const at = (column: number): string => address(r, column);
    const formula = (column: number, text: string): void => sheet.set(r, column, { formula: text });
    const first = at(COLUMNS.month);
    const inMonth = [`${range(COLUMNS.dates)},">="&${first}`, `${range(COLUMNS.dates)},"<"&EDATE(${first},1)`, ...(grouped ? [`${range(COLUMNS.group)},${at(COLUMNS.named)}`] : [])].join(",");
    // Times one, or it would be shown as a date.
    formula(COLUMNS.month, `DATE(YEAR(${String(month)}),MONTH(${String(month)}),1)*1`);
    sheet.set(r, COLUMNS.named, group as SheetCell);
    formula(COLUMNS.in, `SUMIFS(${range(COLUMNS.fineIn)},${inMonth})`);
    formula(COLUMNS.out, `SUMIFS(${range(COLUMNS.fineOut)},${inMonth})`);
    formula(COLUMNS.recovery, `IF(${at(COLUMNS.in)}=0,"",${at(COLUMNS.out)}/${at(COLUMNS.in)})`);
    formula(COLUMNS.count, `COUNTIFS(${inMonth})`);
  });
  return sheet;
}

const absolute = (a: string): string => a.replace(/([A-Z]+)(\d+)/, "$$$1$$$2");

outside("soffice", "months and groups of random lots, summed by SUMIFS and counted by COUNTIFS", (soffice) => {
  it.each(program("months").functions)("%s gives every sum, recovery and count that LibreOffice gives, and leaves no lot out", () => {
    const r = random(SEED);
    const lists = Array.from({ length: LISTS }, () => list(r));
    const ours = lists.map(months);
    const shown = shownBy(soffice, workbook(lists.map((one, i) => sheetOf(`list ${i}`, one, ours[i] ?? []))));
    lists.forEach(({ lots }, i) => {
      const theirs = shown.get(`list ${i}`) ?? [];
      const rows = ours[i] ?? [];
      rows.forEach(([month, , ...numbers], row) => {
        expect(theirs[row]?.[COLUMNS.month]).toBe(String(month));
        numbers.forEach((number, c) => {
          const their = theirs[row]?.[COLUMNS.in + c] ?? "missing";
          const where = `list ${i}, row ${row + 1}, column ${c + 1}: ours ${String(number)}, theirs ${their} (seed ${SEED})`;
          if (typeof number !== "number") expect(their, where).toBe(number);
          else expect(Math.abs(Number(their) - number), where).toBeLessThanOrEqual(AGREES_WITHIN * Math.abs(number));
        });
      });
      const counts = rows.map((row) => Number(row.at(-1)));
      expect(Math.min(...counts)).toBeGreaterThan(0);
      expect(counts.reduce((a, b) => a + b)).toBe(lots.filter(([date]) => date !== null).length);
      expect(new Set(rows.map(([month, group]) => `${String(month)} ${String(group)}`)).size).toBe(rows.length);
    });
  }, A_BUSY_MACHINE);
});
