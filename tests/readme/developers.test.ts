import { existsSync, mkdtempSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { expect, it } from "vitest";
import * as algebra from "../../src/core/expression/expression";
import * as matter from "../../src/core/matter";
import type { Answer } from "../../src/functions/answer";
import * as read from "../../src/functions/read";
import * as forms from "../native/written-forms";

const root = fileURLToPath(new URL("../../", import.meta.url));
const text = readFileSync(join(root, "DEVELOPERS.md"), "utf8");
const [formula = "", cellFunction = "", inputs = ""] = [...text.matchAll(/^ *```ts\n([^]*?)^ *```/gm)].map(([, code]) => code ?? "");

/** The example's code as a module of its own, with the imports that its two files have. */
async function example(): Promise<{ sampleWeight(...cells: readonly unknown[]): Answer }> {
  const path = join(mkdtempSync(join(tmpdir(), "lotwright-example-")), "example.ts");
  const body = cellFunction.replaceAll("weigh.sampleWeight", "weigh");
  writeFileSync(
    path,
    [
      `import { formula } from "${root}src/core/expression/formula";`,
      `import { grams, share } from "${root}src/core/measure/quantity";`,
      `import { answer } from "${root}src/functions/answer";`,
      `import * as read from "${root}src/functions/read";`,
      formula.replace("export const sampleWeight", "const weigh"),
      body,
    ].join("\n"),
  );
  return (await import(/* @vite-ignore */ path)) as Awaited<ReturnType<typeof example>>;
}

it("the function of the example computes what its comment says, with its working and its twin", async () => {
  const { sampleWeight } = await example();
  const shows = /@example =LOT\.SAMPLEWEIGHT\(12,"kg","0\.2%","g"\) -> (.+)$/m.exec(cellFunction)?.[1];
  expect(String(sampleWeight(12, "kg", "0.2%", "g").value())).toBe(shows);
  expect(sampleWeight(12, "kg", 0.002, "g").working().title).toBe("Weight of a sample");
  expect(sampleWeight(12, "kg", 0.002, "g").native()).toMatch(/^=12\*1000\*0\.002/);
  expect(() => sampleWeight(12, "kg", 0, "g").value()).toThrow(/Cannot use taken = 0/);
});

it("the parts that it names are there", () => {
  const readers = [...text.matchAll(/read\.(?!ts\b)(\w+)/g)].map(([, name]) => name ?? "");
  expect(readers.length).toBeGreaterThan(10);
  expect(readers.filter((name) => !(name in read))).toEqual([]);
  const methods = /a method: `([^`]+)`/.exec(text)?.[1]?.split(" ") ?? [];
  expect(methods.length).toBeGreaterThan(10);
  expect(methods.filter((name) => !(name in algebra.ONE))).toEqual([]);
  for (const name of ["sum", "count", "choose", "refuse", "ONE", "ZERO"]) expect(algebra).toHaveProperty(name);
  for (const name of ["atomic", "molarMass", "molar", "massRatio", "natural"]) expect(matter).toHaveProperty(name);
  for (const [, name = ""] of inputs.matchAll(/\b(weight|massUnit|share|perhaps)\(w/g)) expect(forms).toHaveProperty(name);
});

it("the rooms and files that it names are there", () => {
  const rooms = [...text.matchAll(/`((?:src|tests|shared|manifest|sample-workbooks)(?:\/[\w.-]+)*)`/g)].map(([, path]) => path ?? "");
  expect(rooms.length).toBeGreaterThan(20);
  expect(rooms.filter((path) => !existsSync(join(root, path)))).toEqual([]);
});
