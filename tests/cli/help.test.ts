import { cpSync, mkdtempSync, readdirSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { beforeAll, describe, expect, it } from "vitest";
import { lotwright, lotwrightIn } from "./lotwright";

const folder = mkdtempSync(join(tmpdir(), "lotwright-help-"));

/** The commands, as the help lists them. */
const NAMES = ["eval", "explain", "native", "functions", "recalc", "share", "unshare", "reconcile", "journal", "month"] as const;
const helpOf = new Map(NAMES.map((name) => [name, lotwright(name, "--help").out]));

const examplesIn = (help: string): readonly string[] => help.split("\n").flatMap((line) => /^ {4}(lotwright .*)$/.exec(line)?.[1] ?? []);
/** As a shell parts it: what stands in single quotes is one word. */
const wordsOf = (line: string): readonly string[] => [...line.matchAll(/'([^']*)'|(\S+)/g)].map(([, quoted, plain]) => quoted ?? plain ?? "").slice(1);
const examples = NAMES.flatMap((name) => examplesIn(helpOf.get(name) ?? "").map((line) => [line, name] as const));

/** What each command's examples print; a file that a line names at its end must be written. */
const PRINTS: Readonly<Record<(typeof NAMES)[number], RegExp>> = {
  eval: /^(\d+\.\d+|Bars\t2\t)/,
  explain: /Rule .*\nFormula [\s\S]*\nPut in [\s\S]*\nResult +\S/,
  native: /^=[^L]*$/,
  functions: /LOT\.COPPER/,
  recalc: /^\d+ cells computed, 0 differ from what was stored$/,
  share: /^\d+ cells: \d+ hold ordinary formulas now/,
  unshare: /^\d{3,} formulas of ours stand again, 0 cells stay/,
  reconcile: /^Nothing contradicts itself in 122 lots$/,
  journal: /^2025-\d\d: \d+ settlements in \d+ lines, debits (\d+\.\d\d), credits \1$/,
  month: /^Opening\t\d[\s\S]*\nVerdict\twithin measurement/m,
};

beforeAll(() => {
  cpSync(fileURLToPath(new URL("../../sample-workbooks/", import.meta.url)), join(folder, "sample-workbooks"), { recursive: true, filter: (path) => !/\.(ts|png)$/.test(path) });
  const stock = (helpOf.get("month") ?? "").split("\n").flatMap((line) => /^ {4}((?:kind|counted|shipped),.*)$/.exec(line)?.[1] ?? []);
  expect(stock.length).toBeGreaterThan(2);
  writeFileSync(join(folder, "stock.csv"), `${stock.join("\n")}\n`);
});

describe("every example of the help works as it stands", () => {
  it("gives each command at least one", () => expect(new Set(examples.map(([, name]) => name))).toEqual(new Set(NAMES)));

  it.each(examples)("%s", (line, name) => {
    const words = wordsOf(line);
    const { out, error, code } = lotwrightIn(folder, ...words);
    expect(code, error).toBe(0);
    expect(out).toMatch(PRINTS[name]);
    const written = words.filter((word) => /^[\w-]+\.(xlsx|csv)$/.test(word) && word !== "stock.csv");
    expect(readdirSync(folder)).toEqual(expect.arrayContaining(written));
  });
});

describe("the help", () => {
  it("lists every command and says how one ends", () => {
    const { out, code } = lotwright("--help");
    expect(code).toBe(0);
    expect([...out.matchAll(/^ {2}([a-z]+) /gm)].map(([, name]) => name)).toEqual([...NAMES]);
    expect(out).toMatch(/Ends with 0 .* with 1 .* with 2 /s);
    expect(lotwright("help").out).toBe(out);
    expect(lotwright()).toMatchObject({ code: 2, error: out, out: "" });
  });
  it("fits a terminal, and says how each command ends", () => {
    for (const [name, text] of [["", lotwright("--help").out] as const, ...helpOf]) {
      for (const line of text.split("\n").filter((one) => !/^ {4}lotwright /.test(one))) expect(line.length, `${name}: ${line}`).toBeLessThanOrEqual(128);
      expect(text).toMatch(/Ends with\s+0 /);
    }
  });
  it("is the same by -h and by help before the name", () => {
    expect(lotwright("month", "-h").out).toBe(helpOf.get("month"));
    expect(lotwright("help", "month").out).toBe(helpOf.get("month"));
  });
  it("says what computes", () => expect(lotwright("--version")).toMatchObject({ code: 0, out: expect.stringMatching(/^Lotwright \d+\.\d+\.\d+, atomic weights \d{4}$/) }));
});

describe("a command that cannot be used as it was written says what to write", () => {
  it.each<[readonly string[], RegExp]>([
    [["recalk", "x.xlsx"], /^There is no command "recalk": did you mean recalc\n/],
    [["help", "jurnal"], /^There is no command "jurnal": did you mean journal\n/],
    [["toString"], /^There is no command "toString": write one of eval, /],
    [["eval"], /^Give a formula in quotes.*\n\nWrite: lotwright eval '<formula>'\nSuch as: lotwright eval '=LOT/],
    [["recalc"], /^Give the workbook to recalculate\n\nWrite: lotwright recalc FILE\.xlsx/],
    [["recalc", "x.xlsx", "--writ", "y.xlsx"], /^There is no "--writ" here: did you mean --write\n/],
    [["recalc", "x.xlsx", "--write"], /^Give a value after --write, such as --write fresh\.xlsx\n/],
    [["share", "x.xlsx"], /^Give the workbook to read and the name of the one to write\n/],
    [["month", "x.xlsx", "y.xlsx", "--month", "--stock", "s.csv"], /^Give a value after --month, such as --month 2026-03\n/],
    [["reconcile", "--all", "x.xlsx"], /^There is no "--all" here: the command takes no options\n/],
    [["functions", "COPER"], /did you mean LOT\.COPPER/],
  ])("%j", (words, says) => expect(lotwright(...words)).toMatchObject({ code: 2, out: "", error: expect.stringMatching(says) }));
});
