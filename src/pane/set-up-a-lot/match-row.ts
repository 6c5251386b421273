import type { Correction } from "../../lots/corrections";
import { type FieldId, fieldOf } from "../../lots/fields";
import type { ColumnMatch, ListColumn } from "../../lots/list";
import { fill, freshId, h } from "../dom";
import { columnUnits } from "../unit-choices";

/** One field of a lot and the column that holds it. */
export interface MatchRow {
  readonly field: FieldId;
  readonly element: HTMLElement;
  show(match: ColumnMatch | undefined): void;
  /** Says what must be told before one goes on, and puts the focus there. */
  ask(sentence: string): void;
}

const NONE = "";
const NEW = "+";
const BY_ROW = "@";

interface Needs {
  readonly field: FieldId;
  /** The columns that stand in the list. */
  readonly columns: readonly ListColumn[];
  /** What the user makes of the field; null takes corrections back. */
  correct(field: FieldId, correction: Correction | null): void;
}

export function matchRow({ field, columns, correct }: Needs): MatchRow {
  const { title } = fieldOf(field);
  const [id, whyId] = [freshId("match"), freshId("why")];
  const units = columnUnits(field);
  let isNew = false;
  const column = h(
    "select",
    { id, "aria-describedby": whyId, onchange: () => chosen(column.value) },
    h("option", { value: NONE }, "not in the list"),
    ...columns.map(({ letter, heading }) => h("option", { value: letter }, `${letter}  ${heading}`)),
    h("option", { value: NEW }, "new column at the right"),
  );
  const unit = h("select", { "aria-label": `Unit of ${title.toLowerCase()}`, class: "lw-unit", onchange: () => told(unit.value) });
  const why = h("p", { id: whyId, class: "lw-about" });
  const doubt = h("p", { class: "lw-note lw-doubt", "aria-live": "polite" });

  function chosen(to: string): void {
    if (to === NONE) correct(field, { kind: "leave out", field });
    else if (to === NEW) correct(field, { kind: "add", field });
    else correct(field, { kind: "column", field, column: to });
  }
  function told(symbol: string): void {
    if (symbol === BY_ROW) correct(field, null);
    else if (symbol !== "") correct(field, isNew ? { kind: "add", field, unit: symbol } : { kind: "unit", field, symbol });
  }
  return {
    field,
    element: h("li", { class: "lw-match" }, h("label", { for: id }, title), h("div", { class: "lw-entry" }, column, unit), why, doubt),
    show(match) {
      isNew = match !== undefined && !columns.some(({ number }) => number === match.column.number);
      column.value = match === undefined ? NONE : isNew ? NEW : match.column.letter;
      showUnit(unit, units, match);
      why.textContent = match === undefined ? "" : isNew ? `${match.column.letter} ‘${match.column.heading}’` : sentence(match.reason);
      doubt.textContent = match?.doubt?.sentence ?? "";
      doubt.classList.remove("lw-fault");
    },
    ask(told) {
      doubt.textContent = told;
      doubt.classList.add("lw-fault");
      (unit.hidden ? column : unit).focus();
    },
  };
}

function showUnit(select: HTMLSelectElement, units: ReturnType<typeof columnUnits>, match: ColumnMatch | undefined): void {
  select.hidden = units.length === 0 || match === undefined;
  if (!match) return;
  const symbol = match.unit?.symbol ?? null;
  const first = match.unit?.from === "unit column" ? [h("option", { value: BY_ROW }, "as the row says")] : symbol === null ? [h("option", { value: "" }, "say which")] : [];
  const unknown = symbol !== null && !units.some(({ value }) => value === symbol) ? [h("option", { value: symbol }, symbol)] : [];
  fill(select, ...first, ...unknown, ...units.map(({ value, label }) => h("option", { value }, label)));
  select.value = match.unit?.from === "unit column" ? BY_ROW : (symbol ?? "");
}

/** A unit without which no number can be written into the column. */
export const lacksUnit = ({ unit }: ColumnMatch): boolean => unit !== null && unit.symbol === null && unit.from !== "unit column";

const sentence = (reason: string): string => `${reason.charAt(0).toUpperCase()}${reason.slice(1)}.`;

