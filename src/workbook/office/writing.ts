import type { CellReading, CellWrite } from "../port";
import { askLook, type CellLook, giveLook } from "./cell-look";
import { READ, readings } from "./reading";
import { areaOf, rowsOf } from "./shape";
import { type Typed, typedContent } from "./typed";

interface Held {
  readonly before: CellReading;
  readonly format: string;
}

/** A cell that is to be written, and what it holds until then. */
export interface WrittenCell extends Held {
  readonly write: CellWrite;
  readonly typed: Typed;
  /** What a copied look would change; null where none is copied. */
  readonly look: CellLook | null;
}

export async function remember(context: Excel.RequestContext, writes: readonly CellWrite[]): Promise<readonly WrittenCell[]> {
  const looks = writes.map((write) => (write.like === undefined ? null : askLook(rangeOf(context, write))));
  const held = await look(context, writes);
  return writes.map((write, i) => ({ write, typed: typedContent(write), look: looks[i] ?? null, ...(held[i] as Held) }));
}

export function set(context: Excel.RequestContext, { write, typed, format }: WrittenCell): void {
  const range = rangeOf(context, write);
  if (write.like !== undefined) range.copyFrom(rangeOf(context, { sheet: write.sheet, cell: write.like }), "Formats");
  // In a cell that is formatted as text Excel keeps a formula, and a number too, as a text.
  const numberFormat = write.numberFormat ?? (write.like === undefined && format === "@" && typed.kind !== "text" ? "General" : null);
  give(range, typed, numberFormat);
}

/** Gives the cells that were changed what they held before. */
export async function putCellsBack(context: Excel.RequestContext, cells: readonly WrittenCell[]): Promise<void> {
  const held = await look(context, cells.map(({ write }) => write));
  cells.forEach((cell, i) => {
    const { write, before, format, look: old } = cell;
    const range = rangeOf(context, write);
    if (old) giveLook(range, old);
    if (old || !isSame(cell, held[i] as Held)) give(range, contentBefore(before), format);
  });
}

/** A formula's value may have moved for reasons of its own. */
export const isSame = (a: Held, b: Held): boolean =>
  a.format === b.format && a.before.formula === b.before.formula && (a.before.formula !== null || a.before.value === b.before.value);

async function look(context: Excel.RequestContext, writes: readonly CellWrite[]): Promise<readonly Held[]> {
  const ranges = writes.map((write) => rangeOf(context, write).load(READ));
  await context.sync();
  return ranges.map((range, i) => {
    const area = areaOf({ sheet: writes[i]?.sheet ?? "", range: writes[i]?.cell ?? "" });
    return { before: readings(range, area)[0]?.[0] as CellReading, format: String(rowsOf<unknown>(range.numberFormat, area)[0]?.[0]) };
  });
}

export function contentBefore({ formula, value, error }: CellReading): Typed {
  // An error that was typed in is read back as one when it is given as it is.
  if (error && formula === null) return { kind: "plain", content: String(value) };
  return typedContent({ content: formula ?? value, asText: formula === null });
}

export function give(range: Excel.Range, { kind, content }: Typed, numberFormat: string | null): void {
  // The format first: it decides how Excel reads the content.
  if (numberFormat !== null) range.numberFormat = [[numberFormat]];
  if (kind === "formula") range.formulas = [[content]];
  else range.values = [[content]];
}

const rangeOf = (context: Excel.RequestContext, { sheet, cell }: Pick<CellWrite, "sheet" | "cell">): Excel.Range =>
  context.workbook.worksheets.getItem(sheet).getRange(cell);
