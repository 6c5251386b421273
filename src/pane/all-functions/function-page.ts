import type { Entry } from "../../catalogue/entry";
import { freshId, h } from "../dom";
import type { Page } from "../page";
import type { PaneHost } from "../pane-host";
import { referenceLink } from "../reference-link";
import { type Selected, followSelection } from "../selection";
import { type Argument, readArgument } from "../argument";
import { cellRange, seenFrom, writtenRange } from "../../workbook/cell-range";
import { type Computed, compute } from "./compute";
import { examplesView } from "./examples-view";
import { field } from "./field";
import { formulaOf } from "./formula";
import { insertBar } from "./insert-bar";
import { formOf } from "./memory";
import { userNotation } from "../notation";
import { fillTable, isSpill } from "./result-view";
import { choices } from "./suggestions";
import { workingView } from "./working-view";

/** Typing goes on for this long before the cells are read again. */
const PAUSE = 150;

/** One function: what it computes, a form with its result, and the way into a cell. */
export function functionPage(entry: Entry, entries: readonly Entry[], host: PaneHost, back: () => void): Page {
  const notation = userNotation(host);
  const form = formOf(entry);
  const names = entry.parameters.map(({ name }) => name);
  const known = entry.parameters.map(({ wants }) => choices(wants));
  const fields = entry.parameters.map((parameter) => field(parameter, names, changed));
  const working = workingView();
  const table = h("table");
  const scroll = h("div", { class: "lw-scroll", tabindex: 0, role: "region", "aria-label": "Cells of the result" }, table);
  const spill = h("section", { class: "lw-spill", hidden: true }, h("h2", {}, "Result"), scroll);
  const bar = insertBar({ entry, entries, host, notation, latest: recompute, arguments: given, focusField, look });
  let selected: Selected | null = null;
  let pause: ReturnType<typeof setTimeout> | undefined;
  let run = 0;

  function focusField(name: string): void {
    fields[names.indexOf(name)]?.input.focus();
  }
  function look(): void {
    spill.scrollIntoView();
    scroll.focus({ preventScroll: true });
  }
  function given(): Argument[] {
    return fields.map(({ input }, i) => readArgument(input.value, notation, known[i]));
  }
  function changed(): void {
    form.texts = fields.map(({ input }) => input.value);
    bar.edited(formulaOf(entry.name, given(), notation, selected?.sheet ?? null));
    clearTimeout(pause);
    pause = setTimeout(() => void recompute(), PAUSE);
  }
  /** The newest run alone is shown: an older one may end after it. */
  async function recompute(): Promise<Computed> {
    clearTimeout(pause);
    const mine = ++run;
    const computed = await compute(entry, given(), selected?.sheet ?? "", host.port);
    if (mine === run) show(computed);
    return computed;
  }
  function show({ notes, outcome }: Computed): void {
    fields.forEach(({ say }, i) => say(notes.filter(({ parameter }) => parameter === names[i])));
    const rows = outcome.kind === "result" ? outcome.rows : [];
    spill.hidden = !isSpill(rows);
    fillTable(table, rows, notation);
    working.show(outcome.kind === "result" ? outcome.working : null);
    bar.computed(outcome);
  }
  function put(texts: readonly string[]): void {
    fields.forEach(({ input }, i) => (input.value = texts[i] ?? ""));
    changed();
  }
  function useExample(texts: readonly string[]): void {
    const before = fields.map(({ input }) => input.value);
    const isLost = before.some((text, i) => text !== "" && text !== texts[i]);
    put(texts);
    bar.say("The example is in the form", isLost ? { label: "Put mine back", run: () => putBack(before) } : undefined);
    fields[0]?.input.focus();
  }
  function putBack(texts: readonly string[]): void {
    put(texts);
    bar.say("Your own input is back");
    fields[0]?.input.focus();
  }
  function moved(now: Selected | string): void {
    selected = typeof now === "string" ? null : now;
    if (selected) lookFrom(selected);
    bar.selected(now);
    changed();
  }
  /** On another sheet the same cells are named otherwise. */
  function lookFrom({ sheet, range, cell }: Selected): void {
    if (form.sheet !== null && form.sheet !== sheet)
      given().forEach((argument, i) => {
        const input = fields[i]?.input;
        if (argument.kind === "cells" && input && form.sheet !== null) input.value = writtenRange(seenFrom(argument.range, form.sheet, sheet), sheet);
      });
    form.sheet = sheet;
    fields.forEach(({ offer }, i) => {
      const taken = cellRange(null, entry.parameters[i]?.shape === "range" ? range : cell);
      offer(taken && writtenRange(taken, sheet));
    });
  }

  fields.forEach(({ input }, i) => (input.value = form.texts[i] ?? ""));
  const unfollow = followSelection(host.port, moved);
  const heading = freshId("function");
  const clear = h("button", { type: "button", class: "lw-quiet", onclick: () => put([]) }, "Empty the form");
  const element = h(
    "div",
    { class: "lw-page lw-function" },
    h("header", { class: "lw-top" }, h("button", { type: "button", class: "lw-back", onclick: back }, "All functions"), h("h1", { id: heading, tabindex: -1 }, entry.name)),
    h("p", { class: "lw-lead" }, entry.description),
    h("p", { class: "lw-about" }, `Gives ${entry.returns.charAt(0).toLowerCase()}${entry.returns.slice(1)}`),
    entry.caution === null ? null : h("p", { class: "lw-caution", role: "note" }, h("strong", {}, "Caution "), entry.caution),
    h(
      "form",
      { "aria-labelledby": heading, novalidate: true, onsubmit: (event) => void (event.preventDefault(), bar.press()) },
      examplesView(entry, notation, useExample),
      h("div", { class: "lw-fields" }, ...fields.map((one) => one.element), fields.length > 0 ? clear : null),
      spill,
      working.element,
      entry.source === null ? null : h("section", { class: "lw-source" }, h("h2", {}, "Source"), h("p", {}, entry.source)),
      referenceLink(host, entry.id, `${entry.name} in the reference`),
      bar.element,
    ),
  );
  return {
    element,
    focus: () => (fields[0]?.input ?? element.querySelector("h1"))?.focus({ preventScroll: true }),
    back: () => {
      if (!bar.cancel()) back();
    },
    close() {
      clearTimeout(pause);
      run++;
      unfollow();
    },
  };
}
