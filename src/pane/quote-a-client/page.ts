import type { ListedLot } from "../../lots/listed-lot";
import type { QuoteInput } from "../../lots/quote";
import { paperSheetName } from "../../lots/paper-number";
import { quoteSheet } from "../../lots/quote-sheet";
import type { Shop } from "../../lots/shop";
import { fill, h } from "../dom";
import { userNotation } from "../notation";
import type { Page } from "../page";
import type { PaneHost } from "../pane-host";
import { sheetColours } from "../picture/colours";
import { drawingText } from "../picture/drawing";
import { pngOf } from "../picture/png";
import { review } from "../review";
import { followSelection } from "../selection";
import { blanks, currencyOf, letterhead } from "./letterhead";
import { lotPicker, nameOf } from "../lot-picker";
import { draftOf, takeLot } from "./memory";
import { prefills } from "./prefill";
import { rangeWords, showPreview, summary } from "./preview";
import { type QuoteForm, quoteForm } from "./quote-form";
import type { QuoteKey } from "./quote-keys";
import { rangePicture } from "./range-picture";
import { type ReadQuote, readQuote } from "./read-quote";
import { remarksOf } from "./remarks";
import { type Session, readSession } from "./session";

/** It is drawn for the pane and shown larger on the sheet, which is printed smaller than it is. */
const SHEET_PICTURE = { drawn: 540, larger: 1.35 };

const [LOOK, WRITE] = ["See what will be written", "Write the quote"];

/** A quote, from what is offered to the sheet that the client gets. */
export function quotePage(host: PaneHost, leave: () => void): Page {
  const { port } = host;
  const notation = userNotation(host);
  const draft = draftOf(port);
  const heading = h("h1", { tabindex: -1 }, "Quote a client");
  const body = h("div", { class: "lw-body" }, h("p", { class: "lw-about" }, "Looking through the workbook …"));
  const figures = h("section", { class: "lw-estimate", "aria-label": "What it would pay" });
  const result = h("output", { class: "lw-result" });
  const go = h("button", { type: "submit", class: "lw-primary" }, LOOK);
  const form = h("form", { novalidate: true, onsubmit: (event) => void (event.preventDefault(), isReviewed ? writing.write() : writing.attempt(look)) }, body);
  const picker = lotPicker({ label: "From a lot", beside: "or from scratch below", other: "Another lot, or from scratch" }, (lot) => choose(lot));
  const writing = review(port, notation, draft, settled);
  let session: Session | null = null;
  let fields: QuoteForm | null = null;
  let newSheet: string | null = null;
  let isReviewed = false;
  let run = 0;
  let isClosed = false;

  async function begin(): Promise<void> {
    try {
      const found = await readSession(port);
      if (isClosed) return;
      session = found;
      fields = quoteForm(found.shop, (key) => changed(key));
      picker.show(found.lots, found.noLots, chosenLot());
      const bar = h("div", { class: "lw-bar" }, result, h("div", { class: "lw-actions" }, go));
      fill(body, blanks(found.shop), picker.element, fields.goods, fields.fineness, fields.terms, fields.paper, figures, writing.element);
      form.append(bar);
      fields.show(prefills(found, chosenLot(), notation), draft.entered);
      unfollow = followSelection(port, (selected) => fields?.offer(typeof selected === "string" ? null : selected));
      await compute();
    } catch (thrown) {
      fill(body, h("p", { class: "lw-fault" }, thrown instanceof Error ? thrown.message : String(thrown)), h("div", { class: "lw-actions" }, h("button", { type: "button", onclick: () => void begin() }, "Look again")));
    }
  }
  let unfollow = (): void => undefined;

  const chosenLot = (): ListedLot | null => {
    const { lot } = draft;
    const named = (session?.lots ?? []).filter((one) => lot !== null && nameOf(one) === lot.number);
    return named.find(({ row }) => row === lot?.row) ?? named[0] ?? null;
  };
  function choose(lot: ListedLot | null): void {
    if (!session || !fields) return;
    takeLot(draft, lot && { number: nameOf(lot), row: lot.row });
    picker.show(session.lots, session.noLots, lot);
    fields.show(prefills(session, lot, notation), draft.entered);
    void writing.attempt(compute);
    if (lot) fields.focus(lot.value("fineness") === null ? "likely" : "low");
    else picker.element.querySelector("input")?.focus();
  }
  function changed(key: QuoteKey): void {
    if (fields) draft.entered.set(key, fields.read(key));
    void writing.attempt(compute);
  }

  async function compute(): Promise<ReadQuote | null> {
    const [mine, form_, known] = [++run, fields, session];
    if (!form_ || !known) return null;
    closeReview();
    const read = await readQuote((key) => form_.read(key), notation, port);
    if (mine !== run || isClosed) return null;
    form_.say(read.faults, read.result ? remarksOf(read.result, form_.read("number").text, known) : new Map());
    if (read.result) {
      showPreview(figures, read.result, currencyOf(known.shop), notation);
      fill(result, ...summary(read.result, currencyOf(known.shop), notation));
    } else {
      fill(figures);
      fill(result, h("span", { class: "lw-waiting" }, read.faults.size > 0 ? "Something above cannot be reckoned with" : `Still needed: ${read.needs.join(", ").toLowerCase()}`));
    }
    return read;
  }

  async function look(): Promise<void> {
    const read = await compute();
    if (!read || !fields || !session) return;
    const [wrong] = read.faults.keys();
    if (wrong) return fields.focus(wrong);
    if (!read.result) return void fields.focus((["weight", "low", "likely", "high", "price", "payable"] as const).find((key) => fields?.read(key).text === "") ?? "weight");
    if (!read.paper) return fields.say(new Map([["days", "Write for how many days the terms hold, such as 14"]]), new Map()), fields.focus("days");
    const lot = chosenLot();
    const name = paperSheetName("Quote", read.paper.number, (await port.sheets()).map(({ name: taken }) => taken));
    const input: QuoteInput = { ...read.result.offer, ...read.paper, shop: letterhead(session.shop), ...(lot ? { lot: lot.value("lot") ?? `row ${lot.row}` } : {}), ...(await pictureOf(read.result, session.shop)) };
    newSheet = name;
    isReviewed = await writing.show([quoteSheet(input, name)], { action: null, written: `Quote ${read.paper.number} is on the sheet ‘${name}’, ready to print` });
    if (isReviewed) go.textContent = WRITE;
  }
  /** False where nothing was shown. */
  function closeReview(): boolean {
    isReviewed = false;
    go.textContent = LOOK;
    return writing.close();
  }

  /** Where this browser cannot draw, the quote goes without a picture. */
  async function pictureOf({ offer, figures: of }: NonNullable<ReadQuote["result"]>, shop: Shop): Promise<Pick<QuoteInput, "picture">> {
    const isMetal = offer.payment === "metal";
    const drawing = rangePicture(of, isMetal, rangeWords(offer, isMetal, currencyOf(shop), notation), sheetColours, SHEET_PICTURE.drawn);
    if (!drawing) return {};
    const { width, height, alt } = drawing;
    try {
      const { larger } = SHEET_PICTURE;
      return { picture: { png: await pngOf(drawingText(drawing), width, height, 3), width: Math.round(width * larger), height: Math.round(height * larger), alt } };
    } catch {
      return {};
    }
  }

  async function settled(isWritten: boolean): Promise<void> {
    if (!session || isClosed) return;
    if (isWritten && newSheet !== null) await port.select({ sheet: newSheet, range: "A1" });
    draft.entered.delete("number");
    session = await readSession(port);
    if (isClosed) return;
    fields?.show(prefills(session, chosenLot(), notation), draft.entered);
    await compute();
  }

  void begin();
  return {
    element: h("div", { class: "lw-page lw-quote" }, h("header", { class: "lw-top" }, h("button", { type: "button", class: "lw-back", onclick: leave }, "All tasks"), heading), form),
    focus: () => heading.focus({ preventScroll: true }),
    back: () => {
      if (closeReview()) go.focus();
      else leave();
    },
    close() {
      isClosed = true;
      run++;
      unfollow();
    },
  };
}
