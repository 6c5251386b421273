import { readFileSync, rmSync } from "node:fs";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { DEVELOPMENT_BASE, inRepository } from "../../src/build/excel-files";
import { fillExcelFolder } from "../../src/build/excel-folder";
import { catalogue } from "../../src/catalogue/catalogue";
import { type Built, buildAddIn } from "../office/built";

interface Described {
  readonly functions: readonly { readonly id: string; readonly helpUrl?: string }[];
}

let built: Built;
beforeAll(async () => {
  built = await buildAddIn(DEVELOPMENT_BASE);
});
afterAll(() => rmSync(built.folder, { recursive: true }));

const helpAddresses = (): readonly (readonly [string, string | undefined])[] =>
  (JSON.parse(built.file("functions.json")?.toString() ?? "") as Described).functions.map(({ id, helpUrl }) => [id, helpUrl]);

describe("every function's help in Excel leads to its place on the reference page", () => {
  // The folder is filled again, as a build for that address fills it.
  it.each([DEVELOPMENT_BASE, "https://localhost:4321/", "https://example.org/lotwright/"])("in a build for %s", (base) => {
    fillExcelFolder(built.folder, base);
    expect(helpAddresses()).toEqual(catalogue.map(({ id }) => [id, `${base}reference.html#${id}`]));
    const page = built.file("reference.html")?.toString() ?? "";
    for (const { id } of catalogue) expect(page.split(` id="${id}"`).length, id).toBe(2);
  });

  it("and the metadata in the repository names no address, so that no build can carry another one's", () =>
    expect(readFileSync(inRepository("src/catalogue/functions.json"), "utf8")).not.toMatch(/https?:/));
});
