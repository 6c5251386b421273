import type { CellReading, CellWrite } from "../port";
import { areaOf, rowsOf } from "./shape";
import { READ, readings } from "./reading";
import { type Typed, typedContent } from "./typed";

/** A cell that is to be written, and what it holds until then. */
export interface WrittenCell {
  readonly write: CellWrite;
  readonly typed: Typed;
  readonly before: CellReading;
  readonly format: string;
}

export async function remember(context: Excel.RequestContext, writes: readonly CellWrite[]): Promise<readonly WrittenCell[]> {
  // A content that Excel cannot hold is refused before anything is asked of it.
  const asked = writes.map((write) => ({ write, typed: typedContent(write), range: rangeOf(context, write) }));
  for (const { range } of asked) range.load([...READ, "numberFormat"]);
  await context.sync();
  return asked.map(({ write, typed, range }) => {
    const area = areaOf({ sheet: write.sheet, range: write.cell });
    return { write, typed, before: readings(range, area)[0]?.[0] as CellReading, format: String(rowsOf<unknown>(range.numberFormat, area)[0]?.[0]) };
  });
}

export function set(context: Excel.RequestContext, { write, typed, format }: WrittenCell): void {
  // In a cell that is formatted as text Excel keeps a formula, and a number too, as a text.
  const numberFormat = write.numberFormat ?? (format === "@" && typed.kind !== "text" ? "General" : null);
  give(rangeOf(context, write), typed, numberFormat);
}

export async function putBack(context: Excel.RequestContext, cells: readonly WrittenCell[]): Promise<void> {
  try {
    for (const { write, before, format } of cells) give(rangeOf(context, write), contentBefore(write, before), format);
    await context.sync();
  } catch {
    const places = cells.map(({ write }) => `${write.sheet}!${write.cell}`).join(", ");
    throw new Error(`Excel broke off a change and did not take it back: look at ${places}, and undo it in Excel`);
  }
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
