import { execFileSync } from "node:child_process";
import { existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { modelOf } from "../../src/engine/model";
import { address } from "../native/workbook";
import { barePayouts } from "./bare";
import { lots } from "./lots";
import { median } from "./measure";
import { LOTS, cells, payoutFormula } from "./native-books";
import { type Row, atLeast } from "./row";

/** Pinned here and not in package.json: they are measured beside, and nothing of ours is made of them. */
const INSTALLED = { hyperformula: "3.5.0", "@ironcalc/wasm": "0.8.4" } as const;
const RUNS = 3;

/** What recalculates a sheet of a hundred thousand lots, and tells a cell of it. */
interface Engine {
  readonly name: string;
  readonly recalculate: () => void;
  readonly payout: (row: number) => unknown;
}

/** The JavaScript spreadsheet engines of the npm registry, recalculating the same lots as ordinary formulas. */
export async function engines(payoutsMs: number, folder: string): Promise<Row[]> {
  const rows = cells().map((row, r) => [...row, `=${payoutFormula(r + 1)}`]);
  const bare = barePayouts(lots(LOTS));
  const measured: Row[] = [];
  for (const make of [grid, ...(installed(folder) ? [hyperFormula(folder), ironCalc(folder)] : [])]) {
    const { name, recalculate, payout } = await make(rows);
    const took = Array.from({ length: RUNS }, () => {
      const start = performance.now();
      recalculate();
      return performance.now() - start;
    });
    for (const row of [0, LOTS - 1])
      if (Math.abs(Number(payout(row)) - (bare[row]?.[0] as number)) > 0.011) throw new Error(`${name} finds ${String(payout(row))} for payout ${row}, the bare loop ${bare[row]?.[0]}`);
    measured.push(atLeast(`PAYOUTS beside ${name} recalculating the same 100,000 lots`, payoutsMs, median(took), 100));
  }
  return measured;
}

type Rows = readonly (readonly (number | string | { readonly formula: string })[])[];

const COLUMN = 8;

const grid = (rows: Rows): Engine => {
  const at = Object.fromEntries(rows.flatMap((row, r) => row.map((cell, c) => [address(r, c), String(cell)])));
  const model = modelOf({ sheets: [{ id: "lots", name: "Lots", rowNumber: rows.length, colNumber: COLUMN + 1, cells: at }] as never });
  return {
    name: "o-spreadsheet",
    recalculate() {
      model.dispatch("EVALUATE_CELLS");
      model.getters.getEvaluatedCell({ sheetId: "lots", col: COLUMN, row: rows.length - 1 });
    },
    payout: (row) => model.getters.getEvaluatedCell({ sheetId: "lots", col: COLUMN, row }).value,
  };
};

interface HyperFormulaModule {
  HyperFormula: { buildFromArray(rows: Rows, options: object): { rebuildAndRecalculate(): void; getCellValue(at: { sheet: number; col: number; row: number }): unknown } };
}

const hyperFormula = (folder: string) => async (rows: Rows): Promise<Engine> => {
  const { HyperFormula } = createRequire(join(folder, "index.js"))("hyperformula") as HyperFormulaModule;
  const book = HyperFormula.buildFromArray(rows, { licenseKey: "gpl-v3", maxRows: rows.length });
  return {
    name: `HyperFormula ${INSTALLED.hyperformula}`,
    recalculate: () => book.rebuildAndRecalculate(),
    payout: (row) => book.getCellValue({ sheet: 0, col: COLUMN, row }),
  };
};

interface IronCalcModule {
  default(bytes: { module_or_path: Uint8Array }): Promise<unknown>;
  Model: new (name: string, locale: string, timezone: string, language: string) => {
    pauseEvaluation(): void;
    setUserInput(sheet: number, row: number, column: number, input: string): void;
    evaluate(): void;
    getFormattedCellValue(sheet: number, row: number, column: number): string;
  };
}

const ironCalc = (folder: string) => async (rows: Rows): Promise<Engine> => {
  const home = join(folder, "node_modules", "@ironcalc", "wasm");
  const { default: load, Model } = (await import(String(pathToFileURL(join(home, "wasm.js"))))) as IronCalcModule;
  await load({ module_or_path: readFileSync(join(home, "wasm_bg.wasm")) });
  const model = new Model("lots", "en", "UTC", "en");
  model.pauseEvaluation();
  rows.forEach((row, r) => row.forEach((cell, c) => model.setUserInput(0, r + 1, c + 1, String(cell))));
  return {
    name: `IronCalc ${INSTALLED["@ironcalc/wasm"]} (compiled to WebAssembly)`,
    recalculate: () => model.evaluate(),
    payout: (row) => model.getFormattedCellValue(0, row + 1, COLUMN + 1).replaceAll(",", ""),
  };
};

function installed(folder: string): boolean {
  mkdirSync(folder, { recursive: true });
  if (Object.keys(INSTALLED).every((name) => existsSync(join(folder, "node_modules", name)))) return true;
  writeFileSync(join(folder, "package.json"), JSON.stringify({ private: true, dependencies: INSTALLED }));
  try {
    execFileSync("npm", ["install", "--no-audit", "--no-fund"], { cwd: folder, stdio: "ignore", shell: process.platform === "win32" });
    return true;
  } catch {
    console.log(`Not measured: ${Object.keys(INSTALLED).join(" and ")}, since npm could not install them into ${folder}.`);
    return false;
  }
}
