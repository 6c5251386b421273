import { cpSync, existsSync, mkdtempSync, readFileSync, readdirSync, statSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { beforeAll, describe, expect, it } from "vitest";
import { commands } from "../../src/cli/commands";
import { tasks } from "../../src/pane/tasks";
import { evaluate } from "../../src/engine/evaluate";
import { isCellError } from "../../src/engine/outcome";
import { lotwrightIn } from "../cli/lotwright";

const root = fileURLToPath(new URL("../../", import.meta.url));
const text = (path: string): string => readFileSync(join(root, path), "utf8");
const readme = text("README.md");
const PICTURES = "sample-workbooks/pictures/";
const MOST_BYTES = 1_500_000;

/** The lines under a heading, up to the next of its kind. */
const section = (heading: string): string => {
  const found = new RegExp(`^## ${heading}\\n([^]*?)(?=^## )`, "m").exec(readme)?.[1];
  if (!found) throw new Error(`The README has no section "${heading}"`);
  return found;
};
const tableRows = (under: string): readonly (readonly string[])[] =>
  under
    .split("\n")
    .filter((line) => /^\|(?!-)/.test(line))
    .slice(1)
    .map((line) => line.slice(1, -1).split("|").map((cell) => cell.trim()));

describe("the five formulas to try", () => {
  const rows = tableRows(section("Five formulas to try"));
  it("are five", () => expect(rows).toHaveLength(5));
  it.each(rows.map(([formula = "", shows = ""]) => [formula.replaceAll("`", ""), shows] as const))("%s shows %s", (formula, shows) => {
    const outcome = evaluate(formula);
    const shown = isCellError(outcome) ? outcome.error : String(outcome);
    expect(shows.endsWith("…") ? shown.startsWith(shows.slice(0, -1)) && shown.length > shows.length : shown === shows, `${formula} shows ${shown}`).toBe(true);
    if (isCellError(outcome)) expect(outcome.message).toContain('write "ozt"');
  });
});

describe("the command line as the README shows it", () => {
  const folder = mkdtempSync(join(tmpdir(), "lotwright-readme-"));
  const lines = tableRows(section("On the command line")).map(([line = ""]) => line.replaceAll("`", ""));
  const wordsOf = (line: string): readonly string[] => [...line.matchAll(/'([^']*)'|(\S+)/g)].map(([, quoted, plain]) => quoted ?? plain ?? "");
  beforeAll(() => cpSync(join(root, "sample-workbooks"), join(folder, "sample-workbooks"), { recursive: true, filter: (path) => !/\.(ts|png)$/.test(path) }));

  it("shows every command", () => expect(lines.map((line) => line.split(" ")[0])).toEqual(expect.arrayContaining([...commands.keys()])));
  it.each(lines)("%s", (line) => expect(lotwrightIn(folder, ...wordsOf(line))).toMatchObject({ code: 0, out: expect.stringMatching(/\S/) }));
});

describe("what the documents point at is there", () => {
  const documents = ["README.md", "DEVELOPERS.md", "CHANGELOG.md", "src/excel/README.md", "src/host/README.md"];
  it.each(documents)("%s", (document) => {
    const targets = [...text(document).matchAll(/\]\(([^)\s]+)\)/g)].map(([, target]) => target ?? "");
    expect(targets.filter((target) => !/^https:\/\//.test(target) && !existsSync(join(root, dirname(document), target.replace(/#.*$/, ""))))).toEqual([]);
  });
  it("the README shows every picture, with words for who cannot see it", () => {
    const shown = [...readme.matchAll(/!\[([^\]]+)\]\(([^)]+)\)/g)].map(([, , path]) => path ?? "");
    expect(shown.toSorted()).toEqual(readdirSync(join(root, PICTURES)).map((name) => PICTURES + name).toSorted());
  });
  it("the pictures together stay small enough to fetch", () => {
    const sizes = readdirSync(join(root, PICTURES)).map((name) => statSync(join(root, PICTURES, name)).size);
    expect(sizes.reduce((sum, size) => sum + size, 0)).toBeLessThan(MOST_BYTES);
  });
  it("every npm script that is named exists", () => {
    const { scripts } = JSON.parse(text("package.json")) as { scripts: Readonly<Record<string, string>> };
    const named = documents.flatMap((document) => [...text(document).matchAll(/npm (?:(start|test)|run (?:-s )?([a-z]+))\b/g)].map(([, short, name]) => short ?? name ?? ""));
    expect(named).toContain("pictures");
    expect([...new Set(named)].filter((name) => !(name in scripts))).toEqual([]);
  });
  it("the README tells every task of the pane by its name", () =>
    expect(tableRows(section("What the pane does")).map(([task = ""]) => task.replaceAll("*", ""))).toEqual(expect.arrayContaining(tasks.map(({ title }) => title))));
  it("the changelog begins with the version of the package", () =>
    expect(/^## (\d+\.\d+\.\d+)/m.exec(text("CHANGELOG.md"))?.[1]).toBe((JSON.parse(text("package.json")) as { version: string }).version));
  it("there is a place for the table of how fast it is", () => expect(readme).toMatch(/<!-- bench -->\n[^]*\n<!-- \/bench -->/));
});
