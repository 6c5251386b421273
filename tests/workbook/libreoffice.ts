import { spawnSync } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

/** Comma, quotes, UTF-8, values as they are and not as they are shown, every sheet. */
const EVERY_SHEET = "csv:Text - txt - csv (StarCalc):44,34,76,1,,0,false,false,false,false,false,-1";

/** What LibreOffice makes of a file: the new files by their names. */
function converted(soffice: string, name: string, bytes: Uint8Array, to: string): Map<string, Uint8Array> {
  const folder = mkdtempSync(join(tmpdir(), "lotwright-file-"));
  try {
    writeFileSync(join(folder, name), bytes);
    const run = spawnSync(soffice, ["--headless", `-env:UserInstallation=file://${folder}/profile`, "--convert-to", to, "--outdir", join(folder, "out"), join(folder, name)], { encoding: "utf8", timeout: 120_000 });
    if (run.status !== 0) throw new Error(`LibreOffice could not convert ${name}: ${run.stderr}`);
    const out = join(folder, "out");
    return new Map(readdirSync(out).map((file) => [file, new Uint8Array(readFileSync(join(out, file)))]));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

export function convertedTo(soffice: string, name: string, bytes: Uint8Array, extension: string): Uint8Array {
  const [first] = converted(soffice, name, bytes, extension).values();
  if (!first) throw new Error(`LibreOffice made no ${extension} of ${name}`);
  return first;
}

/** Every sheet as LibreOffice shows it, at full precision: rows of texts by the sheet's name. */
export function shownBy(soffice: string, bytes: Uint8Array): Map<string, string[][]> {
  const sheets = [...converted(soffice, "book.xlsx", bytes, EVERY_SHEET)];
  return new Map(sheets.map(([file, csv]) => [file.replace(/^book-(.*)\.csv$/, "$1"), records(new TextDecoder().decode(csv))]));
}

function records(csv: string): string[][] {
  const rows: string[][] = [];
  let row: string[] = [];
  for (const [, quoted, bare = "", end] of csv.matchAll(/(?:"((?:[^"]|"")*)"|([^",\n]*))(,|\n)/g)) {
    row.push(quoted?.replaceAll('""', '"') ?? bare);
    if (end === ",") continue;
    rows.push(row);
    row = [];
  }
  return rows;
}
