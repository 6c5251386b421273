import type { PlanContent, PlanLine, PlanWorking } from "../../../lots/batch-plan-line";
import { type Need, needsInWords } from "../../../lots/batch-plan-needs";
import { type Child, fill, freshId, h } from "../../dom";
import { localFormula } from "../../local-formula";
import type { Notation } from "../../notation";
import { workingParts } from "../../working-parts";
import { dayAndTime, percent, sensible } from "./shown";

export interface FiguresTable {
  readonly element: HTMLElement;
  show(lines: readonly PlanLine[]): void;
}

/** The figures of a group in one column, each with its working one key away. `open` outlives what is shown. */
export function figuresTable(name: string, open: Set<string>, notation: Notation): FiguresTable {
  const table = h("table", { class: "lw-plan-figures" });
  return {
    element: table,
    show(lines) {
      const said = new Map<string, string>();
      fill(table, h("caption", { class: "lw-unseen" }, name), columns(), ...lines.flatMap((line) => bodyOf(line, said, open, notation)));
    },
  };
}

const columns = (): HTMLElement => h("colgroup", {}, h("col"), ...["number", "unit", "why"].map((name) => h("col", { class: `lw-plan-col-${name}` })));

/** A line, its caution where that has not been said yet, and its working. */
function bodyOf(line: PlanLine, said: Map<string, string>, open: Set<string>, notation: Notation): HTMLElement[] {
  const { caution } = line;
  const isNew = caution !== null && !said.has(caution);
  const cautionId = caution === null ? undefined : (said.get(caution) ?? freshId("caution"));
  if (caution !== null && cautionId !== undefined) said.set(caution, cautionId);
  const workings = "workings" in line.content ? line.content.workings : [];
  const why = workings.length > 0 ? whyOf(line, workings, open, notation) : null;
  return [
    h(
      "tbody",
      {},
      ...rowsOf(line, why?.button ?? null, cautionId, notation),
      isNew ? h("tr", { class: "lw-plan-caution" }, h("td", { colspan: 4 }, h("p", { class: "lw-caution", id: cautionId }, sentence(caution)))) : null,
      why?.row ?? null,
    ),
  ];
}

const sentence = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;

function rowsOf({ label, content }: PlanLine, why: HTMLElement | null, cautionId: string | undefined, notation: Notation): HTMLElement[] {
  const mark = cautionId === undefined ? null : h("span", { class: "lw-plan-mark", "aria-hidden": "true" }, "\u00a0▲");
  const name = h("th", { scope: "row", "aria-describedby": cautionId }, label, mark);
  switch (content.kind) {
    case "lacking":
      return [h("tr", {}, name, h("td", { colspan: 3, class: "lw-plan-lacking" }, ...lacking(content.needs)))];
    case "fault":
      return [h("tr", {}, name, h("td", { colspan: 3, class: "lw-fault" }, content.sentence))];
    case "rows":
      return [
        h("tr", {}, name, h("td", { colspan: 2 }), whyCell(why)),
        ...content.rows.map((row) => h("tr", { class: "lw-plan-part" }, h("th", { scope: "row" }, row.label), ...partCells(row, notation))),
      ];
    case "ends":
      return [h("tr", {}, name, ...endsCells(content, notation), whyCell(why))];
  }
}

/** What is lacking for many figures is told once, above them all. */
const NAMED = 2;

function lacking(needs: readonly Need[]): Child[] {
  const { shop, batch } = needsInWords(needs.slice(0, NAMED));
  const more = needs.length - NAMED;
  return [
    ...(batch === null ? [] : [h("p", {}, `Fill in above: ${batch}`)]),
    ...(shop === null ? [] : [h("p", {}, `Say ${shop} in The shop`)]),
    ...(more > 0 ? [h("p", {}, `and ${more} more, named at the top`)] : []),
  ];
}

const whyCell = (why: HTMLElement | null): HTMLElement => h("td", { class: "lw-plan-why" }, why);

function partCells({ value, unit }: { readonly value: number; readonly unit: string | null }, notation: Notation): HTMLElement[] {
  if (unit === null) return [h("td", { class: "lw-number", colspan: 3 }, dayAndTime(value))];
  return [h("td", { class: "lw-number" }, sensible(value, notation)), h("td", { class: "lw-plan-unit" }, unit), h("td", {})];
}

/** Both ends stand one above the other, so that every number of the plan stands in one column. */
function endsCells({ ends: { least, most }, unit }: Extract<PlanContent, { kind: "ends" }>, notation: Notation): HTMLElement[] {
  const text = (value: number): string => (unit === "share" ? percent(value, notation) : sensible(value, notation));
  const symbol = unit === "share" ? "" : unit;
  const cells = (number: readonly Child[], symbols: readonly Child[]): HTMLElement[] => [h("td", { class: "lw-number" }, ...number), h("td", { class: "lw-plan-unit" }, ...symbols)];
  if (text(least) === text(most)) return cells([text(most)], [symbol]);
  return cells(
    [h("span", {}, text(least)), " ", h("span", {}, h("span", { class: "lw-of" }, "to "), text(most))],
    [h("span", { "aria-hidden": "true" }, symbol), h("span", {}, symbol)],
  );
}

function whyOf({ id, label }: PlanLine, workings: readonly PlanWorking[], open: Set<string>, notation: Notation): { readonly button: HTMLElement; readonly row: HTMLElement } {
  const rowId = freshId("working");
  const place = h("td", { colspan: 4 });
  const row = h("tr", { id: rowId, class: "lw-plan-working", onkeydown: (event) => byKey(event as KeyboardEvent) }, place);
  const button = h("button", { type: "button", class: "lw-quiet", "aria-label": `why: ${label}`, "aria-controls": rowId, onclick: () => show(!open.has(id)), onkeydown: (event) => byKey(event as KeyboardEvent) }, "why");

  function show(isOpen: boolean): void {
    if (isOpen) open.add(id);
    else open.delete(id);
    row.hidden = !isOpen;
    button.setAttribute("aria-expanded", String(isOpen));
    fill(place, ...(isOpen ? workings.map((one) => workingOf(one, notation)) : []));
  }
  function byKey(event: KeyboardEvent): void {
    if (event.key !== "Escape" || !open.has(id)) return;
    event.preventDefault();
    event.stopPropagation();
    show(false);
    button.focus();
  }

  show(open.has(id));
  return { button, row };
}

function workingOf({ end, answer, formula }: PlanWorking, notation: Notation): HTMLElement {
  const { title, lines } = answer.working();
  return h(
    "div",
    { class: "lw-plan-how" },
    h("p", { class: "lw-plan-title" }, title, end === null ? null : `, ${end.toLowerCase()}`),
    workingParts(lines.filter(({ part }) => part !== "caution")),
    h("p", { class: "lw-about" }, "In a cell: ", h("code", {}, localFormula(formula, notation))),
  );
}
