import { spawn, spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { Sheet, workbook } from "../native/workbook";
import { tools } from "../outside-tools";
import { bareMonths, barePayouts } from "./bare";
import { lots } from "./lots";
import { median } from "./measure";
import { CLIENTS, LOTS, cells, payoutFormula, sumFormula } from "./native-books";
import { type Row, atLeast } from "./row";

const RECALCULATE = fileURLToPath(new URL("recalculate.py", import.meta.url));
const RUNS = 5;

/** LibreOffice recalculating the same lots with ordinary formulas; nothing where it or Python's bridge to it is not there. */
export function libreOffice({ payoutsMs, monthsMs }: { payoutsMs: number; monthsMs: number }): Row[] {
  const soffice = tools.soffice.find();
  const python = ["python3", "/usr/bin/python3"].find((one) => spawnSync(one, ["-c", "import uno"]).status === 0);
  if (!soffice || !python) {
    console.log(`Not measured: LibreOffice. It needs ${tools.soffice.get}, and Python's bridge to it (Debian: apt-get install python3-uno).`);
    return [];
  }
  const all = lots(LOTS);
  const payouts = recalculation(soffice, python, payoutsBook(), RUNS, "I1");
  same("the first payout", payouts.value, barePayouts(all)[0]?.[0]);
  const months = recalculation(soffice, python, monthsBook(), 3, "J1");
  same("the first client's first month", months.value, bareMonths(all).find(([month, client]) => month === 2025 * 12 && client === CLIENTS[0])?.[2]);
  return [
    atLeast("PAYOUTS beside LibreOffice recalculating the same 100,000 lots as ordinary formulas", payoutsMs, payouts.ms, 15),
    atLeast("MONTHS beside LibreOffice's SUMIFS, 12 months × 50 clients, fine in and fine out", monthsMs, months.ms, 500),
  ];
}

/** What is timed must be the same work. */
function same(what: string, theirs: number, bare: unknown): void {
  if (Math.abs(theirs - Number(bare)) > 1e-9 * Math.abs(theirs)) throw new Error(`LibreOffice finds ${theirs} for ${what}, the bare loop ${String(bare)}`);
}

function payoutsBook(): Uint8Array {
  const sheet = new Sheet("Lots");
  cells().forEach((row, r) => {
    row.forEach((cell, c) => sheet.set(r, c, cell));
    sheet.set(r, row.length, { formula: payoutFormula(r + 1) });
  });
  return workbook([sheet]);
}

function monthsBook(): Uint8Array {
  const sheet = new Sheet("Lots");
  cells().forEach((row, r) => row.forEach((cell, c) => sheet.set(r, c, cell)));
  for (let month = 0; month < 12; month++)
    CLIENTS.forEach((client, c) => {
      const row = month * CLIENTS.length + c;
      sheet.set(row, 9, { formula: sumFormula("C", client, month) });
      sheet.set(row, 10, { formula: sumFormula("D", client, month) });
    });
  return workbook([sheet]);
}

function recalculation(soffice: string, python: string, bytes: Uint8Array, runs: number, cell: string): { ms: number; value: number } {
  const folder = mkdtempSync(join(tmpdir(), "lotwright-bench-"));
  const file = join(folder, "lots.xlsx");
  const pipe = `lotwright-${process.pid}-${Date.now()}`;
  const office = spawn(soffice, ["--headless", "--norestore", `-env:UserInstallation=file://${folder}/profile`, `--accept=pipe,name=${pipe};urp`], { stdio: "ignore" });
  try {
    writeFileSync(file, bytes);
    const { stdout, stderr, status } = spawnSync(python, [RECALCULATE, pipe, String(pathToFileURL(file)), String(runs), cell], { encoding: "utf8", timeout: 900_000 });
    if (status !== 0) throw new Error(`LibreOffice did not recalculate: ${stderr}`);
    const { took, value } = JSON.parse(stdout) as { took: number[]; value: number };
    return { ms: median(took), value };
  } finally {
    office.kill();
    rmSync(folder, { recursive: true, force: true });
  }
}
