import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { referenceFiles } from "./reference-files";

const root = new URL("../../", import.meta.url);

/** Where the manifest in the repository points, for development. */
export const DEVELOPMENT_BASE = "https://localhost:3000/";

/** What is served to Excel, by its name there. The metadata gets its help addresses; the bundle and the manifest are made. */
export const excelFiles: Readonly<Record<string, string>> = {
  "index.html": "src/excel/index.html",
  "functions.json": "src/catalogue/functions.json",
  ...referenceFiles,
  "pane.css": "src/pane/pane.css",
  "icon-16.png": "manifest/icons/icon-16.png",
  "icon-32.png": "manifest/icons/icon-32.png",
  "icon-64.png": "manifest/icons/icon-64.png",
  "icon-80.png": "manifest/icons/icon-80.png",
};

export const inRepository = (path: string): string => fileURLToPath(new URL(path, root));

export const packageVersion = (): string =>
  (JSON.parse(readFileSync(inRepository("package.json"), "utf8")) as { version: string }).version;
