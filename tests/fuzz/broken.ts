import { blamed } from "../../src/catalogue/blamed";
import type { Entry } from "../../src/catalogue/entry";
import { type Fault, FaultError, sentence } from "../../src/core/fault";
import type { Answer } from "../../src/functions/answer";
import { cellFunction } from "../../src/excel/associate";
import { CellError } from "./cell-error";

/** How a call ended, or what is wrong with how it ended. */
export type Ending = "value" | "spill" | Fault["kind"];
export interface Broken {
  readonly broken: string;
}
export type Judged = Ending | Broken;

export const isBroken = (judged: Judged): judged is Broken => typeof judged === "object";

/** These say why there is no number; no one argument is to blame. */
const BLAMELESS: readonly Fault["kind"][] = ["zero-divisor", "not-finite"];
const LONGEST_SENTENCE = 500;

/** What a function gives for these cells: a value, a well-formed spill, or a fault that says which argument is to blame. */
export function judgedCall(entry: Entry, cells: readonly unknown[]): Judged {
  try {
    const value = entry.call(...cells).value();
    return Array.isArray(value) ? judgedRows(entry, value) : judgedCell(entry, value) ?? (entry.spills ? { broken: "one value where it spills" } : "value");
  } catch (thrown) {
    return thrown instanceof FaultError ? judgedFault(entry, thrown.fault) : uncaught(thrown);
  }
}

function judgedRows(entry: Entry, rows: readonly (readonly unknown[])[]): Judged {
  if (!entry.spills) return { broken: "a spill where it gives one value" };
  const width = rows[0]?.length ?? 0;
  if (width === 0 || rows.some((row) => row.length !== width)) return { broken: `a spill of ${rows.length} rows that is not rectangular` };
  for (const row of rows) for (const one of row) {
    const broken = judgedCell(entry, one);
    if (broken) return broken;
  }
  return "spill";
}

/** Nothing where the cell is well-formed. */
function judgedCell(entry: Entry, value: unknown): Broken | null {
  if (typeof value === "string") return null;
  if (typeof value === "number") return Number.isFinite(value) && !Object.is(value, -0) ? null : { broken: `the number ${Object.is(value, -0) ? "-0" : value}` };
  if (typeof value !== "object" || value === null || !("fault" in value)) return { broken: `a cell that holds ${String(value)}` };
  const judged = judgedFault(entry, value.fault as Fault);
  return isBroken(judged) ? judged : null;
}

function judgedFault(entry: Entry, fault: Fault): Judged {
  const text = sentence(fault);
  if (!text.startsWith("Cannot ") || text.length > LONGEST_SENTENCE) return { broken: `the sentence "${text.slice(0, 200)}"` };
  if (/\bundefined\b|\[object |: NaN|= NaN/.test(text)) return { broken: `the sentence "${text}"` };
  if (!BLAMELESS.includes(fault.kind) && fault.kind !== "half-filled" && blamed(fault, entry.parameters).length === 0) return { broken: `a fault that names no argument: "${text}"` };
  return fault.kind;
}

const uncaught = (thrown: unknown): Broken => ({ broken: `threw ${thrown instanceof Error ? `${thrown.name}: ${thrown.message}\n${thrown.stack?.split("\n").slice(1, 4).join("\n") ?? ""}` : String(thrown)}` });

/** The same call as Excel makes it, with what it adds about the call. */
export function judgedExcelCall(entry: Entry, cells: readonly unknown[]): Judged {
  const full = Array.from({ length: entry.arity }, (_, i) => cells[i] ?? null);
  try {
    const value = cellFunction(entry)(...full, { functionName: entry.id, address: "Lots!B4" });
    const wrong = [value].flat(2).find((one) => !(typeof one === "string" || (typeof one === "number" && Number.isFinite(one)) || isSaid(one)));
    return wrong === undefined ? (Array.isArray(value) ? "spill" : "value") : { broken: `Excel gets ${JSON.stringify(wrong)}` };
  } catch (thrown) {
    return isSaid(thrown) ? "unfit" : { broken: `Excel gets ${thrown instanceof CellError ? thrown.message : String(thrown)}` };
  }
}

const isSaid = (one: unknown): boolean => one instanceof CellError && /^Cannot /.test(one.message);

/** The other readings of an answer: nothing but a fault may come out of them. */
export function judgedReadings(entry: Entry, cells: readonly unknown[]): Judged {
  try {
    const answer = entry.call(...cells);
    const outline = answer.outline();
    if (outline.title === "") return { broken: "an outline without a title" };
    return judgedReading(() => void answer.working()) ?? judgedReading(() => checkNative(answer)) ?? "value";
  } catch (thrown) {
    return thrown instanceof FaultError ? { broken: `an outline that threw ${thrown.message}` } : uncaught(thrown);
  }
}

function judgedReading(run: () => void): Broken | null {
  try {
    run();
    return null;
  } catch (thrown) {
    return thrown instanceof FaultError ? null : uncaught(thrown);
  }
}

function checkNative(answer: Answer): void {
  const twin = answer.native();
  const odd = twin === null ? undefined : [twin].flat(2).find((one) => !one.startsWith("=") || one.length > 8192 || /undefined|NaN|Infinity|\[object/.test(one.replace(/"(?:[^"]|"")*"/g, "")));
  if (odd !== undefined) throw new Error(`the twin ${odd.slice(0, 200)}`);
}
