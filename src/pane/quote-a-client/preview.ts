import type { PriceCase, QuoteFigures } from "../../lots/quote-figures";
import type { Offer } from "../../lots/quote";
import { type Child, fill, h } from "../dom";
import { paneColours } from "../picture/colours";
import { drawingElement } from "../picture/drawing";
import type { Notation } from "../notation";
import { moneyText, weightText } from "../money-text";
import { type RangeWords, rangePicture } from "./range-picture";

export interface Shown {
  readonly offer: Offer;
  readonly figures: QuoteFigures;
}

const PANE_WIDTH = 272;

/** What the lot would pay, as a table and as a picture. */
export function showPreview(into: HTMLElement, { offer, figures }: Shown, currency: string | undefined, notation: Notation): void {
  const parts = offer.payment === "either" ? [false, true] : [offer.payment === "metal"];
  const money = currency === undefined ? "Payout" : `Payout in ${currency}`;
  fill(into, h("h2", {}, "What it would pay"), ...parts.flatMap((isMetal) => part(isMetal ? `Fine metal in ${offer.metalUnit}` : money, figures, isMetal, rangeWords(offer, isMetal, currency, notation))));
}

/** How figures are written, in the pane and in the picture of the sheet. */
export function rangeWords({ metalUnit }: Offer, isMetal: boolean, currency: string | undefined, notation: Pick<Notation, "decimal">): RangeWords {
  return {
    of: isMetal ? `fine metal given back, ${metalUnit}` : "payout",
    shown: (value) => (isMetal ? weightText(value, metalUnit, notation) : moneyText(value, currency, notation)),
    bare: (value) => (isMetal ? weightText(value, metalUnit, notation) : moneyText(value, undefined, notation)),
    price: (price) => moneyText(price, currency, notation, decimals(price)),
  };
}

/** The likely figure and the whole range, in a line. */
export function summary({ offer, figures }: Shown, currency: string | undefined, notation: Notation): Child[] {
  const isMetal = offer.payment === "metal";
  const { shown, of } = rangeWords(offer, isMetal, currency, notation);
  const all = [figures.down, figures.quoted, figures.up].flatMap((one) => (isMetal ? one.metal : one.payouts)).filter((value) => value !== null);
  const likely = isMetal ? figures.quoted.metal[1] : figures.quoted.payouts[1];
  if (likely === null) return [h("span", { class: "lw-of" }, "The charges leave no metal to give back")];
  const range = all.length > 1 ? `${shown(Math.min(...all))} to ${shown(Math.max(...all))}` : "";
  return [h("span", { class: "lw-of" }, `Likely ${of}`), h("span", { class: "lw-value" }, shown(likely)), h("span", { class: "lw-unit" }, ` ${range}`)];
}

function part(caption: string, figures: QuoteFigures, isMetal: boolean, words: RangeWords): HTMLElement[] {
  const row = (label: string, one: PriceCase, look?: string): HTMLElement =>
    h("tr", { class: look }, h("th", { scope: "row" }, label, h("span", { class: "lw-of" }, words.price(one.price))), ...(isMetal ? one.metal : one.payouts).map((value) => h("td", {}, value === null ? "none" : words.bare(value))));
  const drawing = rangePicture(figures, isMetal, words, paneColours, PANE_WIDTH);
  return [
    h(
      "div",
      { class: "lw-scroll", role: "group", "aria-label": caption, tabindex: 0 },
      h(
        "table",
        { class: "lw-range" },
        h("caption", {}, caption),
        h("thead", {}, h("tr", {}, h("td", {}), ...["Low", "Likely", "High"].map((title) => h("th", { scope: "col" }, title)))),
        h("tbody", {}, row("Price down", figures.down), row("As quoted", figures.quoted, "lw-quoted"), row("Price up", figures.up)),
      ),
    ),
    ...(drawing ? [drawingElement(drawing)] : []),
  ];
}

const decimals = (price: number): number => Math.min(4, Math.max(2, /\.(\d+)$/.exec(String(Number(price.toFixed(4))))?.[1]?.length ?? 0));
