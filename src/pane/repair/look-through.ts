import { WORKINGS_TITLE } from "../../sharing/workings-sheet";
import type { BookPort, CellReading, SheetInfo } from "../../workbook/port";
import { SETTINGS_SHEET } from "../../workbook/settings";
import { areaText, readArea } from "../../workbook/xlsx/address";
import { type Finding, findingIn, mayBeOurs } from "./finding";

export interface LookedThrough {
  readonly findings: readonly Finding[];
  /** By sheet, how many cells hold a function of ours. */
  readonly sheets: readonly { readonly name: string; readonly cells: number; readonly isProtected: boolean }[];
  readonly isWhole: boolean;
}

/** Told after every piece of the work how far it has come; false stops. */
type Step = (done: number, of: number) => Promise<boolean>;

/** Cells that are read in one go. */
const AT_ONCE = 20_000;

/** Looks at every cell of a workbook. Nothing is written. */
export async function lookThrough(port: BookPort, decimal: "." | ",", step: Step): Promise<LookedThrough> {
  const findings: Finding[] = [];
  const sheets: { name: string; cells: number; isProtected: boolean }[] = [];
  const infos = (await port.sheets()).filter(({ name, used }) => used !== null && name !== SETTINGS_SHEET);
  const of = infos.reduce((sum, { used }) => sum + size(used), 0);
  let done = 0;
  for (const info of infos) {
    const looked = { name: info.name, cells: 0, isProtected: info.isProtected };
    sheets.push(looked);
    for await (const { top, left, rows } of blocks(port, info)) {
      if (isWorkings(rows, top)) {
        sheets.pop();
        break;
      }
      for (const [r, row] of rows.entries())
        for (const [c, reading] of row.entries()) {
          if (!mayBeOurs(reading) || isToldOf(reading, row)) continue;
          const found = await findingIn(info.name, { row: top + r, column: left + c }, reading, port, decimal);
          if (found === null) continue;
          looked.cells++;
          if (found !== "fine") findings.push(info.isProtected ? barred(found) : found);
          if (!(await step(done + r * row.length, of))) return { findings, sheets, isWhole: false };
        }
      done += rows.length * (rows[0]?.length ?? 0);
      if (!(await step(done, of))) return { findings, sheets, isWhole: false };
    }
  }
  return { findings, sheets, isWhole: true };
}

interface Block {
  readonly top: number;
  readonly left: number;
  readonly rows: readonly (readonly CellReading[])[];
}

async function* blocks(port: BookPort, { name, used }: SheetInfo): AsyncGenerator<Block> {
  const area = readArea(used ?? "");
  if (!area) return;
  const height = Math.max(1, Math.floor(AT_ONCE / (area.right - area.left + 1)));
  for (let top = area.top; top <= area.bottom; top += height) {
    const bottom = Math.min(area.bottom, top + height - 1);
    yield { top, left: area.left, rows: await port.read({ sheet: name, range: areaText({ ...area, top, bottom }) }) };
  }
}

const size = (used: string | null): number => {
  const area = readArea(used ?? "");
  return area ? (area.bottom - area.top + 1) * (area.right - area.left + 1) : 0;
};

/** The sheet that a shared copy brings tells formulas as texts, which are to stay so. */
const isWorkings = (rows: Block["rows"], top: number): boolean => top === 1 && rows[0]?.[0]?.value === WORKINGS_TITLE;

/** A text that repeats a formula of its own row tells how that number is computed, and is to be read. */
const isToldOf = ({ formula, value }: CellReading, row: readonly CellReading[]): boolean => formula === null && row.some((other) => other.formula !== null && other.formula === value);

const barred = (found: Finding): Finding =>
  found.write === null ? found : { ...found, write: null, sentence: `The sheet ${found.sheet} is protected: take the protection off, then look again` };
