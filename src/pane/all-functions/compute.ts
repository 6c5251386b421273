import type { Entry, Parameter } from "../../catalogue/entry";
import type { Working } from "../../core/expression/working";
import { FaultError, errorCode, sentence } from "../../core/fault";
import type { Answer, CellValue } from "../../functions/answer";
import { Reference } from "../../functions/reference";
import type { BookPort, CellReading } from "../../workbook/port";
import { areaText } from "../../workbook/xlsx/address";
import { blamed } from "../../catalogue/blamed";
import { type CellRange, isOneCell, writtenRange } from "../../workbook/cell-range";
import type { Argument } from "../argument";

/** A sentence about one field of the form. */
export interface FieldNote {
  readonly parameter: string;
  readonly sentence: string;
  readonly isFault: boolean;
}

/** What a form comes to. */
export interface Computed {
  readonly notes: readonly FieldNote[];
  readonly outcome: Outcome;
}

export type Outcome =
  /** Required arguments that nobody has given yet. */
  | { readonly kind: "waiting"; readonly needs: readonly string[] }
  | {
      readonly kind: "fault";
      readonly sentence: string;
      readonly code: string;
      /** The arguments at fault, if it is any. */
      readonly parameters: readonly string[];
      /** True where other values in the cells that it reads would do: such a formula can wait for them. */
      readonly canWait: boolean;
    }
  | { readonly kind: "result"; readonly rows: readonly (readonly CellValue[])[]; readonly of: string; readonly unit: string; readonly working: Working | null };

/** Reads the cells that the arguments name, seen from a sheet, and calls the function. */
export async function compute(entry: Entry, given: readonly Argument[], sheet: string, port: BookPort): Promise<Computed> {
  const fields = await Promise.all(entry.parameters.map((parameter, i) => readField(parameter, given[i] ?? NOTHING, sheet, port)));
  const notes = fields.flatMap(({ note }) => note ?? []);
  const faults = notes.filter(({ isFault }) => isFault);
  const [first] = faults;
  if (first) {
    const canWait = fields.every(({ note, code }) => !note?.isFault || code !== undefined);
    const code = fields.find((field) => field.code)?.code ?? "#VALUE!";
    return { notes, outcome: { kind: "fault", sentence: first.sentence, code, parameters: faults.map(({ parameter }) => parameter), canWait } };
  }
  const needs = entry.parameters.filter(({ optional }, i) => !optional && (given[i] ?? NOTHING).kind === "nothing").map(({ name }) => name);
  const computed = called(entry, fields.map(({ cell }) => cell), notes);
  if (needs.length === 0) return computed;
  // What is given already may be wrong; what is missing needs no fault yet.
  return { notes: computed.notes.filter(({ parameter }) => !needs.includes(parameter)), outcome: { kind: "waiting", needs } };
}

const NOTHING: Argument = { kind: "nothing" };

function called(entry: Entry, cells: readonly unknown[], notes: readonly FieldNote[]): Computed {
  try {
    const answer = entry.call(...cells);
    const value = answer.value();
    const rows = Array.isArray(value) ? value : [[value]];
    return { notes, outcome: { kind: "result", rows, ...named(answer) } };
  } catch (thrown) {
    if (!(thrown instanceof FaultError)) return { notes, outcome: { kind: "fault", sentence: ours(entry.name, thrown), code: "#VALUE!", parameters: [], canWait: false } };
    const parameters = blamed(thrown.fault, entry.parameters);
    const told = parameters.map((parameter) => ({ parameter, sentence: thrown.message, isFault: true }));
    const isCell = (name: string): boolean => cells[entry.parameters.findIndex((parameter) => parameter.name === name)] instanceof Reference;
    const canWait = parameters.length > 0 ? parameters.every(isCell) : cells.some((cell) => cell instanceof Reference);
    return { notes: [...notes, ...told], outcome: { kind: "fault", sentence: thrown.message, code: errorCode(thrown.fault), parameters, canWait } };
  }
}

const ours = (name: string, thrown: unknown): string => `Cannot compute ${name}: the fault is in Lotwright, please report it (${String(thrown)})`;

const RESULT = /^(.*) = \S+(?: (.+))?$/;

/** What the result is called and the unit that it is in stand in its working. */
function named(answer: Answer): { of: string; unit: string; working: Working | null } {
  try {
    const working = answer.working();
    const results = working.lines.filter(({ part }) => part === "result");
    const [, of = "", unit = ""] = (results.length === 1 ? RESULT.exec(results[0]?.text ?? "") : null) ?? [];
    return { of, unit, working };
  } catch (thrown) {
    // A column whose first row has a fault shows the other rows all the same.
    if (thrown instanceof FaultError) return { of: "", unit: "", working: null };
    throw thrown;
  }
}

interface Field {
  /** As the function takes it. */
  readonly cell: unknown;
  readonly note?: FieldNote;
  /** The error that a cell shows which it names. */
  readonly code?: string;
}

async function readField(parameter: Parameter, argument: Argument, sheet: string, port: BookPort): Promise<Field> {
  const fault = (text: string): Field => ({ cell: null, note: { parameter: parameter.name, sentence: text, isFault: true } });
  switch (argument.kind) {
    case "nothing":
      return { cell: null };
    case "value":
    case "date":
      return { cell: argument.value };
    case "unreadable":
      return fault(argument.sentence);
    case "list":
      return parameter.shape === "range" ? { cell: argument.rows } : fault(oneValue(parameter.name, "a list", "one value"));
    case "cells": {
      const written = writtenRange(argument.range, sheet);
      if (parameter.shape === "value" && !isOneCell(argument.range)) return fault(oneValue(parameter.name, written, "one cell, as in B4"));
      try {
        return readCells(parameter, argument.range, written, await port.read({ sheet: argument.range.sheet ?? sheet, range: areaText(argument.range.area) }));
      } catch (thrown) {
        return fault(`Cannot read ${written}: ${thrown instanceof Error ? thrown.message : String(thrown)}`);
      }
    }
  }
}

const oneValue = (name: string, got: string, wants: string): string => sentence({ kind: "unfit", name, got, wants });

function readCells({ name, shape }: Parameter, range: CellRange, written: string, rows: readonly (readonly CellReading[])[]): Field {
  const wrong = rows.flat().find(({ error }) => error);
  const note = (text: string, isFault: boolean): FieldNote => ({ parameter: name, sentence: text, isFault });
  if (wrong) {
    const where = isOneCell(range) ? written : `A cell of ${written}`;
    return { cell: null, code: String(wrong.value), note: note(`${where} shows ${String(wrong.value)}${wrong.message ? `: ${wrong.message}` : ": mend that cell first"}`, true) };
  }
  const values = rows.map((row) => row.map(({ value }) => value));
  const holds = shape === "range" ? values : values[0]?.[0];
  return { cell: new Reference(written, holds), note: note(held(written, values), false) };
}

function held(written: string, values: readonly (readonly unknown[])[]): string {
  const [only] = values.flat();
  const count = values.reduce((sum, row) => sum + row.length, 0);
  if (count > 1) return `${written} has ${values.flat().filter((value) => value !== null && value !== "").length} filled of ${count} cells`;
  return only === null || only === undefined || only === "" ? `${written} is empty` : `${written} holds ${typeof only === "string" ? `“${only}”` : String(only)}`;
}
