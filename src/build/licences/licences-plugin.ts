import { createRequire } from "node:module";
import { dirname } from "node:path";
import webpack, { type Compilation, type Compiler, type Module } from "webpack";
import { LICENCE_FILES, type Licence } from "../../pane/licences/licence";
import { licenceOf, ownLicence } from "./licence-of";
import { type Package, packageIn, packageOf } from "./package-of";

/** Writes beside a bundle what is in it, and under whose licence: found in what was really bundled, and in the files that are copied as they are. */
export class Licences {
  /** `copied` are files of other packages by their names beside the bundle. */
  constructor(private readonly copied: () => Readonly<Record<string, string>> = () => ({})) {}

  apply(compiler: Compiler): void {
    compiler.hooks.thisCompilation.tap("Licences", (compilation) => {
      compilation.hooks.processAssets.tap({ name: "Licences", stage: webpack.Compilation.PROCESS_ASSETS_STAGE_REPORT }, () => {
        const list = this.#list(compilation);
        const emit = (name: string, content: string): void => compilation.emitAsset(name, new webpack.sources.RawSource(content), { minimized: true });
        emit(LICENCE_FILES.module, `export default ${JSON.stringify(list)};\n`);
        emit(LICENCE_FILES.text, list.map(asText).join(`\n\n${"=".repeat(80)}\n\n`));
      });
    });
  }

  #list(compilation: Compilation): readonly Licence[] {
    const files = new Map<string, string[]>();
    const packages = new Map<string, Package>();
    const add = (of: Package | null, file?: string): void => {
      if (!of) return;
      packages.set(of.name, of);
      files.set(of.name, [...(files.get(of.name) ?? []), ...(file === undefined ? [] : [file])]);
    };
    for (const path of bundledPaths(compilation)) add(packageOf(path));
    // What loads the pieces of a bundle is webpack's own code.
    add(packageIn(dirname(createRequire(import.meta.url).resolve("webpack/package.json"))));
    for (const [name, path] of Object.entries(this.copied())) add(packageOf(path), name);
    const others = [...packages.values()].sort((a, b) => a.name.localeCompare(b.name));
    return [ownLicence(), ...others.map((of) => licenceOf(of, files.get(of.name) ?? []))];
  }
}

/** The files of the modules that a chunk holds, those that were joined into one module too. */
function bundledPaths({ modules, chunkGraph }: Compilation): string[] {
  const paths = (module: Module): string[] => {
    const joined = "modules" in module ? [...(module.modules as Iterable<Module>)].flatMap(paths) : [];
    const own = "resource" in module && typeof module.resource === "string" ? [module.resource.replace(/\?.*$/, "")] : [];
    return [...own, ...joined];
  };
  return [...modules].filter((module) => chunkGraph.getNumberOfModuleChunks(module) > 0).flatMap(paths);
}

const asText = ({ name, version, licence, notice, text }: Licence): string => [`${name} ${version}, ${licence}`, ...(notice === null ? [] : [notice]), text].join("\n\n");
