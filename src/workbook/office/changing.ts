import { sheetKey, type SortedChanges } from "../changes";
import type { GrownTable } from "../table-growth";
import { addSheet, deleteSheets } from "./new-sheets";
import { putNotesBack, rememberNotes, setNote, type WrittenNote } from "./notes";
import { addPictures, deletePictures, type WrittenPicture } from "./pictures";
import { grow, putTablesBack, rememberTables, type WrittenTable } from "./tables";
import { typedContent } from "./typed";
import { putCellsBack, remember, set, type WrittenCell } from "./writing";

/** All that is to change, and what there is until then. */
export interface Changing {
  readonly changes: SortedChanges;
  /** Those on sheets that are there; what is on a new sheet goes with it. */
  readonly cells: readonly WrittenCell[];
  readonly notes: readonly WrittenNote[];
  readonly pictures: readonly WrittenPicture[];
  readonly tables: readonly WrittenTable[];
  isMade(sheet: string): boolean;
}

export async function beforeChanging(context: Excel.RequestContext, changes: SortedChanges, grown: readonly GrownTable[]): Promise<Changing> {
  const made = new Set(changes.sheets.map(({ newSheet }) => sheetKey(newSheet)));
  const isMade = (sheet: string): boolean => made.has(sheetKey(sheet));
  const cells = await remember(context, changes.cells.filter(({ sheet }) => !isMade(sheet)));
  const notes = await rememberNotes(context, changes.notes, isMade);
  const tables = await rememberTables(context, grown);
  return { changes, cells, notes, pictures: changes.pictures.map((picture) => ({ picture, shape: null })), tables, isMade };
}

export async function change(context: Excel.RequestContext, { changes, cells, notes, pictures, tables, isMade }: Changing): Promise<void> {
  changes.sheets.forEach((sheet) => addSheet(context, sheet));
  tables.forEach((table) => grow(context, table));
  cells.forEach((cell) => set(context, cell));
  for (const write of changes.cells) if (isMade(write.sheet)) set(context, { write, typed: typedContent(write), look: null, format: "General", before: { value: null, formula: null, error: false } });
  notes.forEach((note) => setNote(context, note));
  await addPictures(context, pictures);
  await context.sync();
}

/**
 * Takes away what was added and gives back what was there; gives the names of sheets that it looked for in vain. Excel
 * may fail at this too: it is tried a second time then, from what there is by now.
 */
export async function changeBack(context: Excel.RequestContext, changing: Changing): Promise<readonly string[]> {
  let missing: readonly string[] | null = null;
  const putBack = async (): Promise<readonly string[]> => {
    const { changes, cells, notes, pictures, tables, isMade } = changing;
    await putTablesBack(context, tables);
    await putCellsBack(context, cells);
    await putNotesBack(context, notes.filter(({ note }) => !isMade(note.sheet)));
    await deletePictures(context, pictures.filter(({ picture }) => !isMade(picture.sheet)));
    const gone = await deleteSheets(context, changes.sheets.map(({ newSheet }) => newSheet));
    missing ??= gone;
    await context.sync();
    return missing;
  };
  try {
    return await putBack().catch(putBack);
  } catch {
    throw new Error(`Excel broke off a change and did not take it back: look at ${placesOf(changing.changes).join(", ")}, and undo it in Excel`);
  }
}

export const placesOf = ({ cells, sheets, notes, pictures, tables }: SortedChanges): string[] => [
  ...cells.map(({ sheet, cell }) => `${sheet}!${cell}`),
  ...sheets.map(({ newSheet }) => `the sheet ${newSheet}`),
  ...notes.map(({ sheet, cell }) => `the note beside ${sheet}!${cell}`),
  ...pictures.map(({ sheet, at }) => `the picture at ${sheet}!${at}`),
  ...tables.map(({ table }) => `the table ${table}`),
];
