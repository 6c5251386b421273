import type { CellReading, CellWrite } from "../port";
import { areaOf, rowsOf } from "./shape";
import { READ, readings } from "./reading";
import { type Typed, typedContent } from "./typed";

interface Held {
  readonly before: CellReading;
  readonly format: string;
}

/** A cell that is to be written, and what it holds until then. */
export interface WrittenCell extends Held {
  readonly write: CellWrite;
  readonly typed: Typed;
}

export async function remember(context: Excel.RequestContext, writes: readonly CellWrite[]): Promise<readonly WrittenCell[]> {
  // A content that Excel cannot hold is refused before anything is asked of it.
  const typed = writes.map(typedContent);
  const held = await look(context, writes);
  return writes.map((write, i) => ({ write, typed: typed[i] as Typed, ...(held[i] as Held) }));
}

export function set(context: Excel.RequestContext, { write, typed, format }: WrittenCell): void {
  // In a cell that is formatted as text Excel keeps a formula, and a number too, as a text.
  const numberFormat = write.numberFormat ?? (format === "@" && typed.kind !== "text" ? "General" : null);
  give(rangeOf(context, write), typed, numberFormat);
}

/** Gives the cells that were changed what they held before. */
export async function putBack(context: Excel.RequestContext, cells: readonly WrittenCell[]): Promise<void> {
  try {
    const held = await look(context, cells.map(({ write }) => write));
    const changed = cells.filter((cell, i) => !isSame(cell, held[i] as Held));
    for (const { write, before, format } of changed) give(rangeOf(context, write), contentBefore(write, before), format);
    await context.sync();
  } catch {
    const places = cells.map(({ write }) => `${write.sheet}!${write.cell}`).join(", ");
    throw new Error(`Excel broke off a change and did not take it back: look at ${places}, and undo it in Excel`);
  }
}

/** A formula's value may have moved for reasons of its own. */
const isSame = (a: Held, b: Held): boolean =>
  a.format === b.format && a.before.formula === b.before.formula && (a.before.formula !== null || a.before.value === b.before.value);

async function look(context: Excel.RequestContext, writes: readonly CellWrite[]): Promise<readonly Held[]> {
  const ranges = writes.map((write) => rangeOf(context, write).load([...READ, "numberFormat"]));
  await context.sync();
  return ranges.map((range, i) => {
    const area = areaOf({ sheet: writes[i]?.sheet ?? "", range: writes[i]?.cell ?? "" });
    return { before: readings(range, area)[0]?.[0] as CellReading, format: String(rowsOf<unknown>(range.numberFormat, area)[0]?.[0]) };
  });
}

function contentBefore(write: CellWrite, { formula, value, error }: CellReading): Typed {
  // An error that was typed in is read back as one when it is given as it is.
  if (error && formula === null) return { kind: "plain", content: String(value) };
  return typedContent({ ...write, content: formula ?? value, asText: formula === null });
}

function give(range: Excel.Range, { kind, content }: Typed, numberFormat: string | null): void {
  // The format first: it decides how Excel reads the content.
  if (numberFormat !== null) range.numberFormat = [[numberFormat]];
  if (kind === "formula") range.formulas = [[content]];
  else range.values = [[content]];
}

const rangeOf = (context: Excel.RequestContext, { sheet, cell }: CellWrite): Excel.Range =>
  context.workbook.worksheets.getItem(sheet).getRange(cell);
