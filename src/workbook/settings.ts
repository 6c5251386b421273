import { sheetKey } from "./changes";
import type { CellContent, Change, BookPort } from "./port";
import { readArea } from "./xlsx/address";

/** What the add-in keeps in the workbook itself, so that it travels with the file: on a hidden sheet, one text beside each key. */
export const SETTINGS_SHEET = "Lotwright";

const OWN = "Kept by Lotwright";
const FIRST_ROW = `${OWN} for this workbook: your shop, your columns. You may delete this sheet; Lotwright then asks again.`;
/** Under the 32,767 characters that a cell holds. */
const LONGEST_PIECE = 30_000;

export interface Settings {
  readonly values: ReadonlyMap<string, unknown>;
  /** Keys whose text can no longer be read: someone changed it by hand. */
  readonly unreadable: readonly string[];
}

interface Kept {
  readonly exists: boolean;
  /** Key and text of each row under the first. */
  readonly rows: readonly (readonly [CellContent, CellContent])[];
}

export async function readSettings(port: BookPort): Promise<Settings> {
  const texts = textsOf(await kept(port));
  const values = new Map<string, unknown>();
  const unreadable: string[] = [];
  for (const [key, text] of texts)
    try {
      values.set(key, JSON.parse(text));
    } catch {
      unreadable.push(key);
    }
  return { values, unreadable };
}

/** What to write so that the workbook keeps these; undefined takes a key away. Nothing where all of it is kept already. */
export async function settingsChanges(port: BookPort, changed: ReadonlyMap<string, unknown>): Promise<readonly Change[]> {
  const { exists, rows } = await kept(port);
  const texts = textsOf({ exists, rows });
  for (const [key, value] of changed)
    if (value === undefined) texts.delete(key);
    else texts.set(key, JSON.stringify(value));
  const wanted = [...texts].flatMap(([key, text]) => pieces(text).map((piece) => [key, piece] as const));
  if (!exists) return wanted.length === 0 ? [] : [newSheet(wanted)];
  const changes: Change[] = [];
  for (let i = 0; i < Math.max(rows.length, wanted.length); i++)
    ["A", "B"].forEach((column, c) => {
      const content = wanted[i]?.[c] ?? null;
      if (content !== (rows[i]?.[c] ?? null)) changes.push({ sheet: SETTINGS_SHEET, cell: `${column}${i + 2}`, content, asText: true });
    });
  return changes;
}

const newSheet = (rows: readonly (readonly [string, string])[]): Change => ({
  newSheet: SETTINGS_SHEET,
  isHidden: true,
  columnWidths: [24, 80],
  cells: [
    { cell: "A1", content: FIRST_ROW, look: "note" },
    ...rows.flatMap(([key, text], i) => [
      { cell: `A${i + 2}`, content: key, asText: true },
      { cell: `B${i + 2}`, content: text, asText: true },
    ]),
  ],
});

async function kept(port: BookPort): Promise<Kept> {
  const sheet = (await port.sheets()).find(({ name }) => sheetKey(name) === sheetKey(SETTINGS_SHEET));
  if (!sheet) return { exists: false, rows: [] };
  const last = Math.max(readArea(sheet.used ?? "A1")?.bottom ?? 1, 2);
  const [first, ...rows] = await port.read({ sheet: sheet.name, range: `A1:B${last}` });
  if (!String(first?.[0]?.value ?? "").startsWith(OWN))
    throw new Error(`Cannot keep anything in this workbook: its sheet ${sheet.name} is not Lotwright's own: give that sheet another name`);
  return { exists: true, rows: rows.map(([key, text]) => [key?.value ?? null, text?.value ?? null]) };
}

/** Several rows of one key are one text in pieces. */
function textsOf({ rows }: Kept): Map<string, string> {
  const texts = new Map<string, string>();
  for (const [key, text] of rows) if (typeof key === "string" && key !== "") texts.set(key, (texts.get(key) ?? "") + String(text ?? ""));
  return texts;
}

/** No piece ends inside a character that takes two places. */
function pieces(text: string): string[] {
  const all: string[] = [];
  for (let at = 0; at < text.length; ) {
    const isInside = /[\uD800-\uDBFF]/.test(text[at + LONGEST_PIECE - 1] ?? "");
    const end = at + LONGEST_PIECE - (isInside ? 1 : 0);
    all.push(text.slice(at, end));
    at = end;
  }
  return all;
}
