import { sheetKey } from "../changes";
import type { Note } from "../port";
import { areaText } from "../xlsx/address";
import { areaIn } from "./sheets";
import { knows } from "./versions";

/** What is common to the notes of a sheet and to the comments that stand in for them. */
interface Remark {
  readonly content: string;
  getLocation(): Excel.Range;
  delete(): void;
}
interface Remarks {
  load(names: string): { readonly items: readonly Remark[] };
  add(cell: Excel.Range, content: string): unknown;
}

/** Notes where this Excel lets an add-in have them, else comments, else nothing. */
function remarksOf(context: Excel.RequestContext, sheet: string): Remarks | null {
  const worksheet = context.workbook.worksheets.getItem(sheet);
  if (knows("1.18")) return worksheet.notes;
  return knows("1.10") ? worksheet.comments : null;
}

async function found(context: Excel.RequestContext, sheet: string): Promise<ReadonlyMap<string, Remark>> {
  const remarks = remarksOf(context, sheet)?.load("items/content");
  if (!remarks) return new Map();
  await context.sync();
  const places = remarks.items.map((remark) => remark.getLocation().load(["rowIndex", "columnIndex", "rowCount", "columnCount"]));
  await context.sync();
  return new Map(remarks.items.map((remark, i) => [areaText(areaIn(places[i] as Excel.Range)), remark]));
}

export const readNote = async (context: Excel.RequestContext, sheet: string, cell: string): Promise<string | null> =>
  (await found(context, sheet)).get(plain(cell))?.content ?? null;

/** A note that is to be written, and what is there until then. */
export interface WrittenNote {
  readonly note: Note;
  readonly before: string | null;
  readonly remark: Remark | null;
}

export async function rememberNotes(context: Excel.RequestContext, notes: readonly Note[], isMade: (sheet: string) => boolean): Promise<readonly WrittenNote[]> {
  const known = new Map<string, ReadonlyMap<string, Remark>>();
  for (const { sheet, cell } of notes) {
    if (!knows("1.10")) throw new Error(`Cannot write a note beside ${sheet}!${cell}: this Excel does not let an add-in do so: write it by hand, or update Excel`);
    const key = sheetKey(sheet);
    if (!known.has(key)) known.set(key, isMade(sheet) ? new Map() : await found(context, sheet));
  }
  return notes.map((note) => {
    const remark = known.get(sheetKey(note.sheet))?.get(plain(note.cell)) ?? null;
    return { note, remark, before: remark?.content ?? null };
  });
}

export const setNote = (context: Excel.RequestContext, { note, remark }: WrittenNote): void => give(context, note, remark, note.note);

export async function putNotesBack(context: Excel.RequestContext, notes: readonly WrittenNote[]): Promise<void> {
  const now = await rememberNotes(context, notes.map(({ note }) => note), () => false);
  notes.forEach(({ note, before }, i) => give(context, note, now[i]?.remark ?? null, before));
}

function give(context: Excel.RequestContext, { sheet, cell }: Note, remark: Remark | null, wanted: string | null): void {
  if ((remark?.content ?? null) === wanted) return;
  remark?.delete();
  if (wanted !== null) remarksOf(context, sheet)?.add(context.workbook.worksheets.getItem(sheet).getRange(plain(cell)), wanted);
}

const plain = (cell: string): string => cell.replaceAll("$", "").toUpperCase();
