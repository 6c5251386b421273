import { readFileSync, readdirSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import programs from "../../shared/checks/programs.json";
import type { Checks } from "./published";

const folder = (path: string): string => fileURLToPath(new URL(path, import.meta.url));
const topics = readdirSync(folder("../../shared/checks/"))
  .map((file) => file.replace(/\.json$/, ""))
  .filter((topic) => topic !== "programs");
const checks = (topic: string): Checks => JSON.parse(readFileSync(folder(`../../shared/checks/${topic}.json`), "utf8")) as Checks;

describe("no published value lies unused", () => {
  it.each(topics)("%s is read by the test of its name, which asks for every row", (topic) => {
    const test = readFileSync(folder(`./${topic}.test.ts`), "utf8");
    expect(test).toContain(`from "../../shared/checks/${topic}.json"`);
    expect(test).toMatch(/^published\(\w+, \{$|it\.each\(\w+\.rows\)/m);
  });
});

describe("every check against a program is a test's", () => {
  const tests = readdirSync(folder("../"), { recursive: true, encoding: "utf8" }).filter((file) => file.endsWith(".test.ts"));
  const sources = tests.map((file) => readFileSync(folder(`../${file}`), "utf8"));

  it.each(programs)("$id", ({ id, functions, check, source }) => {
    expect(sources.some((text) => text.includes(`program("${id}")`))).toBe(true);
    expect(functions).not.toEqual([]);
    for (const words of [check, source]) expect(words.length).toBeGreaterThan(5);
  });
});

describe("every published value says what it is and where it comes from", () => {
  const rows = topics.flatMap((topic) => checks(topic).rows);

  it("has an id of its own", () => expect(new Set(rows.map(({ id }) => id)).size).toBe(rows.length));
  it.each(rows)("$id", ({ statement, source, verified, tolerance }) => {
    expect(statement).not.toBe("");
    expect(source.length).toBeGreaterThan(5);
    expect(["looked-up", "computed", "memory"]).toContain(verified);
    expect(tolerance).toBeGreaterThanOrEqual(0);
  });
});
