import { spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type Sheet, workbook } from "./workbook";

/** Every sheet as it shows when LibreOffice has computed it, at full precision: rows of texts by the sheet's name. */
export function computed(soffice: string, sheets: readonly Sheet[]): ReadonlyMap<string, readonly (readonly string[])[]> {
  const folder = mkdtempSync(join(tmpdir(), "lotwright-twins-"));
  try {
    writeFileSync(join(folder, "twins.xlsx"), workbook(sheets));
    mkdirSync(join(folder, "out"));
    const { status, stderr } = spawnSync(
      soffice,
      ["--headless", `-env:UserInstallation=file://${folder}/profile`, "--convert-to", FULL_PRECISION_CSV, "--outdir", join(folder, "out"), join(folder, "twins.xlsx")],
      { encoding: "utf8", timeout: 300_000 },
    );
    if (status !== 0) throw new Error(`LibreOffice could not compute the workbook: ${stderr}`);
    return new Map(sheets.map(({ name }) => [name, records(readFileSync(join(folder, "out", `twins-${name}.csv`), "utf8"))]));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Comma, quotes, UTF-8, from the first line, values as they are and not as they are shown, every sheet. */
const FULL_PRECISION_CSV = "csv:Text - txt - csv (StarCalc):44,34,76,1,,0,false,false,false,false,false,-1";

function records(csv: string): readonly (readonly string[])[] {
  const rows: string[][] = [[]];
  for (const [, quoted, bare = "", end] of csv.matchAll(/(?:"((?:[^"]|"")*)"|([^",\n]*))(,|\n|$)/g)) {
    rows[rows.length - 1]?.push(quoted?.replaceAll('""', '"') ?? bare);
    if (end === "\n") rows.push([]);
  }
  return rows;
}
