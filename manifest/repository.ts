import { existsSync, readFileSync } from "node:fs";
import { DEVELOPMENT_BASE, excelFiles, inRepository, packageVersion } from "../src/build/excel-files";
import type { Surroundings } from "./fault";

/** The manifest as it stands in the repository, for development. */
export const repositoryManifest = readFileSync(inRepository("manifest/manifest.xml"), "utf8");

/** What it must agree with before anything is built. */
export const repositorySurroundings: Surroundings = {
  version: packageVersion(),
  base: DEVELOPMENT_BASE,
  file(name) {
    // The bundle is made by the build, which checks the manifest again beside it.
    if (name === "start.js") return new Uint8Array();
    const source = excelFiles[name];
    return source !== undefined && existsSync(inRepository(source)) ? readFileSync(inRepository(source)) : null;
  },
};
