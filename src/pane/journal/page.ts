import { csvBytes, csvName, csvText } from "../../journal/csv";
import { type Journal, journalOf, withoutJournal } from "../../journal/journal";
import { journalSheet } from "../../journal/journal-sheet";
import { type Shop, readShop, withCells } from "../../lots/shop";
import { type LotPlace, readWorkbook } from "../../lots/where";
import { monthsOf } from "../../month/month-lots";
import { monthText, readMonth } from "../../month/month-of";
import { copyText } from "../copy-text";
import { fill, h } from "../dom";
import { type FormField, choiceField } from "../form-field";
import { userNotation } from "../notation";
import type { Page } from "../page";
import type { PaneHost } from "../pane-host";
import { review } from "../review";
import { accountsView } from "./accounts-view";
import { amountText, linesView } from "./lines-view";
import { draftOf } from "./memory";

interface Found {
  readonly place: LotPlace;
  readonly shop: Shop;
}

/** The month's settlements as balanced lines, saved as a file, copied, or put on a sheet. */
export function journalPage(host: PaneHost, leave: () => void): Page {
  const { port, files } = host;
  const notation = userNotation(host);
  const draft = draftOf(port);
  const heading = h("h1", { tabindex: -1 }, "Journal");
  const body = h("div", { class: "lw-body" });
  const state = h("p", { role: "status", class: "lw-lead" });
  const bar = h("progress", { hidden: true, max: 1, "aria-label": "Lots looked at" });
  const remarks = h("div", {});
  const lines = linesView(notation);
  const accounts = accountsView(port, draft, () => void compute());
  const seen = review(port, notation, draft, written);
  const save = h("button", { type: "button", class: "lw-primary", onclick: () => void guarded(saveFile) }, "Save as a CSV file");
  const copy = h("button", { type: "button", onclick: () => void guarded(copyLines) }, "Copy");
  const onSheet = h("button", { type: "button", onclick: () => void guarded(reviewSheet) }, "As a new sheet");
  const actions = h("div", { class: "lw-actions", hidden: true }, save, copy, onSheet);
  const copied = h("pre", {});
  const copiedBox = h("div", { class: "lw-code-box", hidden: true, tabindex: 0, role: "group", "aria-label": "The journal as text" }, copied);
  let found: Found | null = null;
  let journal: Journal | null = null;
  let sheet: string | null = null;
  let run = 0;
  let isBusy = false;
  let isClosed = false;

  async function start(): Promise<void> {
    fill(body, h("p", { class: "lw-about", role: "status" }, "Reading the workbook …"));
    const { sheets, place } = await readWorkbook(port);
    const shop = withCells(await readShop(port), sheets);
    await accounts.load();
    if (isClosed) return;
    if (place === null || typeof place === "string") return empty(place ?? "It is not set up yet where this workbook keeps its lots", "Go back to all tasks, open Set up a lot and show Lotwright the list under Where lots live; then come back.");
    const none = withoutJournal(place, shop);
    if (none !== null) return empty(none, "Then look again.");
    const months = monthsOf(place).map(monthText).reverse();
    const [latest] = months;
    if (latest === undefined) return empty("No lot in the list has a date that can be read", `The list on sheet ‘${place.list.sheet}’ decides by its dates which month a lot belongs to: fill them in, then look again.`);
    if (draft.month === null || !months.includes(draft.month)) draft.month = latest;
    found = { place, shop };
    const month: FormField = choiceField({ label: "Month", choices: months.map((value) => ({ value, label: value })), value: draft.month }, () => {
      draft.month = month.text();
      void compute();
    });
    fill(body, month.element, bar, state, remarks, actions, copiedBox, seen.element, accounts.element, lines.element);
    await compute();
  }

  /** The newest asking alone is shown. */
  async function compute(): Promise<void> {
    const [mine, month] = [++run, readMonth(draft.month ?? "")];
    if (!found || !month) return;
    seen.close();
    copiedBox.hidden = true;
    let drawn = performance.now();
    try {
      const fresh = await journalOf(found.place, month, { accounts: accounts.accounts(), shop: found.shop }, async (done, of) => {
        if (performance.now() - drawn < SLICE) return;
        bar.hidden = false;
        bar.value = done / of;
        await new Promise((resolve) => setTimeout(resolve));
        drawn = performance.now();
        if (mine !== run || isClosed) throw new Overtaken();
      });
      if (mine === run && !isClosed) show(found.place, fresh);
    } catch (thrown) {
      if (!(thrown instanceof Overtaken)) state.textContent = message(thrown);
    } finally {
      if (mine === run) bar.hidden = true;
    }
  }
  function show({ changes }: LotPlace, fresh: Journal): void {
    journal = fresh;
    const [settled, all] = [fresh.settlements.length, [...changes, ...fresh.remarks]];
    const text = settled === 0 ? `${monthText(fresh.month)} has no lot that is settled: there is nothing to write.` : `${settled} ${settled === 1 ? "settlement" : "settlements"}: debits and credits are ${amountText(fresh.debit, notation)} each.`;
    if (state.textContent !== text) state.textContent = text;
    actions.hidden = settled === 0;
    lines.element.hidden = settled === 0;
    lines.show(fresh);
    fill(remarks, all.length === 0 ? null : remarksView(all));
  }

  async function saveFile(shown: Journal): Promise<void> {
    seen.say(`${csvName(shown)}: ${await files.handOver(csvName(shown), csvBytes(shown))}`);
  }
  async function copyLines(shown: Journal): Promise<void> {
    copied.textContent = csvText(shown);
    copiedBox.hidden = false;
    const said = await copyText(csvText(shown), copied);
    copiedBox.hidden = said === "Copied";
    seen.say(said === "Copied" ? "Copied: paste it into a text file whose name ends with .csv" : said);
  }
  async function reviewSheet(shown: Journal): Promise<void> {
    const made = journalSheet(shown, (await port.sheets()).map(({ name }) => name));
    sheet = made.newSheet;
    await seen.show([made], { action: "Write the sheet", written: `The journal of ${monthText(shown.month)} is on the sheet ‘${made.newSheet}’` });
  }
  async function written(isWritten: boolean): Promise<void> {
    if (isWritten && sheet !== null) await port.select({ sheet, range: "A1" });
    else onSheet.focus();
  }

  function empty(what: string, todo: string): void {
    found = null;
    fill(body, h("p", { class: "lw-lead", role: "status" }, `${what}.`), h("p", { class: "lw-about" }, todo), h("div", { class: "lw-actions" }, h("button", { type: "button", onclick: () => void begin() }, "Look again")));
  }
  async function begin(): Promise<void> {
    try {
      await start();
    } catch (thrown) {
      if (!isClosed) empty(message(thrown), "Look again once that is mended.");
    }
  }
  /** What the spreadsheet refuses is said, whatever it is. */
  async function guarded(step: (shown: Journal) => Promise<void>): Promise<void> {
    if (isBusy || !journal) return;
    isBusy = true;
    try {
      await step(journal);
    } catch (thrown) {
      seen.say(message(thrown));
    } finally {
      isBusy = false;
    }
  }

  void begin();
  return {
    element: h(
      "div",
      { class: "lw-page lw-journal-page" },
      h("div", { class: "lw-top" }, h("button", { type: "button", class: "lw-back", onclick: leave }, "All tasks"), heading),
      h("p", {}, "A month’s settlements for the books: the metal as a debit, charges and payouts as credits, equal to the cent."),
      body,
    ),
    focus: () => heading.focus({ preventScroll: true }),
    back: () => {
      if (seen.close()) onSheet.focus();
      else leave();
    },
    close() {
      isClosed = true;
      run++;
    },
  };
}

/** In milliseconds. */
const SLICE = 50;

/** So many stand open; more of them are folded. */
const FEW = 3;

function remarksView(all: readonly string[]): HTMLElement {
  const list = h("ul", { class: "lw-caution lw-remarks" }, ...all.map((remark) => h("li", {}, `${remark}.`)));
  return all.length <= FEW ? list : h("details", { open: all.length <= 2 * FEW }, h("summary", {}, `${all.length} remarks`), list);
}

/** Another month or other names were asked for meanwhile. */
class Overtaken extends Error {}

const message = (thrown: unknown): string => (thrown instanceof Error ? thrown.message : String(thrown));
