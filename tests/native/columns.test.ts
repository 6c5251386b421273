import { expect, it } from "vitest";
import { find } from "../../src/catalogue/catalogue";
import { Reference } from "../../src/functions/reference";
import { outside } from "../outside";
import { program } from "../program";
import { random } from "../random";
import { shownBy } from "../workbook/libreoffice";
import { inputs } from "./inputs";
import { Sheet, address, workbook } from "./workbook";

const SEED = 20261130;
const ROWS = 2000;
const A_BUSY_MACHINE = 120_000;
const AGREES_WITHIN = 1e-12;
/** Amounts that are not rounded come out of float64: a few steps in the last digit apart from the single function's. */
const LAST_DIGIT = 1e-14;
/** The twin would be no twin if its float ROUND missed more ties. */
const MOST_MISSED = 0.005;

type Row = readonly unknown[];

interface Single {
  readonly id: string;
  /** Arguments that say a unit. */
  readonly units: readonly number[];
}

/** The function of one row that each function of columns runs along them. */
const singles: Readonly<Record<string, Single>> = {
  FINEWEIGHTS: { id: "FINEWEIGHT", units: [1, 3] },
  COPPERS: { id: "COPPER", units: [1, 4] },
  RECOVERIES: { id: "RECOVERY", units: [] },
  PAYOUTS: { id: "PAYOUT", units: [1] },
};

const ways = ["with a unit for the whole column", "with a unit in every row"] as const;
type Way = (typeof ways)[number];

const sheetName = (id: string, way: Way): string => `${id} ${ways.indexOf(way)}`;
const singleOf = (id: string): Single => {
  const single = singles[id];
  if (!single) throw new Error(`No single function is known of ${id}`);
  return single;
};

function rowsOf(id: string, way: Way): readonly Row[] {
  const single = singleOf(id);
  const writer = { r: random(SEED + ways.indexOf(way)), plain: true };
  const rows = Array.from({ length: ROWS }, () => inputs[single.id]?.make(writer) ?? []);
  if (way === "with a unit in every row") return rows;
  return rows.map((row) => row.map((cell, i) => (single.units.includes(i) ? rows[0]?.[i] : cell)));
}

/** One value where it stands for all rows, else a column. */
function columns(rows: readonly Row[], way: Way, { units }: Single): Row {
  const [first = []] = rows;
  return first.map((one, i) => (way === "with a unit for the whole column" && units.includes(i) ? one : rows.map((row) => [row[i]])));
}

/** The cells, and beside each row the function's own twin in it. */
function twins(id: string, way: Way, rows: readonly Row[]): Sheet {
  const sheet = new Sheet(sheetName(id, way));
  const given = columns(rows, way, singleOf(id)).map((column, c) => (Array.isArray(column) ? new Reference(`${address(0, c)}:${address(rows.length - 1, c)}`, column) : column));
  const formulas = find(id)?.call(...given).native() as string[][];
  rows.forEach((cells, row) => {
    cells.forEach((cell, column) => {
      if (typeof cell === "number" || typeof cell === "string") sheet.set(row, column, cell);
    });
    sheet.set(row, cells.length, { formula: String(formulas[row]?.[0]).slice(1) });
  });
  return sheet;
}

const placesOf = (cell: unknown): number => (cell === null ? 2 : Number(String(cell).slice(0, 1)));

outside("soffice", "functions of columns against their twins, one in each row", (soffice) => {
  const { functions } = program("columns");

  it(`${functions.join(", ")}: ${ROWS} rows each with one unit and with a unit in every row`, () => {
    const cases = functions.flatMap((id) => ways.map((way) => ({ id, way, rows: rowsOf(id, way) })));
    const shown = shownBy(soffice, workbook(cases.map(({ id, way, rows }) => twins(id, way, rows))));
    for (const { id, way, rows } of cases) {
      const single = singleOf(id);
      const ours = find(id)?.call(...columns(rows, way, single)).value() as unknown[][];
      const theirs = shown.get(sheetName(id, way)) ?? [];
      let missed = 0;
      rows.forEach((cells, row) => {
        const value = Number(ours[row]?.[0]);
        const their = Number(theirs[row]?.[cells.length]);
        const where = `${id} ${way}, row ${row + 1}, ${JSON.stringify(cells)}: ours ${value}, theirs ${their} (seed ${SEED})`;
        const alone = Number(find(single.id)?.call(...cells).value());
        if (id !== "PAYOUTS") {
          expect(Math.abs(alone - value), where).toBeLessThanOrEqual(LAST_DIGIT * Math.abs(value));
          expect(Math.abs(their - value), where).toBeLessThanOrEqual(AGREES_WITHIN * Math.abs(value));
          return;
        }
        expect(value, where).toBe(alone);
        const apart = Math.round(Math.abs(their - value) * 10 ** placesOf(cells[6]));
        if (apart > 0) missed++;
        expect(apart, where).toBeLessThanOrEqual(1);
      });
      if (id === "PAYOUTS") console.log(`${id} ${way}: of ${ROWS} amounts float ROUND took ${missed} to the other side of a tie.`);
      expect(missed).toBeLessThan(ROWS * MOST_MISSED);
    }
  }, A_BUSY_MACHINE);
});
