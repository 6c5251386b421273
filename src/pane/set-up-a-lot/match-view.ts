import type { Correction, LotMatch } from "../../lots/corrections";
import { type FieldId, fieldOf, fields } from "../../lots/fields";
import { matchOf } from "../../lots/list";
import { h } from "../dom";
import { type MatchRow, lacksUnit, matchRow } from "./match-row";

export interface MatchView {
  readonly element: HTMLElement;
  /** Shows the columns as they are after the user's corrections. */
  show(match: LotMatch): void;
  /** True where every column has what it needs; else asks for it. */
  isComplete(match: LotMatch): boolean;
}

/** Every field with its column: those in doubt first and open, the sure ones and the missing ones folded. */
export function matchView(base: LotMatch, correct: (field: FieldId, correction: Correction | null) => void): MatchView {
  const rows = new Map(fields.map(({ id }) => [id, matchRow({ field: id, columns: base.list.columns, correct })]));
  const rowOf = (field: FieldId): MatchRow => rows.get(field) ?? matchRow({ field, columns: base.list.columns, correct });
  const doubtful = base.matches.filter(({ doubt }) => doubt !== null).map(({ field }) => field);
  const sure = base.matches.filter(({ doubt }) => doubt === null).map(({ field }) => field);
  const missing = fields.filter(({ id }) => !matchOf(base.matches, id)).map(({ id }) => id);
  const list = (some: readonly FieldId[]): HTMLElement => h("ul", { class: "lw-matches" }, ...some.map((field) => rowOf(field).element));
  const names = (some: readonly FieldId[]): string => some.map((field) => fieldOf(field).title).join(", ");
  const folded = (some: readonly FieldId[], words: string): HTMLDetailsElement | null =>
    some.length === 0 ? null : h("details", { class: "lw-folded" }, h("summary", {}, words, h("span", { class: "lw-about" }, ` ${names(some)}`)), list(some));
  const [sureOnes, missingOnes] = [folded(sure, `${count(sure.length, "column")} matched.`), folded(missing, `${count(missing.length, "field")} without a column.`)];
  return {
    element: h(
      "section",
      { class: "lw-columns", "aria-label": "Which column is which" },
      doubtful.length === 0 ? null : h("h3", {}, doubtful.length === 1 ? "Look at this one" : "Look at these"),
      doubtful.length === 0 ? null : list(doubtful),
      sureOnes,
      missingOnes,
    ),
    show: (match) => rows.forEach((row, field) => row.show(matchOf(match.matches, field))),
    isComplete(match) {
      const open = match.matches.find(lacksUnit);
      if (!open) return true;
      for (const details of [sureOnes, missingOnes]) if (details?.contains(rowOf(open.field).element)) details.open = true;
      rowOf(open.field).ask(open.doubt?.sentence ?? `Say the unit of ${fieldOf(open.field).title.toLowerCase()}`);
      return false;
    },
  };
}

const count = (n: number, what: string): string => `${n} ${what}${n === 1 ? "" : "s"}`;
