import { existsSync, readFileSync, readdirSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";
import webpack, { type Compiler } from "webpack";
import type { Sample } from "../host/samples";
import { inRepository } from "./excel-files";
import { referenceFiles } from "./reference-files";

const { resolve } = createRequire(import.meta.url);

/** The folder of an installed package, wherever npm put it. */
function packageFolder(name: string): string {
  const found = (resolve.paths(name) ?? []).map((folder) => join(folder, name)).find((folder) => existsSync(join(folder, "package.json")));
  if (found === undefined) throw new Error(`Cannot find the package ${name}: run npm ci`);
  return found;
}

/** What the page loads as it is, by its name there. */
function copied(): Record<string, string> {
  const grid = packageFolder("@odoo/o-spreadsheet");
  const owl = packageFolder("@odoo/owl");
  const icons = packageFolder("font-awesome");
  return {
    "index.html": inRepository("src/host/index.html"),
    "host.css": inRepository("src/host/host.css"),
    "pane.css": inRepository("src/pane/pane.css"),
    "icon.png": inRepository("manifest/icons/icon-32.png"),
    ...Object.fromEntries(Object.entries(referenceFiles).map(([name, path]) => [name, inRepository(path)])),
    "o-spreadsheet/o_spreadsheet.esm.js": join(grid, "dist/o_spreadsheet.esm.js"),
    "o-spreadsheet/o_spreadsheet.xml": join(grid, "dist/o_spreadsheet.xml"),
    "o-spreadsheet/o_spreadsheet.css": join(grid, "dist/o_spreadsheet.css"),
    "o-spreadsheet/LICENSE.txt": join(grid, "LICENSE"),
    "owl/owl.es.js": join(owl, "dist/owl.es.js"),
    "owl/LICENSE.txt": join(owl, "LICENSE"),
    "font-awesome/css/font-awesome.min.css": join(icons, "css/font-awesome.min.css"),
    "font-awesome/fonts/fontawesome-webfont.woff2": join(icons, "fonts/fontawesome-webfont.woff2"),
  };
}

const bootstrapPath = (): string => join(packageFolder("bootstrap"), "dist/css/bootstrap.min.css");

/** Bootstrap dresses the grid alone: as it comes, its rules would reach the bar and the pane. */
function bootstrap(): string {
  const css = readFileSync(bootstrapPath(), "utf8");
  const rules = css.replace(/^@charset[^;]*;/, "").replace(/\/\*[^]*?\*\//g, "").replace(/:root/g, "&").replace(/(?<=[},])body(?=\{)/g, "&");
  return `:where(.grid){${rules}}`;
}

const sampleFolder = inRepository("sample-workbooks");

/** cost-sheet.xlsx is called "Cost sheet" on the page; it is the one that the page opens with. */
const sampleList = (): Sample[] =>
  readdirSync(sampleFolder)
    .filter((file) => file.endsWith(".xlsx"))
    .sort((a, b) => Number(b === "cost-sheet.xlsx") - Number(a === "cost-sheet.xlsx") || a.localeCompare(b))
    .map((file) => ({ file, title: titled(file.replace(/\.xlsx$/, "").replaceAll("-", " ")) }));

const titled = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

/** The files of other packages beside the bundle, by their names there. */
export const copiedFiles = (): Readonly<Record<string, string>> => ({ ...copied(), "bootstrap.css": bootstrapPath() });

/** Puts beside the bundle what the page needs and no bundler touches. */
export class HostFiles {
  apply(compiler: Compiler): void {
    compiler.hooks.thisCompilation.tap("HostFiles", (compilation) => {
      compilation.hooks.processAssets.tap({ name: "HostFiles", stage: webpack.Compilation.PROCESS_ASSETS_STAGE_ADDITIONAL }, () => {
        const emit = (name: string, content: string | Buffer): void => compilation.emitAsset(name, new webpack.sources.RawSource(content), { minimized: true });
        for (const [name, path] of Object.entries(copied())) {
          compilation.fileDependencies.add(path);
          emit(name, readFileSync(path));
        }
        emit("bootstrap.css", bootstrap());
        const samples = sampleList();
        for (const { file } of samples) emit(`samples/${file}`, readFileSync(join(sampleFolder, file)));
        emit("samples/index.json", JSON.stringify(samples));
      });
    });
  }
}
