import type { LotInput } from "../../lots/given";
import type { ListedLot } from "../../lots/listed-lot";
import { paperSheetName } from "../../lots/paper-number";
import { type SettledRow, settledRow, settledWord } from "../../lots/settled-row";
import { matchOf } from "../../lots/list";
import type { LotPlace } from "../../lots/where";
import type { StatementInput } from "../../lots/settlement";
import { statementSheet } from "../../lots/statement-sheet";
import { fill, h } from "../dom";
import { lotPicker, nameOf } from "../lot-picker";
import { moneyText } from "../money-text";
import { userNotation } from "../notation";
import type { Page } from "../page";
import type { PaneHost } from "../pane-host";
import { sheetColours } from "../picture/colours";
import { drawingText } from "../picture/drawing";
import { pngOf } from "../picture/png";
import { blanks, currencyOf, letterhead } from "../quote-a-client/letterhead";
import { review } from "../review";
import { previewed } from "../row-preview";
import { followSelection } from "../selection";
import { flowPicture } from "./flow-picture";
import { draftOf, takeLot } from "./memory";
import { prefills } from "./prefill";
import { quotedOf } from "./quoted";
import { type ReadSettlement, readSettlement } from "./read-settlement";
import { remarksOf } from "./remarks";
import { type Session, readSession } from "./session";
import { type SettleForm, settleForm } from "./settle-form";
import type { SettleKey } from "./settle-keys";
import { type Shown, flowWords, showStatement, summary } from "./statement-view";

const [LOOK, WRITE] = ["See what will be written", "Write the settlement"];
const SHEET_PICTURE = { drawn: 560, larger: 1.2 };

/** A lot, from its assays and its outturn to the statement that the client gets. */
export function settlePage(host: PaneHost, leave: () => void): Page {
  const { port } = host;
  const notation = userNotation(host);
  const draft = draftOf(port);
  const heading = h("h1", { tabindex: -1 }, "Settle a lot");
  const body = h("div", { class: "lw-body" }, h("p", { class: "lw-about" }, "Looking through the workbook …"));
  const figures = h("section", { class: "lw-estimate", "aria-label": "The statement" });
  const result = h("output", { class: "lw-result" });
  const go = h("button", { type: "submit", class: "lw-primary" }, LOOK);
  const bar = h("div", { class: "lw-bar", hidden: true }, result, h("div", { class: "lw-actions" }, go));
  const form = h("form", { novalidate: true, onsubmit: (event) => void (event.preventDefault(), isReviewed ? writing.write() : writing.attempt(look)) }, body, bar);
  const picker = lotPicker({ label: "Which lot", beside: "those that are not settled first", other: "Another lot" }, (lot) => choose(lot));
  const writing = review(port, notation, draft, written);
  let session: Session | null = null;
  let fields: SettleForm | null = null;
  let newSheet: string | null = null;
  let isReviewed = false;
  let run = 0;
  let isClosed = false;
  let unfollow = (): void => undefined;

  async function begin(): Promise<void> {
    try {
      session = await readSession(port);
      if (isClosed) return;
      fields = settleForm(session.shop, (key) => changed(key));
      unfollow();
      unfollow = followSelection(port, (selected) => fields?.offer(typeof selected === "string" ? null : selected));
      await showLot();
    } catch (thrown) {
      fill(body, h("p", { class: "lw-fault" }, thrown instanceof Error ? thrown.message : String(thrown)), h("div", { class: "lw-actions" }, h("button", { type: "button", onclick: () => void begin() }, "Look again")));
    }
  }

  const chosenLot = (): ListedLot | null => {
    const { lot } = draft;
    const named = (session?.lots ?? []).filter((one) => lot !== null && nameOf(one) === lot.number);
    return named.find(({ row }) => row === lot?.row) ?? named[0] ?? null;
  };
  async function showLot(): Promise<void> {
    if (!session || !fields) return;
    const lot = chosenLot();
    picker.show(session.lots, session.noLots, lot);
    bar.hidden = lot === null;
    if (!lot) return fill(body, picker.element, writing.element);
    fill(body, blanks(session.shop), picker.element, ...fields.parts, figures, writing.element);
    fields.show(prefills(session, lot, notation), draft.entered);
    await compute();
  }
  function choose(lot: ListedLot | null): void {
    takeLot(draft, lot && { number: nameOf(lot), row: lot.row });
    void writing.attempt(showLot).then(() => (lot ? fields?.focus("ours") : picker.element.querySelector("input")?.focus()));
  }
  function changed(key: SettleKey): void {
    if (fields) draft.entered.set(key, fields.read(key));
    void writing.attempt(compute);
  }

  async function compute(): Promise<ReadSettlement | null> {
    const [mine, form_, known, lot] = [++run, fields, session, chosenLot()];
    if (!form_ || !known || !lot) return null;
    closeReview();
    const quote = quotedOf(lot, known.sheets)?.quote ?? null;
    const read = await readSettlement((key) => form_.read(key), known.uncertainty, quote, notation, port);
    if (mine !== run || isClosed) return null;
    form_.say(read.faults, read.result ? remarksOf(read.result, known, form_.read("number").text) : new Map());
    if (read.result) {
      showStatement(figures, read.result, read.paper?.quoted?.payout ?? null, currencyOf(known.shop), notation);
      fill(result, ...summary(read.result, currencyOf(known.shop), notation));
    } else {
      fill(figures);
      fill(result, h("span", { class: "lw-waiting" }, read.awaits ?? (read.faults.size > 0 ? "Something above cannot be reckoned with" : `Still needed: ${read.needs.join(", ").toLowerCase()}`)));
    }
    return read;
  }

  async function look(): Promise<void> {
    const read = await compute();
    const lot = chosenLot();
    if (!read || !fields || !session || !lot || !session.place) return;
    const [wrong] = read.faults.keys();
    if (wrong) return fields.focus(wrong);
    if (read.awaits !== null) return fields.focus("umpire");
    if (!read.result || !read.paper) return fields.focus((["weight", "ours", "price", "payable"] as const).find((key) => fields?.read(key).text === "") ?? "ours");
    const { settling } = read.result;
    const name = paperSheetName("Statement", read.paper.number, (await port.sheets()).map(({ name: taken }) => taken));
    const input: StatementInput = { ...settling, ...read.paper, shop: letterhead(session.shop), lot: lot.value("lot") ?? `row ${lot.row}`, ...scaleOf(lot), ...(await pictureOf(read.result)) };
    const statement = statementSheet(input, name);
    const { place } = session;
    const row = settledRow(place.sheet, place, lot, toldOf(read.result, session.lots), { sheet: name, payout: statement.cells.payout });
    const differs = await payoutDiffers(place, lot, row, read.result.figures.payout);
    const cells = differs !== null && row.payoutInstead ? [...row.cells, row.payoutInstead] : row.cells;
    const abouts = new Map(cells.map(({ write, heading: column, why }) => [`${write.sheet}!${write.cell}`, { heading: column, why }]));
    newSheet = name;
    isReviewed = await writing.show([statement.sheet, ...cells.map(({ write }) => write)], {
      action: null,
      written: `Lot ${nameOf(lot)} is settled on the sheet ‘${name}’`,
      about: (sheet, cell) => abouts.get(`${sheet}!${cell}`) ?? null,
    });
    if (!isReviewed) return;
    go.textContent = WRITE;
    const remarks = differs === null ? row.remarks : [...row.remarks, differs];
    if (remarks.length > 0) writing.say(remarks.join(". "));
  }
  /** The list's own formula may know other terms than those above. */
  async function payoutDiffers({ list, matches }: LotPlace, lot: ListedLot, { cells, payoutInstead }: SettledRow, payout: number): Promise<string | null> {
    const column = matchOf(matches, "payout")?.column;
    if (!column) return null;
    const cell = `${column.letter}${lot.row}`;
    const own = await previewed({ sheet: list.sheet, row: lot.row, writes: cells.map(({ write }) => write) }, cell, port);
    if (own === null || Math.round(own * 100) === Math.round(payout * 100)) return null;
    const money = (amount: number): string => moneyText(amount, currencyOf(session?.shop ?? {}), notation);
    const way = payoutInstead ? `, or tick ${cell} to take the statement’s payout` : "";
    return `${cell} (${column.heading}) will show ${money(own)} by its own formula, and the statement ${money(payout)}: the terms differ, so look at them before you write${way}`;
  }
  /** False where nothing was shown. */
  function closeReview(): boolean {
    isReviewed = false;
    go.textContent = LOOK;
    return writing.close();
  }

  /** Where this browser cannot draw, the statement goes without a picture. */
  async function pictureOf({ figures: { flow } }: Shown): Promise<Pick<StatementInput, "picture">> {
    const drawing = flow && flowPicture(flow, flowWords(notation), sheetColours, SHEET_PICTURE.drawn);
    if (!drawing) return {};
    const { width, height, alt } = drawing;
    try {
      const { larger } = SHEET_PICTURE;
      return { picture: { png: await pngOf(drawingText(drawing), width, height, 3), width: Math.round(width * larger), height: Math.round(height * larger), alt } };
    } catch {
      return {};
    }
  }

  async function written(isWritten: boolean): Promise<void> {
    if (isClosed) return;
    if (isWritten && newSheet !== null) await port.select({ sheet: newSheet, range: "A1" });
    draft.entered.delete("number");
    session = await readSession(port);
    if (!isClosed) await showLot();
  }

  void begin();
  return {
    element: h("div", { class: "lw-page lw-quote lw-settle" }, h("header", { class: "lw-top" }, h("button", { type: "button", class: "lw-back", onclick: leave }, "All tasks"), heading), form),
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

/** What the scale showed, for the statement. */
function scaleOf(lot: ListedLot): Pick<StatementInput, "scale"> {
  const [gross, tare] = [lot.weight("gross"), lot.weight("tare")];
  return gross && tare ? { scale: { gross, tare } } : {};
}

/** What the lot's row takes from the settlement. */
function toldOf({ settling, figures }: Shown, lots: readonly ListedLot[]): LotInput {
  const { ours, theirs } = settling.assays;
  const basis = ours !== undefined && theirs !== undefined ? "agreed" : ours !== undefined ? "our assay" : "the client's assay";
  return {
    fineness: { value: Number(figures.fineness.toPrecision(12)) },
    finenessBasis: { value: basis },
    ...(settling.found.outturn ? { outturn: settling.found.outturn, status: { value: settledWord(lots) } } : {}),
  };
}
