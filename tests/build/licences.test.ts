import { createHash } from "node:crypto";
import { mkdtempSync, readFileSync, readdirSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import type { StatsCompilation, StatsModule } from "webpack";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { bundle } from "../../src/build/bundle";
import { excel } from "../../src/build/bundles/excel";
import { host } from "../../src/build/bundles/host";
import { inRepository } from "../../src/build/excel-files";
import { licenceOf } from "../../src/build/licences/licence-of";
import type { Licence } from "../../src/pane/licences/licence";

interface Bundled {
  readonly folder: string;
  readonly list: readonly Licence[];
  readonly text: string;
  /** Packages of which something is in the bundle or lies beside it, found without the list. */
  readonly found: readonly string[];
}

const bundled: Record<"excel" | "host", Bundled> = {} as never;
beforeAll(async () => {
  for (const configuration of [excel, host]) {
    const folder = mkdtempSync(join(tmpdir(), "lotwright-licences-"));
    const stats = await bundle({ ...configuration, output: { ...configuration.output, path: folder } });
    const { default: list } = (await import(pathToFileURL(join(folder, "licences.js")).href)) as { default: readonly Licence[] };
    bundled[configuration.name as "excel" | "host"] = { folder, list, text: readFileSync(join(folder, "licences.txt"), "utf8"), found: [...new Set([...inModules(stats), ...besides(folder)])].sort() };
  }
}, 240_000);
afterAll(() => Object.values(bundled).forEach(({ folder }) => rmSync(folder, { recursive: true })));

/** By the names that webpack gives the modules of a bundle. */
function inModules({ modules = [] }: StatsCompilation): string[] {
  const names = (module: StatsModule): string[] => [module.nameForCondition ?? module.name ?? "", ...(module.modules ?? []).flatMap(names)];
  return modules.flatMap(names).flatMap((name) => /node_modules[\\/]((?:@[^\\/]+[\\/])?[^\\/]+)/.exec(name)?.[1]?.replaceAll("\\", "/") ?? []);
}

const COPIED_FROM = ["@odoo/o-spreadsheet", "@odoo/owl", "font-awesome", "bootstrap", "chart.js", "office-addin-cli"];

/** By the content of the files that lie beside it; Bootstrap's style sheet is made to reach the grid alone and keeps its rules. */
function besides(folder: string): string[] {
  const hash = (path: string): string => createHash("sha256").update(readFileSync(path)).digest("hex");
  const files = (of: string): string[] => readdirSync(of, { recursive: true, withFileTypes: true }).flatMap((entry) => (entry.isFile() ? [join(entry.parentPath, entry.name)] : []));
  const there = files(folder);
  const hashes = new Set(there.filter((path) => !path.endsWith(".txt")).map(hash));
  const same = COPIED_FROM.filter((name) => files(inRepository(`node_modules/${name}`)).some((path) => readFileSync(path).length > 0 && hashes.has(hash(path))));
  return [...same, ...(there.some((path) => path.endsWith(".css") && readFileSync(path, "utf8").includes("--bs-gutter-x")) ? ["bootstrap"] : [])];
}

describe.each(["excel", "host"] as const)("the licences beside the %s build", (name) => {
  it("name every package that is in it, and none that is not", () => {
    const { list, found } = bundled[name];
    expect(found.length).toBeGreaterThan(0);
    // The piece of webpack that loads the others is in every bundle, and is no module of a package.
    expect(list.map((one) => one.name).filter((one) => one !== "webpack").sort()).toEqual(["Lotwright", ...found].sort());
  });

  it("give each its version, its licence and the whole text", () => {
    for (const { name: of, version, licence, text } of bundled[name].list) {
      if (of !== "Lotwright") expect({ of, version }).toEqual({ of, version: (JSON.parse(readFileSync(inRepository(`node_modules/${of}/package.json`), "utf8")) as { version: string }).version });
      expect(licence, of).toMatch(/^(?:MIT|LGPL-3\.0-(?:or-later|only)|OFL-1\.1 AND MIT)$/);
      expect(text.length, of).toBeGreaterThan(1000);
      expect(text, of).toMatch(/copyright/i);
    }
  });

  it("are the same to be read in a text file", () => {
    for (const { name: of, version, licence, notice, text } of bundled[name].list) {
      expect(bundled[name].text).toContain(`${of} ${version}, ${licence}`);
      expect(bundled[name].text).toContain(text);
      if (notice !== null) expect(bundled[name].text).toContain(notice);
    }
  });
});

it("the reference page's script, which is bundled apart, holds nothing of others", () => {
  const script = readFileSync(inRepository("src/reference-page/reference.js"), "utf8");
  // The bundler names each file above its code.
  expect(script).toMatch(/^ *\/\/ src\//m);
  expect(script).not.toContain("node_modules/");
});

describe("the grid's licence", () => {
  it.each(["@odoo/o-spreadsheet", "@odoo/owl"])("is beside the local page with what the LGPL asks for %s: both texts, the source, and how to put another version in its place", (name) => {
    const one = bundled.host.list.find((of) => of.name === name);
    expect(one?.text).toMatch(/GNU LESSER GENERAL PUBLIC LICENSE\s+Version 3, 29 June 2007/);
    expect(one?.text).toMatch(/GNU GENERAL PUBLIC LICENSE\s+Version 3, 29 June 2007/);
    expect(one?.notice).toContain("covered by the GNU Lesser General Public License, version 3");
    expect(one?.notice).toContain(`Source of version ${one?.version}: https://github.com/odoo/`);
    expect(one?.notice).toMatch(/put another version in their place.*replace these files under the same names/s);
    const files = /files of its own: (.*?)\. You may/.exec(one?.notice ?? "")?.[1]?.split(", ") ?? [];
    expect(files.length).toBeGreaterThan(0);
    for (const file of files) expect(readFileSync(join(bundled.host.folder, file)).length, file).toBeGreaterThan(0);
  });

  it("is not beside the build for Excel, which holds nothing of the grid", () => {
    expect(bundled.excel.list.filter(({ name, licence }) => name.startsWith("@odoo/") || /GPL/.test(licence))).toEqual([]);
    expect(bundled.excel.text).not.toMatch(/o-spreadsheet|LESSER GENERAL PUBLIC/);
  });

  it("stops a build that takes such a library into a bundle", () => {
    const folder = inRepository("node_modules/@odoo/owl");
    const owl = { folder, name: "@odoo/owl", version: "2.8.3", licence: "LGPL-3.0-only", source: null };
    expect(() => licenceOf(owl, [])).toThrow("Cannot ship @odoo/owl inside a bundle: it is under LGPL-3.0-only, and must stay a file of its own that may be replaced");
  });
});
