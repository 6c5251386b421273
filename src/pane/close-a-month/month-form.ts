import type { SheetReading } from "../../lots/sheet-reading";
import { type LotPlace, readWorkbook } from "../../lots/where";
import { closedMonth, refusals, takenSheet } from "../../month/close-month";
import { figuresOf } from "../../month/figures";
import { measuredIn } from "../../month/measured";
import { type MonthBasis, lotInProcess, monthBasis } from "../../month/month-basis";
import type { Measurement, MonthInput, StockLine } from "../../month/month-input";
import { type Month, preceding, readMonth } from "../../month/month-of";
import { monthSheetName } from "../../month/month-places";
import { openingOf } from "../../month/opening";
import { type StockTerms, stockTerms } from "../../month/stock-terms";
import { readArgument } from "../argument";
import { h } from "../dom";
import { textField } from "../form-field";
import type { Notation } from "../notation";
import type { PaneHost } from "../pane-host";
import { review } from "../review";
import { balanceView, shownFine } from "./balance-view";
import { type LineDraft, readLine } from "./line-draft";
import { type LineTold, type LinesView, linesView } from "./lines-view";
import { measurementView } from "./measurement-view";
import { draftOf, measurementOf, memory } from "./memory";

export interface MonthForm {
  readonly element: HTMLElement;
  /** Takes a review away that is open; false where none is. */
  cancel(): boolean;
  say(sentence: string): void;
  close(): void;
}

interface Needs {
  readonly host: PaneHost;
  readonly notation: Notation;
  readonly book: { readonly sheets: readonly SheetReading[]; readonly place: LotPlace };
  /** As 2026-03. */
  readonly month: string;
  readonly isKnown: boolean;
  /** Looks at the workbook again, after something was written or taken back; then says this. */
  again(said?: string): void;
}

/** Typing goes on for this long before everything is computed again. */
const PAUSE = 200;

/** What is entered for a month, and its balance as it stands. */
export function monthForm({ host: { port }, notation, book, month: name, isKnown, again }: Needs): MonthForm {
  const month = readMonth(name) ?? neverAMonth(name);
  const draft = draftOf(name);
  const before = openingOf({ month, opening: null }, book.sheets);
  const hasBefore = typeof before !== "string";
  const fine = textField(
    { label: "Opening, fine ozt", value: draft.opening, ...(hasBefore ? { optional: `${shownFine(Number(before.fine.value()), notation)} when empty`, about: `From the closing of sheet ${monthSheetName(preceding(month))}.` } : { about: "The fine metal that was there when the month began. The months after this one read it from the sheet." }) },
    () => keep(),
  );
  const uncertainty = textField({ label: "Its standard uncertainty, ozt", value: draft.openingUncertainty, ...(hasBefore ? { optional: `${shownFine(Number(before.uncertainty.value()), notation)} when empty` } : {}) }, () => keep());
  const counted = linesView({ title: "Counted at the end", about: "Crystal, bars, cement, stubs, liquor by test, residues, and lots that still lie as they came.", add: "Add to the count", withLots: true }, draft.counted, changed);
  const shipped = linesView({ title: "Shipped in the month", about: "Everything that left: bars and crystal sold, metal returned, residues sent out.", add: "Add a shipment", withLots: false }, draft.shipped, changed);
  const measuring = measurementView(measurementOf(), isKnown, notation, changed);
  const balance = balanceView(notation);
  const bar = h("progress", { hidden: true, max: 1, "aria-label": "Reading the lots" });
  const look = h("button", { type: "submit", class: "lw-primary" }, "Show what will be written");
  const seen = review(port, notation, memory, (isWritten) => {
    if (!isWritten) again("Undone: the workbook is as it was");
    else void port.select({ sheet: monthSheetName(month), range: "A1" }).then(() => again(), () => again());
  });
  let pause: ReturnType<typeof setTimeout> | undefined;
  let run = 0;
  let basis: { readonly key: string; readonly holds: MonthBasis } | null = null;

  function keep(): void {
    draft.opening = fine.text();
    draft.openingUncertainty = uncertainty.text();
    changed();
  }
  function changed(): void {
    seen.close();
    clearTimeout(pause);
    pause = setTimeout(() => void recompute(), PAUSE);
  }

  /** Null where both are empty; a sentence where they cannot be used. */
  function opening(): MonthInput["opening"] | string {
    const [a, b] = [fine, uncertainty].map((field) => {
      const read = readArgument(field.text(), notation);
      const value = read.kind === "value" && typeof read.value === "number" && read.value >= 0 ? read.value : null;
      field.say(value === null && read.kind !== "nothing" ? (read.kind === "unreadable" ? read.sentence : "Write a number from 0 up") : null);
      return { value, isEmpty: read.kind === "nothing" };
    });
    if (a?.isEmpty && b?.isEmpty) return hasBefore ? null : `${before}`;
    if (a?.value === undefined || a.value === null || b?.value === undefined || b.value === null) return "The opening needs a weight and its standard uncertainty, both in fine troy ounces";
    return { fine: a.value, uncertainty: b.value };
  }

  async function basisFor(place: LotPlace, measurement: Measurement, isNewest: () => boolean): Promise<MonthBasis | null> {
    const key = JSON.stringify(measurement);
    if (basis?.key === key) return basis.holds;
    const began = performance.now();
    let drawn = began;
    const holds = await monthBasis(place, month, measurement, async (done, of) => {
      if (!isNewest()) throw new Overtaken();
      if (performance.now() - drawn < 40) return;
      bar.hidden = performance.now() - began < 150;
      bar.value = done / of;
      await new Promise((resolve) => setTimeout(resolve));
      drawn = performance.now();
    });
    bar.hidden = true;
    basis = { key, holds };
    return holds;
  }

  /** The newest run alone is shown: an older one may end after it. */
  async function recompute(): Promise<MonthInput | null> {
    clearTimeout(pause);
    const mine = ++run;
    try {
      return await computed(() => mine === run);
    } catch (thrown) {
      if (thrown instanceof Overtaken) return null;
      balance.wait([thrown instanceof Error ? thrown.message : String(thrown)]);
      return null;
    }
  }
  async function computed(isNewest: () => boolean): Promise<MonthInput | null> {
    const measurement = measuring.read();
    const start = opening();
    if (!measurement) {
      linesOf(draft.counted, counted, null);
      linesOf(draft.shipped, shipped, null);
      balance.wait([...(typeof start === "string" ? [start] : []), "Say how well the shop measures, above: without it no gap can be judged"]);
      return null;
    }
    const read = await basisFor(book.place, measurement, isNewest);
    if (!read || !isNewest()) return null;
    counted.offer(read.inProcess.map(({ lot, fine: of }) => ({ value: String(lot.value("lot") ?? ""), label: `${String(lot.value("lot") ?? "")}, ${shownFine(Number(of.value()), notation)} ozt` })));
    const [here, gone] = [linesOf(draft.counted, counted, { measurement, read }), linesOf(draft.shipped, shipped, { measurement, read })];
    const waits = [...(typeof start === "string" ? [start] : []), ...(here.isWhole && gone.isWhole ? [] : ["A line of stock is not complete, or wrong: see what stands below it"])];
    if (typeof start === "string" || waits.length > 0) {
      balance.wait(waits);
      return null;
    }
    const from = start === null ? before : openingOf({ month, opening: start }, book.sheets);
    if (typeof from === "string") return null;
    balance.show(figuresOf({ opening: from, basis: read, counted: here.terms, shipped: gone.terms, measurement }), read);
    return { month, ...measurement, opening: start, counted: here.lines, shipped: gone.lines };
  }

  /** Without a measurement it is told only what is wrong with the lines themselves. */
  function linesOf(drafts: readonly LineDraft[], view: LinesView, by: { measurement: Measurement; read: MonthBasis } | null): { lines: StockLine[]; terms: StockTerms[]; isWhole: boolean } {
    const lines: StockLine[] = [];
    const terms: StockTerms[] = [];
    let isWhole = true;
    const told = drafts.map((one): LineTold => {
      const { line, faults, isEmpty } = readLine(one, notation);
      if (isEmpty) return { faults, comesTo: "Empty: not counted", isFault: false };
      const comes = line && by ? stockTerms(line, 1, measuredIn(by.measurement), (number) => lotInProcess(by.read, number)) : "";
      if (line && typeof comes !== "string") {
        lines.push(line);
        terms.push(comes);
        return { faults, comesTo: `${shownFine(Number(comes.fine.value()), notation)} ozt ± ${shownFine(Number(comes.uncertainty.value()), notation)}`, isFault: false };
      }
      isWhole = false;
      return { faults, comesTo: comes === "" ? (faults.size > 0 || line ? "" : "Not complete yet") : String(comes), isFault: comes !== "" };
    });
    view.tell(told);
    return { lines, terms, isWhole };
  }

  async function showReview(): Promise<void> {
    seen.say("Looking at the workbook as it is now …");
    const input = await recompute();
    if (!input) return seen.say("Something is still missing or wrong: see the balance and the fields above");
    bar.removeAttribute("value");
    bar.hidden = false;
    await new Promise((resolve) => setTimeout(resolve));
    try {
      // The list may have changed since the page was opened.
      const { sheets, place } = await readWorkbook(port);
      if (place === null || typeof place === "string") return seen.say(place ?? "Where lots live is no longer set up: set it up again");
      basis = null;
      const read = await basisFor(place, input, () => true);
      if (!read) return;
      const refused = refusals({ sheets, place }, input, read);
      if (refused.length > 0) return seen.say(refused.join(". "));
      const sheet = monthSheetName(month);
      await seen.show([closedMonth({ sheets, place }, input, read).change], { action: "Write the sheet", written: `${name} is closed, on sheet ${sheet}` });
    } catch (thrown) {
      seen.say(thrown instanceof Error ? thrown.message : String(thrown));
    } finally {
      bar.hidden = true;
    }
  }

  void recompute();
  return {
    element: h(
      "form",
      { novalidate: true, onsubmit: (event) => void (event.preventDefault(), showReview()) },
      ...takenSheet(book.sheets, month).map((sentence) => h("p", { class: "lw-caution", role: "note" }, sentence)),
      h("section", { class: "lw-fields", "aria-label": "Opening" }, fine.element, uncertainty.element),
      counted.element,
      shipped.element,
      measuring.element,
      bar,
      balance.element,
      h("div", { class: "lw-actions" }, look),
      seen.element,
    ),
    cancel() {
      const wasOpen = seen.close();
      if (wasOpen) look.focus();
      return wasOpen;
    },
    say: (sentence) => seen.say(sentence),
    close() {
      clearTimeout(pause);
      run++;
    },
  };
}

/** A newer run has begun. */
class Overtaken extends Error {}

function neverAMonth(name: string): Month {
  throw new Error(`${name} is no month`);
}
