import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { catalogue } from "../../src/catalogue/catalogue";
import type { Entry } from "../../src/catalogue/entry";
import { TWIN_INPUTS } from "../../src/catalogue/outside";
import { Reference } from "../../src/functions/reference";
import { massUnits } from "../../src/core/measure/mass";
import { outside } from "../outside";
import { type Random, random } from "../random";
import { inputs } from "./inputs";
import { program } from "../program";
import { shownBy } from "../workbook/libreoffice";
import { Sheet, address, workbook } from "./workbook";

const SEED = 20261125;
const A_BUSY_MACHINE = 300_000;
/** Excel takes no longer formula. */
const LONGEST_FORMULA = 8192;
const AGREES_WITHIN = 1e-12;
/** LibreOffice writes no more than twenty decimals. */
const LAST_DECIMAL = 1e-20;

/** How a twin learns of what the cells hold. */
const passes = [
  { name: "told", plain: false, holds: true, cases: TWIN_INPUTS },
  { name: "not told", plain: true, holds: false, cases: TWIN_INPUTS },
  // Texts and gaps that a twin may not be able to read unless it is told of them: an error then, never another number.
  { name: "untold texts", plain: false, holds: false, cases: 100 },
] as const;
type Pass = (typeof passes)[number];

type Rows = readonly (readonly unknown[])[];

interface Case {
  readonly cells: readonly unknown[];
  readonly written: string;
  readonly ours: Rows;
  readonly row: number;
}

/** The twin of a function of columns is that of a single function in each row: columns.test.ts computes it. */
const ofColumns: readonly string[] = program("columns").functions;
const withTwin = catalogue.filter((entry) => !ofColumns.includes(entry.id) && entry.call(...bare(entry)).native() !== null);

function bare({ parameters }: Entry): readonly Reference[] {
  return parameters.map(({ shape }, i) => new Reference(shape === "range" ? `A${i + 1}:A${i + 9}` : `A${i + 1}`));
}

describe("every function with a native twin is tried in another spreadsheet", () => {
  it("has a maker of inputs", () => expect(Object.keys(inputs).sort()).toEqual(withTwin.map(({ id }) => id).sort()));
});

outside("soffice", "native twins computed by LibreOffice equal ours", (soffice) => {
  const sheets = new Map<string, { readonly sheet: Sheet; readonly cases: readonly Case[] }>();
  let shown: ReadonlyMap<string, Rows> = new Map();
  const misses = new Map<string, number>();
  let moneyCells = 0;

  beforeAll(() => {
    for (const entry of withTwin)
      for (const pass of passes) sheets.set(sheetName(entry, pass), written(entry, pass));
    shown = shownBy(soffice, workbook([...sheets.values()].map(({ sheet }) => sheet)));
  }, A_BUSY_MACHINE);

  afterAll(() => {
    const list = [...misses].map(([id, n]) => `${n} in ${id}`).join(", ");
    console.log(`Twins: of ${moneyCells} amounts of money LibreOffice's float ROUND took ${list || "none"} to the other side of a tie.`);
  });

  describe.each(passes)("$name", (pass) => {
    it.each(withTwin.map((entry) => [entry.id, entry] as const))("%s", (_, entry) => {
      const { cases = [] } = sheets.get(sheetName(entry, pass)) ?? {};
      const rows = shown.get(sheetName(entry, pass)) ?? [];
      expect(cases.length).toBe(pass.cases);
      let errors = 0;
      for (const one of cases) errors += compare(entry, pass, one, rows);
      if (pass.name !== "untold texts") expect(errors).toBe(0);
    });
  });

  /** How many cells show an error; a cell that shows anything else but our value fails. */
  function compare(entry: Entry, pass: Pass, one: Case, rows: Rows): number {
    const first = firstResultColumn(entry);
    const places = inputs[entry.id]?.money;
    let errors = 0;
    let missed = 0;
    one.ours.forEach((line, r) =>
      line.forEach((ours, c) => {
        const theirs = String(rows[one.row + r]?.[first + c]);
        const where = `${entry.id}(${one.written}) cell ${r + 1}, ${c + 1}: ours ${String(ours)}, theirs ${theirs} (seed ${SEED})`;
        if (/^(#|Err:)/.test(theirs)) {
          errors++;
          if (pass.name !== "untold texts") throw new Error(where);
          return;
        }
        if (typeof ours !== "number") {
          if (theirs !== ours && !namesUnit(theirs, String(ours))) throw new Error(where);
          return;
        }
        const decimals = c === 0 && one.ours.length > 1 ? null : (places?.(one.cells, r) ?? null);
        if (decimals === null) {
          if (!agree(entry, one, r, c, ours, Number(theirs))) throw new Error(where);
          return;
        }
        moneyCells++;
        const apart = Math.round(Math.abs(Number(theirs) - ours) * 10 ** decimals);
        if (apart === 0) return;
        const carriesMisses = line[0] === "Rounding" && apart <= missed;
        if (!carriesMisses && !(apart === 1 && reachedByANudge(entry, one, r, c, Number(theirs), decimals))) throw new Error(where);
        if (carriesMisses) return;
        missed++;
        misses.set(entry.id, (misses.get(entry.id) ?? 0) + 1);
      }),
    );
    return errors;
  }
});

const sheetName = (entry: Entry, pass: Pass): string => `${entry.id} ${pass.name}`;
/** Each argument has two columns, since a range may be two wide. */
const columnOf = (argument: number): number => argument * 2;
const firstResultColumn = ({ arity }: Entry): number => columnOf(arity) + 1;

/** A sheet of random valid inputs and the twins over them. */
function written(entry: Entry, pass: Pass): { readonly sheet: Sheet; readonly cases: readonly Case[] } {
  const r = random(SEED + hash(sheetName(entry, pass)));
  const sheet = new Sheet(sheetName(entry, pass));
  const cases: Case[] = [];
  let row = 0;
  for (let tries = 0; cases.length < pass.cases; tries++) {
    if (tries > 10 * pass.cases) throw new Error(`${entry.id} has hardly ever a twin`);
    const cells = inputs[entry.id]?.make({ r, plain: pass.plain }) ?? [];
    const given = cells.map((cell, i) => argument(r, pass, sheet.name, cell, row, columnOf(i)));
    const native = entry.call(...given.map(({ as }) => as)).native();
    if (native === null) continue;
    const twins = typeof native === "string" ? [[native]] : native;
    const value = entry.call(...cells).value();
    const ours: Rows = Array.isArray(value) ? value : [[value]];
    if (pass.holds) expect(entry.call(...given.map(({ as }) => as)).value()).toEqual(value);
    for (const { put } of given) put(sheet);
    twins.forEach((line, i) =>
      line.forEach((formula, j) => {
        if (formula.length > LONGEST_FORMULA) throw new Error(`${entry.id}: a twin of ${formula.length} characters is too long for Excel`);
        sheet.set(row + i, firstResultColumn(entry) + j, { formula: formula.slice(1) });
      }),
    );
    cases.push({ cells, ours, row, written: given.map(({ words }) => words).join(", ") });
    row += Math.max(ours.length, ...cells.map((cell) => (Array.isArray(cell) ? cell.length : 1)));
  }
  return { sheet, cases };
}

interface Argument {
  /** What the function is given. */
  readonly as: unknown;
  readonly put: (sheet: Sheet) => void;
  readonly words: string;
}

function argument(r: Random, pass: Pass, sheet: string, cell: unknown, row: number, column: number): Argument {
  const nothing = (): void => undefined;
  if (r.chance(cell === null ? 0.5 : 0.15)) return { as: cell, put: nothing, words: JSON.stringify(cell) };
  const text = r.pick([(a: string) => a, absolute, (a: string) => `'${sheet}'!${a}`])(place(cell, row, column));
  const as = pass.holds ? new Reference(text, cell) : new Reference(text);
  return {
    as,
    put: (into) =>
      (Array.isArray(cell) ? (cell as unknown[][]) : [[cell]]).forEach((line, i) =>
        line.forEach((one, j) => {
          if (typeof one === "number" || typeof one === "string") into.set(row + i, column + j, one);
        }),
      ),
    words: `${text} = ${JSON.stringify(cell)}`,
  };
}

function place(cell: unknown, row: number, column: number): string {
  if (!Array.isArray(cell)) return address(row, column);
  const lines = cell as unknown[][];
  return `${address(row, column)}:${address(row + lines.length - 1, column + (lines[0]?.length ?? 1) - 1)}`;
}

const absolute = (a: string): string => a.replace(/([A-Z]+)(\d+)/g, "$$$1$$$2");

/** The settlement's unit stands as it was written. */
function namesUnit(theirs: string, ours: string): boolean {
  return massUnits.lookUp(theirs)?.symbol === ours;
}

/**
 * Equal to twelve digits; of a result that is a small difference of large terms, to twelve digits of the terms: as far
 * as the result moves when its inputs move in their twelfth digit.
 */
function agree(entry: Entry, one: Case, r: number, c: number, ours: number, theirs: number): boolean {
  const apart = Math.abs(theirs - ours);
  if (apart <= Math.max(AGREES_WITHIN * Math.abs(ours), LAST_DECIMAL)) return true;
  const largest = Math.max(...one.cells.flat(2).map((x) => (typeof x === "number" ? Math.abs(x) : 0)), Math.abs(ours));
  const moves = nudged(entry, one, r, c).map((x) => Math.abs(x - ours));
  // A step, such as one more bar, is no small move.
  const small = moves.filter((move) => move <= NUDGE * 1000 * largest);
  return apart <= AGREES_WITHIN * (small.reduce((a, b) => a + b, 0) / NUDGE);
}

/** At a tie the last place turns when an input moves in its eleventh digit. */
const reachedByANudge = (entry: Entry, one: Case, r: number, c: number, theirs: number, decimals: number): boolean =>
  nudged(entry, one, r, c).some((x) => Math.round(Math.abs(x - theirs) * 10 ** decimals) === 0);

const NUDGE = 1e-11;

/** The same cell of the result with each number of the input a little higher and a little lower. */
function nudged(entry: Entry, { cells }: Case, r: number, c: number): readonly number[] {
  const results: number[] = [];
  const tryWith = (changed: readonly unknown[]): void => {
    try {
      const value = entry.call(...changed).value();
      const cell = Array.isArray(value) ? value[r]?.[c] : value;
      if (typeof cell === "number") results.push(cell);
    } catch {
      // Beyond an argument's range there is nothing to compare with.
    }
  };
  cells.forEach((cell, i) => {
    for (const factor of [1 + NUDGE, 1 - NUDGE]) {
      if (typeof cell === "number") tryWith(cells.with(i, cell * factor));
      if (Array.isArray(cell))
        (cell as unknown[][]).forEach((line, y) =>
          line.forEach((x, j) => {
            if (typeof x === "number") tryWith(cells.with(i, (cell as unknown[][]).with(y, line.with(j, x * factor))));
          }),
        );
    }
  });
  return results;
}

function hash(text: string): number {
  return [...text].reduce((h, letter) => (Math.imul(h, 31) + letter.charCodeAt(0)) >>> 0, 7);
}
