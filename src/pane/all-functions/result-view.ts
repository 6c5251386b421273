import { errorCode } from "../../core/fault";
import { spaced } from "../../core/expression/working";
import type { CellValue } from "../../functions/answer";
import { type Child, fill, h } from "../dom";
import type { Outcome } from "./compute";
import { type Notation, writtenNumber } from "./notation";

export const shownValue = (value: CellValue, notation: Notation): string => {
  if (typeof value === "object") return errorCode(value.fault);
  return typeof value === "number" ? writtenNumber(value, notation) : String(value);
};

/** The result in a line, whatever it is. */
export function resultLine(outcome: Outcome, notation: Notation): Child[] {
  switch (outcome.kind) {
    case "waiting":
      return [h("span", { class: "waiting" }, `Still needed: ${outcome.needs.map(spaced).join(", ")}`)];
    case "fault":
      return [
        h("span", { class: "code" }, outcome.code),
        " ",
        h("span", { class: "fault" }, outcome.parameters.length > 0 ? `see ${outcome.parameters.map(spaced).join(" and ")}` : outcome.sentence),
      ];
    case "result": {
      const [first] = outcome.rows[0] ?? [];
      if (isSpill(outcome.rows)) return [h("span", { class: "waiting" }, "See the table above")];
      return [
        outcome.of ? h("span", { class: "of" }, outcome.of) : null,
        h("span", { class: "value" }, shownValue(first ?? "", notation)),
        outcome.unit ? h("span", { class: "unit" }, ` ${outcome.unit}`) : null,
      ];
    }
  }
}

export const isSpill = (rows: readonly (readonly unknown[])[]): boolean => rows.length > 1 || (rows[0]?.length ?? 0) > 1;

const SHOWN = 12;

/** The cells that a spill fills. */
export function fillTable(table: HTMLTableElement, rows: readonly (readonly CellValue[])[], notation: Notation): void {
  const more = rows.length - SHOWN;
  fill(
    table,
    h(
      "tbody",
      {},
      ...rows.slice(0, SHOWN).map((row) =>
        h("tr", {}, ...row.map((value) => h("td", { class: typeof value === "number" ? "number" : undefined }, shownValue(value, notation)))),
      ),
      more > 0 ? h("tr", {}, h("td", { colspan: rows[0]?.length ?? 1, class: "more" }, `and ${more} more ${more === 1 ? "row" : "rows"}`)) : null,
    ),
  );
}
