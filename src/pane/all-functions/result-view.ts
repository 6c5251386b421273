import { errorCode } from "../../core/fault";
import { spaced } from "../../core/expression/spaced";
import type { CellValue } from "../../functions/answer";
import { type Child, fill, h } from "../dom";
import type { Outcome } from "./compute";
import { type Size, sizeText } from "./insertion";
import { type Notation, writtenNumber } from "../notation";

export const shownValue = (value: CellValue, notation: Notation): string => {
  if (typeof value === "object") return errorCode(value.fault);
  return typeof value === "number" ? writtenNumber(value, notation) : String(value);
};

/** The result in a line, whatever it is. */
export function resultLine(outcome: Outcome, notation: Notation): Child[] {
  switch (outcome.kind) {
    case "waiting":
      return [h("span", { class: "lw-waiting" }, `Still needed: ${outcome.needs.map(spaced).join(", ")}`)];
    case "fault":
      return [
        h("span", { class: "lw-code" }, outcome.code),
        " ",
        h("span", { class: "lw-fault" }, outcome.parameters.length > 0 ? `see ${outcome.parameters.map(spaced).join(" and ")}` : outcome.sentence),
      ];
    case "result": {
      const [first] = outcome.rows[0] ?? [];
      if (isSpill(outcome.rows)) return [sizeText(sizeOf(outcome.rows))];
      return [
        outcome.of ? h("span", { class: "lw-of" }, outcome.of) : null,
        h("span", { class: "lw-value" }, shownValue(first ?? "", notation)),
        outcome.unit ? h("span", { class: "lw-unit" }, ` ${outcome.unit}`) : null,
      ];
    }
  }
}

export const isSpill = (rows: readonly (readonly unknown[])[]): boolean => rows.length > 1 || (rows[0]?.length ?? 0) > 1;

export const sizeOf = (rows: readonly (readonly unknown[])[]): Size => ({ rows: rows.length, columns: rows[0]?.length ?? 0 });

const SHOWN = 12;

/** The cells that a spill fills. */
export function fillTable(table: HTMLTableElement, rows: readonly (readonly CellValue[])[], notation: Notation): void {
  const more = rows.length - SHOWN;
  const texts = aligned(rows.slice(0, SHOWN), notation);
  fill(
    table,
    h(
      "tbody",
      {},
      ...texts.map((row, r) => h("tr", {}, ...row.map((text, c) => h("td", { class: typeof rows[r]?.[c] === "number" ? "lw-number" : undefined }, text)))),
      more > 0 ? h("tr", {}, h("td", { colspan: rows[0]?.length ?? 1, class: "lw-more" }, `and ${more} more ${more === 1 ? "row" : "rows"}`)) : null,
    ),
  );
}

const FIGURE_SPACE = "\u2007";
const POINT_SPACE = "\u2008";
/** More decimals than these would widen a column too much. */
const MOST_DECIMALS = 4;

/** Numbers of one column get blanks as wide as the decimals they lack, so that their points stand in a line. */
function aligned(rows: readonly (readonly CellValue[])[], notation: Notation): string[][] {
  const decimals = (value: CellValue | undefined): number => (typeof value === "number" ? (/\.(\d+)$/.exec(String(value))?.[1]?.length ?? 0) : 0);
  return rows.map((row) =>
    row.map((value, c) => {
      const text = shownValue(value, notation);
      const most = Math.max(...rows.map((other) => decimals(other[c])));
      const own = decimals(value);
      if (typeof value !== "number" || most > MOST_DECIMALS || own === most) return text;
      return text + (own === 0 ? POINT_SPACE : "") + FIGURE_SPACE.repeat(most - own);
    }),
  );
}
