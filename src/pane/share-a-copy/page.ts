import { openXlsx } from "../../workbook/file";
import { share } from "../../sharing/share";
import { type KeptCell, unshare } from "../../sharing/unshare";
import { WORKINGS_TITLE } from "../../sharing/workings-sheet";
import { readCellRange } from "../../workbook/cell-range";
import { areaText } from "../../workbook/xlsx/address";
import { fill, freshId, h } from "../dom";
import { localFormula } from "../local-formula";
import { userNotation } from "../notation";
import type { Page } from "../page";
import type { PaneHost } from "../pane-host";
import { status } from "../status";

/** Makes a copy that opens anywhere, and turns one that came back into formulas of ours again. */
export function shareView(host: PaneHost, leave: () => void): Page {
  const { port, files } = host;
  const heading = h("h1", { tabindex: -1 }, "Share a copy");
  const told = status();
  const bar = h("progress", { hidden: true, max: 1, "aria-label": "Progress" });
  const found = h("div", { class: "lw-left" });
  const back = h("section", { hidden: true, "aria-labelledby": "lot-put-back" });
  const group = freshId("share");
  const formulas = h("input", { type: "radio", name: group, id: freshId("formulas"), checked: true });
  const values = h("input", { type: "radio", name: group, id: freshId("values") });
  const make = h("button", { type: "button", class: "lw-primary", onclick: () => void guarded(makeCopy) }, "Make the copy");
  let isBusy = false;
  let isClosed = false;

  async function makeCopy(): Promise<void> {
    fill(found);
    told.say("Making the copy …");
    const { name, bytes } = await files.current();
    const { bytes: copy, cells, left } = await share(openXlsx(bytes), { valuesOnly: values.checked, step });
    if (isClosed) return;
    const where = await files.handOver(named(name, "for the bookkeeper"), copy);
    const kept = cells.filter(({ now }) => now === null).length;
    const counts = kept === 0 ? `${count(cells.length)} now an ordinary formula each` : kept === cells.length ? `${count(kept)} as values` : `${count(cells.length - kept)} as ordinary formulas and ${kept} as values`;
    told.say(cells.length === 0 ? `No cell holds a formula of Lotwright, so the copy is the workbook as it is: ${where}` : `The copy is made, ${counts}; the sheet Workings tells what each was: ${where}`);
    if (left.length > 0) fill(found, h("h2", {}, "Still in the copy"), h("ul", {}, ...left.map((sentence) => h("li", {}, sentence))));
  }

  async function putBack(): Promise<void> {
    fill(found);
    const { name, bytes } = await files.current();
    const { bytes: whole, restored, kept } = unshare(openXlsx(bytes));
    const where = await files.handOver(named(name, "put back"), whole);
    told.say(`${restored.length} formulas of Lotwright stand again${kept.length === 0 ? "" : `; ${count(kept.length)} ${kept.length === 1 ? "stays as it" : "stay as they"} came back`}: ${where}`);
    if (kept.length > 0) fill(found, h("h2", {}, "Changed in the copy, and left as they are"), h("ul", { class: "lw-kept" }, ...kept.map(keptItem)));
  }

  function keptItem({ place, was, now, sentence }: KeptCell): HTMLElement {
    const cells = readCellRange(place);
    const shown = (content: unknown): string => (typeof content === "string" && content.startsWith("=") ? localFormula(content, userNotation(host)) : content === null ? "nothing" : String(content));
    const jump = (): void => {
      if (cells?.sheet) port.select({ sheet: cells.sheet, range: areaText(cells.area) }).catch((thrown: unknown) => told.say(message(thrown)));
    };
    return h("li", {}, h("button", { type: "button", class: "lw-quiet", onclick: jump }, place), ` ${sentence}`, h("dl", {}, h("dt", {}, "Was"), h("dd", {}, h("code", {}, shown(was))), h("dt", {}, "Now"), h("dd", {}, h("code", {}, shown(now)))));
  }

  /** Lets the page be drawn now and then. */
  let drawn = 0;
  async function step(_what: string, done: number, of: number): Promise<void> {
    if (performance.now() - drawn < 50) return;
    bar.hidden = false;
    bar.value = done / of;
    await new Promise((resolve) => setTimeout(resolve));
    drawn = performance.now();
  }

  async function lookForWorkings(): Promise<void> {
    for (const { name } of await port.sheets()) {
      if (!/^Workings( \d+)?$/i.test(name)) continue;
      const [[first] = []] = await port.read({ sheet: name, range: "A1" });
      if (first?.value === WORKINGS_TITLE) back.hidden = false;
    }
  }

  async function guarded(work: () => Promise<void>): Promise<void> {
    if (isBusy) return;
    isBusy = true;
    try {
      await work();
    } catch (thrown) {
      told.say(message(thrown));
    } finally {
      isBusy = false;
      bar.hidden = true;
    }
  }

  fill(
    back,
    h("h2", { id: "lot-put-back" }, "This workbook is a shared copy"),
    h("p", { class: "lw-about" }, "Turn its ordinary formulas into formulas of Lotwright again, in a new file. What was changed in it stays, and is listed here."),
    h("div", { class: "lw-actions" }, h("button", { type: "button", onclick: () => void guarded(putBack) }, "Put back")),
  );
  lookForWorkings().catch((thrown: unknown) => told.say(message(thrown)));
  return {
    element: h(
      "div",
      { class: "lw-page lw-share" },
      h("div", { class: "lw-top" }, h("button", { type: "button", class: "lw-back", onclick: leave }, "All tasks"), heading),
      h("p", {}, "A copy for someone without the add-in. Every LOT formula becomes an ordinary one over the same cells, so that the arithmetic stays live in any spreadsheet; a sheet named Workings tells what each was and how it was computed. This workbook stays as it is."),
      h("fieldset", {}, h("legend", {}, "What stands in the copy"), option(formulas, "Ordinary formulas", "What has none becomes its value."), option(values, "Values only", "Nothing in the copy computes with a formula of ours any more.")),
      h("div", { class: "lw-actions" }, make),
      back,
      bar,
      told.element,
      found,
    ),
    focus: () => heading.focus(),
    back: leave,
    close() {
      isClosed = true;
    },
  };
}

const option = (input: HTMLInputElement, label: string, about: string): HTMLElement => h("div", { class: "lw-tick" }, input, h("label", { for: input.id }, label, h("span", { class: "lw-about" }, ` ${about}`)));

const message = (thrown: unknown): string => (thrown instanceof Error ? thrown.message : String(thrown));
const count = (n: number): string => `${n} ${n === 1 ? "cell" : "cells"}`;

const named = (name: string, what: string): string => `${name.replace(/\.xls[xm]$/i, "")} ${what}.xlsx`;
