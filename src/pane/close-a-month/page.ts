import { readShop } from "../../lots/shop";
import { type Workbook, readWorkbook } from "../../lots/where";
import type { LotPlace } from "../../lots/where";
import { missingColumns, monthsOf } from "../../month/month-lots";
import { monthText } from "../../month/month-of";
import { madeMonths } from "../../month/month-places";
import { shopMeasurement } from "../../month/shop-measurement";
import { fill, h } from "../dom";
import { choiceField } from "../form-field";
import { userNotation } from "../notation";
import type { Page } from "../page";
import type { PaneHost } from "../pane-host";
import { measurementDraft } from "./measurement-view";
import { memory } from "./memory";
import { type MonthForm, monthForm } from "./month-form";

/** Chooses the month; the form of that month stands below. */
export function monthPage(host: PaneHost, leave: () => void): Page {
  const { port } = host;
  const notation = userNotation(host);
  const heading = h("h1", { tabindex: -1 }, "Close a month");
  const body = h("div", { class: "lw-body" }, h("p", { class: "lw-about", role: "status" }, "Reading the workbook …"));
  let form: MonthForm | null = null;
  let isClosed = false;

  async function start(): Promise<void> {
    const [book, shop] = [await readWorkbook(port), await readShop(port)];
    if (isClosed) return;
    const known = shopMeasurement(shop, book.sheets);
    memory.measurement ??= measurementDraft(known, notation);
    const { scale, assay, bias } = memory.measurement;
    const isKnown = scale !== "" && assay !== "" && bias !== "";
    const place = book.place;
    const none = place === null ? "It is not set up yet where this workbook keeps its lots" : typeof place === "string" ? place : missingColumns(place);
    if (none !== null || place === null || typeof place === "string") return empty(none ?? "", "Go back to all tasks, open Set up a lot and show Lotwright the list under Where lots live; then close the month here.");
    const months = monthsOf(place).map(monthText).reverse();
    const [latest] = months;
    if (latest === undefined) return empty("No lot in the list has a date", `The list on sheet ‘${place.list.sheet}’ decides by its dates which month a lot belongs to: fill them in, then come back.`);
    if (memory.month === null || !months.includes(memory.month)) memory.month = latest;
    choose(book, place, months, isKnown);
  }

  async function startAgain(said: string | undefined): Promise<void> {
    await start();
    heading.focus({ preventScroll: true });
    if (said !== undefined) form?.say(said);
  }

  function choose(book: Workbook, place: LotPlace, months: readonly string[], isKnown: boolean): void {
    const made = new Set(madeMonths(book.sheets).map(({ month }) => monthText(month)));
    const choices = months.map((month) => ({ value: month, label: made.has(month) ? `${month}, closed` : month }));
    const slot = h("div", {});
    const month = choiceField({ label: "Month", choices, value: memory.month ?? "" }, () => {
      memory.month = month.text();
      show();
    });
    const show = (): void => {
      form?.close();
      form = monthForm({ host, notation, book: { sheets: book.sheets, place }, month: month.text(), isKnown, again: (said) => void guarded(() => startAgain(said)) });
      fill(slot, form.element);
    };
    fill(body, month.element, slot);
    show();
  }

  function empty(what: string, todo: string): void {
    fill(body, h("p", { class: "lw-lead" }, `${what}.`), h("p", { class: "lw-about" }, todo), h("div", { class: "lw-actions" }, h("button", { type: "button", onclick: () => void guarded(start) }, "Look again")));
  }

  async function guarded(step: () => Promise<void>): Promise<void> {
    try {
      await step();
    } catch (thrown) {
      if (!isClosed) empty(`Cannot read the workbook: ${thrown instanceof Error ? thrown.message : String(thrown)}`, "Look again once that is mended.");
    }
  }

  void guarded(start);
  return {
    element: h("div", { class: "lw-page lw-month" }, h("header", { class: "lw-top" }, h("button", { type: "button", class: "lw-back", onclick: leave }, "All tasks"), heading), h("p", {}, "Metal in, metal out, metal still here: what is left over is judged by what your scale and your assays can explain."), body),
    focus: () => heading.focus({ preventScroll: true }),
    back: () => {
      if (!form?.cancel()) leave();
    },
    close() {
      isClosed = true;
      form?.close();
    },
  };
}
