import { existsSync, mkdtempSync, readFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { StatsCompilation } from "webpack";
import { bundle } from "../../src/build/bundle";
import { excel } from "../../src/build/bundles/excel";
import { fillExcelFolder } from "../../src/build/excel-folder";

export interface Built {
  readonly folder: string;
  readonly stats: StatsCompilation;
  readonly file: (name: string) => Buffer | null;
}

/** The add-in, built for an address into a folder of its own. */
export async function buildAddIn(base: string): Promise<Built> {
  const folder = mkdtempSync(join(tmpdir(), "lotwright-excel-"));
  const stats = await bundle({ ...excel, output: { ...excel.output, path: folder } });
  fillExcelFolder(folder, base);
  return { folder, stats, file: fileIn(folder) };
}

export const fileIn =
  (folder: string) =>
  (name: string): Buffer | null =>
    existsSync(join(folder, name)) ? readFileSync(join(folder, name)) : null;
