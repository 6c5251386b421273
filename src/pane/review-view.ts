import type { Plan, PlannedCell, PlannedNote } from "../workbook/plan";
import type { CellContent } from "../workbook/port";
import { SETTINGS_SHEET } from "../workbook/settings";
import { addressOn } from "../workbook/cell-range";
import { readArea } from "../workbook/xlsx/address";
import { type Child, freshId, h } from "./dom";
import { localFormula } from "./local-formula";
import { type Notation, writtenNumber } from "./notation";

/** What a cell is for. */
export interface CellWords {
  readonly heading: string;
  /** Where its content comes from. */
  readonly why?: string;
  /** What it shows when it is no plain number, such as a day. */
  readonly shows?: string;
  /** The group that it stands in. */
  readonly group?: string;
  /** The group whose tick empties it first: what it holds now is shown there. */
  readonly tickedBy?: string;
}

/** Cells that belong together. */
export interface ReviewGroup {
  readonly id: string;
  readonly title: string;
  readonly about?: string;
  /** One tick for all of its filled cells; without it each has its own. */
  readonly tick?: { readonly label: string; /** Nothing can be written without it. */ readonly isNeeded?: boolean };
  readonly isFolded?: boolean;
}

export interface ReviewWords {
  /** On the button, such as "Write the lot"; null where another button writes. */
  readonly action: string | null;
  readonly written: string;
  /** Null where the page has its own. */
  readonly title?: string | null;
  about?(sheet: string, cell: string): CellWords | null;
  /** In the order in which they are shown; what is in none comes last. */
  readonly groups?: readonly ReviewGroup[];
  /** What the add-in keeps in the workbook for itself, such as "which column is which". */
  readonly settings?: string;
}

/** What the user has allowed. */
export interface Ticks {
  readonly single: Set<PlannedCell | PlannedNote>;
  readonly groups: Set<string>;
}

const aboutOf = ({ write }: PlannedCell, words: ReviewWords): CellWords | null => words.about?.(write.sheet, write.cell) ?? null;

/** The group whose tick decides on a cell. */
export function groupOf(planned: PlannedCell, words: ReviewWords): ReviewGroup | undefined {
  const about = aboutOf(planned, words);
  const id = about?.tickedBy ?? about?.group;
  return words.groups?.find((group) => group.id === id);
}

/** Every change with its before and after. */
export function reviewView(plan: Plan, ticks: Ticks, words: ReviewWords, notation: Notation): (HTMLElement | null)[] {
  const own = plan.cells.filter(({ write }) => write.sheet !== SETTINGS_SHEET);
  const keepsSettings = own.length < plan.cells.length || plan.sheets.some(({ newSheet }) => newSheet === SETTINGS_SHEET);
  const inGroup = (id: string): PlannedCell[] => own.filter((planned) => aboutOf(planned, words)?.group === id);
  const others = own.filter((planned) => !words.groups?.some(({ id }) => aboutOf(planned, words)?.group === id));
  const sheets = plan.sheets.filter(({ newSheet }) => newSheet !== SETTINGS_SHEET);
  return [
    ...plan.tables.map(({ table, tableRange }) => h("p", {}, `Table ${table} takes up ${tableRange}.`)),
    ...sheets.map(({ newSheet, cells, isHidden }) => h("p", {}, `A new ${isHidden ? "hidden sheet" : "sheet"}, ‘${newSheet}’, with ${cells.length} filled ${cells.length === 1 ? "cell" : "cells"}.`)),
    ...plan.pictures.map(({ sheet, at, alt }) => h("p", {}, `A picture at ${placeText(sheet, at)}: ${alt}.`)),
    ...(words.groups ?? []).map((group) => groupView(group, inGroup(group.id), ticks, words, notation)),
    listOf(others.map((planned) => cellRow(planned, ticks, words, notation))),
    listOf(plan.notes.map((planned) => noteRow(planned, ticks))),
    keepsSettings ? h("p", { class: "lw-about" }, `Kept in the workbook for next time: ${words.settings ?? "your settings"}, on its hidden sheet ${SETTINGS_SHEET}.`) : null,
  ];
}

const listOf = (rows: readonly HTMLElement[]): HTMLElement | null => (rows.length === 0 ? null : h("ul", { class: "lw-writes" }, ...rows));

function groupView(group: ReviewGroup, cells: readonly PlannedCell[], ticks: Ticks, words: ReviewWords, notation: Notation): HTMLElement | null {
  if (cells.length === 0) return null;
  const { id, title, about, tick, isFolded } = group;
  const rows = listOf(cells.filter(isChanged).map((planned) => cellRow(planned, ticks, words, notation)));
  const areEmpty = !tick && cells.every(({ overwrites }) => !overwrites) ? " These cells are empty now." : "";
  const lead = `${about ?? ""}${areEmpty}`.trim();
  const box = tick && (tick.isNeeded || cells.some(({ overwrites }) => overwrites)) ? tickBox(tick.label, (isOn) => void (isOn ? ticks.groups.add(id) : ticks.groups.delete(id))) : null;
  return h(
    "section",
    { class: "lw-planned", "data-group": id, "aria-label": title },
    h("h3", {}, title),
    lead === "" ? null : h("p", { class: "lw-about" }, lead),
    box,
    isFolded && rows ? h("details", { class: "lw-folded" }, h("summary", {}, `${count(cells.filter(isChanged).length)} one by one`), rows) : rows,
  );
}

const count = (n: number): string => `${n} ${n === 1 ? "cell" : "cells"}`;

/** A cell whose look alone changes is no content to review. */
const isChanged = ({ write, before }: PlannedCell): boolean => !(isNothing(write.content) && isNothing(before.value) && before.formula === null);
const isNothing = (content: CellContent): boolean => content === null || content === "";

function cellRow(planned: PlannedCell, ticks: Ticks, words: ReviewWords, notation: Notation): HTMLElement {
  const { write, before, overwrites } = planned;
  const about = aboutOf(planned, words);
  const where = placeText(write.sheet, write.cell);
  const hasOwnTick = overwrites && !groupOf(planned, words)?.tick;
  const hasBefore = overwrites && about?.tickedBy === undefined;
  const after = about?.shows === undefined ? shown(write.content, notation, write.asText) : [about.shows];
  // A short value stands in the line of its heading.
  const isShort = !hasBefore && (typeof write.content !== "string" || ((write.asText === true || !write.content.startsWith("=")) && write.content.length <= 24));
  return h(
    "li",
    { class: isShort ? "lw-write lw-short" : "lw-write" },
    h("p", { class: "lw-where" }, h("span", { class: "lw-address" }, about?.group === undefined ? where : write.cell), about ? h("span", {}, about.heading) : null),
    hasBefore ? h("p", { class: "lw-before" }, h("span", { class: "lw-word-of" }, "Before "), ...shown(before.formula ?? before.value, notation, before.formula === null), before.formula === null ? null : `, shows ${plainText(before.value, notation)}`) : null,
    h("p", { class: "lw-after" }, hasBefore ? h("span", { class: "lw-word-of" }, "After ") : null, ...after),
    about?.why === undefined ? null : h("p", { class: "lw-about" }, about.why),
    hasOwnTick ? tickBox(`Overwrite ${where}`, (isOn) => void (isOn ? ticks.single.add(planned) : ticks.single.delete(planned))) : null,
  );
}

function noteRow(planned: PlannedNote, ticks: Ticks): HTMLElement {
  const { note, before, overwrites } = planned;
  const where = `the note beside ${placeText(note.sheet, note.cell)}`;
  return h(
    "li",
    { class: "lw-write" },
    h("p", { class: "lw-where" }, h("span", { class: "lw-address" }, "Note"), h("span", {}, `beside ${placeText(note.sheet, note.cell)}`)),
    overwrites ? h("p", { class: "lw-before" }, h("span", { class: "lw-word-of" }, "Before "), before ?? "") : null,
    h("p", { class: "lw-after lw-lines" }, overwrites ? h("span", { class: "lw-word-of" }, "After ") : null, note.note ?? "nothing"),
    overwrites ? tickBox(`Overwrite ${where}`, (isOn) => void (isOn ? ticks.single.add(planned) : ticks.single.delete(planned))) : null,
  );
}

function shown(content: CellContent, notation: Notation, asText = false): Child[] {
  return typeof content === "string" && content.startsWith("=") && !asText ? [h("code", {}, localFormula(content, notation))] : [plainText(content, notation)];
}

const plainText = (content: CellContent, notation: Notation): string =>
  content === null || content === "" ? "nothing" : typeof content === "number" ? writtenNumber(Number(content.toPrecision(MOST_DIGITS)), notation) : String(content);

/** More would say nothing to the eye. */
const MOST_DIGITS = 12;

function placeText(sheet: string, cell: string): string {
  const area = readArea(cell);
  return area ? addressOn(sheet, area, null) : `${sheet}!${cell}`;
}

function tickBox(label: string, changed: (isOn: boolean) => void): HTMLElement {
  const id = freshId("tick");
  const box = h("input", { type: "checkbox", id, onchange: () => changed(box.checked) });
  return h("div", { class: "lw-tick" }, box, h("label", { for: id }, label));
}
