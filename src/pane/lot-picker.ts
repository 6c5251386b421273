import type { ListedLot } from "../lots/listed-lot";
import { fill, freshId, h } from "./dom";

export interface LotPicker {
  readonly element: HTMLElement;
  /** Shows the lots to choose from, or the one that was chosen. */
  show(lots: readonly ListedLot[], noLots: string | null, chosen: ListedLot | null): void;
}

const SHOWN = 6;

/** A lot of the list, found by anything that its row says, or none. */
export function lotPicker(words: { readonly label: string; readonly beside?: string; readonly other: string }, choose: (lot: ListedLot | null) => void): LotPicker {
  const [id, countId] = [freshId("field"), freshId("count")];
  let known: readonly ListedLot[] = [];
  const search = h("input", { type: "search", id, autocomplete: "off", spellcheck: "false", "aria-describedby": countId, oninput: () => list() });
  const count = h("p", { id: countId, class: "lw-about", "aria-live": "polite" });
  const found = h("ul", { class: "lw-lots", "aria-label": "Lots, the newest first" });
  const element = h("div", { class: "lw-lot-picker" });

  function list(): void {
    const words = search.value.toLowerCase().split(/\s+/).filter((word) => word !== "");
    const hits = known.filter((lot) => words.every((word) => lineOf(lot).toLowerCase().includes(word)));
    fill(found, ...hits.slice(0, SHOWN).map((lot) => h("li", {}, h("button", { type: "button", class: "lw-hit", onclick: () => choose(lot) }, h("span", { class: "lw-name" }, nameOf(lot)), h("span", { class: "lw-by" }, lineOf(lot, false))))));
    count.textContent = hits.length === 0 ? "No lot has these words" : hits.length > SHOWN ? `The newest ${SHOWN} of ${hits.length} lots` : "";
  }
  return {
    element,
    show(lots, noLots, chosen) {
      known = lots;
      if (chosen) {
        const other = h("button", { type: "button", class: "lw-quiet", onclick: () => choose(null) }, words.other);
        return fill(element, h("p", { tabindex: -1 }, h("strong", {}, `Lot ${nameOf(chosen)}`), ` ${lineOf(chosen, false)}`), other);
      }
      if (noLots !== null) return fill(element, h("p", { class: "lw-about" }, noLots));
      list();
      fill(element, h("div", { class: "lw-field" }, h("label", { for: id }, words.label, words.beside === undefined ? null : h("span", { class: "lw-optional" }, ` ${words.beside}`)), search, count), found);
    },
  };
}

export const nameOf = (lot: ListedLot): string => String(lot.value("lot") ?? `in row ${lot.row}`);

/** What the row says of the lot, in one line. */
function lineOf(lot: ListedLot, withNumber = true): string {
  const weight = lot.weight("net") ?? lot.weight("gross");
  const parts = [withNumber ? nameOf(lot) : null, lot.value("client"), lot.value("description"), weight && `${Number(weight.value.toPrecision(12))} ${weight.unit}`];
  return parts.filter((part) => part !== null && part !== "").map((part) => String(part).replace(/\s+/g, " ")).join(" · ");
}
