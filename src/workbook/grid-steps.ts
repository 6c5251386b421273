import { type Border, type Model, type Style, type UID, helpers } from "@odoo/o-spreadsheet";
import { typed, typedText } from "../engine/cell-text";
import { KEEP } from "../engine/kept";
import { isReadable } from "../engine/readable";
import type { Step } from "../engine/steps";
import { type SortedChanges, sheetKey } from "./changes";
import { chartStep } from "./grid-charts";
import { type KeptChange, PICTURE } from "./grid-kept";
import { LINE_COLOUR, LOOKS, type LookOf } from "./looks";
import { tableSteps } from "./grid-tables";
import type { CellContent, CellWrite, NewSheet, Picture, SheetCell } from "./port";
import { plannedHeights } from "./row-heights";
import type { GrownTable } from "./table-growth";

export interface GridSteps {
  readonly id: string;
  readonly steps: readonly Step[];
  readonly backwards: readonly Step[];
}

/** A write as commands of the grid, and the commands that take it back. */
export function gridSteps(model: Model, changes: SortedChanges, grown: readonly GrownTable[], sheetId: (name: string) => UID): GridSteps {
  const { getters } = model;
  const ids = new helpers.UuidGenerator();
  const id = ids.uuidv4();
  const made = new Map(changes.sheets.map((sheet) => [sheetKey(sheet.newSheet), { id: ids.uuidv4(), sheet }]));
  const idOf = (name: string): UID => made.get(sheetKey(name))?.id ?? sheetId(name);
  const nameOf = (name: string): string => made.get(sheetKey(name))?.sheet.newSheet ?? getters.getSheetName(sheetId(name));
  const isMade = (name: string): boolean => made.has(sheetKey(name));

  const kept: KeptChange = {
    id,
    cells: changes.cells.map((write) => ({ ...write, sheet: nameOf(write.sheet), cell: plain(write.cell) })),
    sheets: changes.sheets,
    notes: changes.notes.map((note) => ({ ...note, sheet: nameOf(note.sheet), cell: plain(note.cell) })),
    pictures: changes.pictures.map((picture) => ({ ...picture, sheet: nameOf(picture.sheet) })),
  };
  const steps: Step[] = [];
  const backwards: Step[] = [];
  const position = getters.getSheetIds().length;
  [...made.values()].forEach(({ id: own, sheet }, i) => {
    steps.push(...newSheetSteps(own, sheet, position + i), ...(sheet.charts ?? []).map((chart) => chartStep(own, sheet.newSheet, PICTURE + ids.uuidv4(), chart)));
    // A workbook keeps at least one sheet that shows, and the grid counts a hidden one that goes among those.
    backwards.push({ type: "SHOW_SHEET", sheetId: own }, { type: "DELETE_SHEET", sheetId: own, sheetName: sheet.newSheet });
  });
  const written = kept.cells.flatMap(({ sheet }) => (isMade(sheet) ? [] : [idOf(sheet)]));
  const tables = tableSteps(model, written, grown, idOf);
  steps.push(...tables.first);
  for (const write of kept.cells) {
    const cell = { sheetId: idOf(write.sheet), ...helpers.toCartesian(write.cell) };
    const like = write.like === undefined || isMade(write.sheet) ? null : { sheetId: cell.sheetId, ...helpers.toCartesian(plain(write.like)) };
    steps.push({ type: "UPDATE_CELL", ...cell, content: typedContent(write.sheet, write), ...lookLike(model, like), ...formatOf(write.numberFormat) });
    if (like) steps.push({ type: "SET_BORDER", ...cell, border: getters.getCellBorder(like) ?? undefined });
    if (isMade(write.sheet)) continue;
    const before = getters.getCell(cell);
    const content = !before ? "" : before.isFormula ? before.compiledFormula.toFormulaString(getters) : before.content;
    backwards.push({ type: "UPDATE_CELL", ...cell, content, style: before?.style ?? null, format: before?.format ?? "" });
    if (like) backwards.push({ type: "SET_BORDER", ...cell, border: getters.getCellBorder(cell) ?? undefined });
  }
  steps.push(...tables.last);
  backwards.push(...tables.back);
  for (const picture of kept.pictures) {
    const figureId = PICTURE + ids.uuidv4();
    steps.push(pictureStep(idOf(picture.sheet), figureId, picture));
    if (!isMade(picture.sheet)) backwards.unshift({ type: "DELETE_FIGURE", sheetId: idOf(picture.sheet), figureId });
  }
  steps.push({ type: KEEP, id, kept: () => kept });
  backwards.push({ type: KEEP, id, kept: null });
  return { id, steps, backwards };
}

const plain = (cell: string): string => cell.replaceAll("$", "").toUpperCase();

function* newSheetSteps(sheetId: UID, sheet: NewSheet, position: number): Generator<Step> {
  const { newSheet: name, isHidden, columnWidths = [], cells } = sheet;
  yield { type: "CREATE_SHEET", sheetId, name, position };
  yield { type: "SET_GRID_LINES_VISIBILITY", sheetId, areGridLinesVisible: false };
  for (const [col, width] of columnWidths.entries()) yield { type: "RESIZE_COLUMNS_ROWS", sheetId, dimension: "COL", elements: [col], size: pixels(width) };
  for (const cell of cells) {
    const spot = { sheetId, ...helpers.toCartesian(plain(cell.cell)) };
    yield { type: "UPDATE_CELL", ...spot, content: typedContent(name, cell), style: styleOf(cell), ...formatOf(cell.numberFormat) };
    const lines = cell.look && LOOKS[cell.look].lines;
    if (lines) yield { type: "SET_BORDER", ...spot, border: borderOf(lines) };
  }
  for (const { merge } of cells) if (merge !== undefined) yield { type: "ADD_MERGE", sheetId, target: [helpers.toZone(plain(merge))], force: true };
  for (const [row, height] of plannedHeights(sheet)) yield { type: "RESIZE_COLUMNS_ROWS", sheetId, dimension: "ROW", elements: [row - 1], size: Math.round(height / POINTS_PER_PIXEL) };
  if (isHidden) yield { type: "HIDE_SHEET", sheetId };
}

const POINTS_PER_PIXEL = 0.75;

/** A column as wide as in Excel: seven pixels to a digit, and five for its margins. */
const pixels = (characters: number): number => Math.round(characters * 7 + 5);

function styleOf({ look, wraps, align }: SheetCell): Style {
  const { bold, italic, size, colour, ground }: LookOf = look === undefined ? {} : LOOKS[look];
  return {
    ...(bold && { bold }),
    ...(italic && { italic }),
    ...(size !== undefined && { fontSize: size }),
    ...(colour !== undefined && { textColor: `#${colour}` }),
    ...(ground !== undefined && { fillColor: `#${ground}` }),
    ...(wraps && { wrapping: "wrap", verticalAlign: "top" }),
    ...(align && { align }),
  };
}

function borderOf(lines: NonNullable<LookOf["lines"]>): Border {
  const line = { style: "thin", color: `#${LINE_COLOUR}` } as const;
  if (lines === "around") return { top: line, bottom: line, left: line, right: line };
  return lines === "over" ? { top: line } : { bottom: line };
}

const lookLike = ({ getters }: Model, like: { sheetId: UID; col: number; row: number } | null): { style?: Style | null; format?: string } => {
  if (!like) return {};
  const cell = getters.getCell(like);
  return { style: cell?.style ?? null, format: cell?.format ?? "" };
};

/** A format that the grid cannot show is kept for the file alone. */
function formatOf(code: string | undefined): { format?: string } {
  if (code === undefined) return {};
  if (/^general$/i.test(code)) return { format: "" };
  try {
    helpers.parseFormat(code);
    return { format: code };
  } catch {
    return {};
  }
}

function pictureStep(sheetId: UID, figureId: string, { at, png, width, height }: Picture): Step {
  const size = { width, height };
  const path = `data:image/png;base64,${base64(png)}`;
  return { type: "CREATE_IMAGE", sheetId, figureId, ...helpers.toCartesian(plain(at)), offset: { x: 0, y: 0 }, size, definition: { path, size, mimetype: "image/png" } };
}

function base64(bytes: Uint8Array): string {
  let text = "";
  for (const byte of bytes) text += String.fromCharCode(byte);
  return btoa(text);
}

function typedContent(sheet: string, { cell, content, asText }: Pick<CellWrite, "cell" | "asText"> & { readonly content: CellContent }): string {
  if (typeof content !== "string") return typed(content);
  if (asText || !content.startsWith("=")) return typedText(content);
  if (!isReadable(content)) throw new Error(`Cannot write ${sheet}!${cell}: ${content} cannot be read as a formula`);
  return content;
}
