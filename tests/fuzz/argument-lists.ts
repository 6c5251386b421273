import type { Entry } from "../../src/catalogue/entry";
import { inputs } from "../native/inputs";
import type { Writer } from "../native/written-forms";
import { type Random } from "../random";
import { cell, range } from "./cells";

/** Any arguments, or good ones of which at most one was spoiled, so that what comes after the reading is reached too. */
export const argumentList = (r: Random, entry: Entry): readonly unknown[] => (r.chance(0.5) ? anyArguments(r, entry) : nearlyValid(r, entry));

function anyArguments(r: Random, { arity, parameters }: Entry): unknown[] {
  const count = r.pick([arity, arity, arity, r.whole(0, arity), arity + r.whole(1, 3)]);
  return Array.from({ length: count }, (_, i) => (r.chance(parameters[i]?.shape === "range" ? 0.8 : 0.1) ? range(r) : cell(r)));
}

function nearlyValid(r: Random, entry: Entry): readonly unknown[] {
  const given = [...validArguments(r, entry)];
  if (given.length === 0 || r.chance(0.2)) return given;
  const at = r.whole(0, given.length - 1);
  const was = given[at];
  given[at] = Array.isArray(was) && r.chance(0.8) ? spoiledRange(r, was as unknown[][]) : r.chance(0.1) ? range(r) : cell(r);
  return given;
}

function spoiledRange(r: Random, rows: readonly (readonly unknown[])[]): unknown {
  const at = r.whole(0, rows.length - 1);
  const spoiled = rows.map((row, i) => (i === at ? row.map((one, c) => (c === 0 ? cell(r) : one)) : [...row]));
  return r.pick<() => unknown>([
    () => spoiled,
    () => spoiled,
    () => spoiled,
    () => [...rows, ...rows],
    () => rows.slice(1),
    () => rows.map((row) => [...row, cell(r)]),
    () => rows.flat()[0],
  ])();
}

/** The function of one row that each function of columns runs along them. */
const SINGLES: Readonly<Record<string, string>> = { FINEWEIGHTS: "FINEWEIGHT", COPPERS: "COPPER", RECOVERIES: "RECOVERY", PAYOUTS: "PAYOUT" };

export function validArguments(r: Random, { id }: Entry): readonly unknown[] {
  const w: Writer = { r, plain: r.chance(0.3) };
  const single = SINGLES[id];
  if (single !== undefined) return columns(w, single);
  if (id === "MONTHS") return lots(r);
  if (id === "VERSION") return [];
  const found = inputs[id];
  if (!found) throw new Error(`${id} has no valid arguments: add them in tests/native/inputs.ts`);
  return found.make(w);
}

/** Each argument as a column, or one value for all rows. */
function columns(w: Writer, single: string): readonly unknown[] {
  const rows = Array.from({ length: w.r.whole(1, 8) }, () => inputs[single]?.make(w) ?? []);
  return (rows[0] ?? []).map((one, i) => (w.r.chance(0.4) ? one : rows.map((row) => [row[i]])));
}

function lots(r: Random): readonly unknown[] {
  const count = r.whole(1, 12);
  const column = (make: () => unknown): unknown[][] => Array.from({ length: count }, () => [make()]);
  const grouped = column(() => r.pick(["A", "B", 17, "", "__proto__", "constructor"]));
  return [column(() => r.decimal(45_000, 45_800, 2)), column(() => r.decimal(0, 400, 3)), column(() => r.decimal(0, 400, 3)), r.chance(0.5) ? grouped : null];
}
