import type { SettlementFigures } from "../../lots/settlement-figures";
import type { Settling } from "../../lots/settlement";
import { type Child, fill, h } from "../dom";
import { moneyText, weightText } from "../money-text";
import { type Notation, writtenNumber } from "../notation";
import { paneColours } from "../picture/colours";
import { drawingElement } from "../picture/drawing";
import { workingParts } from "../working-parts";
import { type FlowWords, flowPicture } from "./flow-picture";

export interface Shown {
  readonly settling: Settling;
  readonly figures: SettlementFigures;
}

const PANE_WIDTH = 272;

/** The statement as the client will get it, with what was quoted beside it, and where the silver went. */
export function showStatement(into: HTMLElement, { settling, figures }: Shown, quoted: number | null, currency: string | undefined, notation: Notation): void {
  const money = (amount: number): string => moneyText(amount, currency, notation);
  const number = (value: number, places: number): string => writtenNumber(Number(value.toFixed(places)), notation);
  const lines = figures.lines.filter(([label, amount]) => label === "Payout" || label === "Metal value" || amount !== 0);
  const rows = lines.map(([label, amount, unit]) => [label === "Payout" && figures.payout < 0 ? "The client owes" : label, unit === "money" ? money(amount) : unit === "per ozt" ? `${moneyText(amount, currency, notation, 4).replace(/0{1,2}$/, "")} per ozt` : unit === "‰" ? `${number(amount, 2)} ‰` : `${weightText(amount, unit, notation)} ${unit}`, label === "Payout"] as const);
  const why = (title: string, parts: HTMLElement): HTMLElement => h("details", {}, h("summary", {}, title), parts);
  fill(
    into,
    h("h2", {}, "The statement"),
    h(
      "table",
      { class: "lw-statement" },
      h("tbody", {}, ...rows.map(([label, shown, isTotal]) => h("tr", { class: isTotal ? "lw-total" : undefined }, h("th", { scope: "row" }, label), h("td", {}, shown))), ...(figures.metal === null ? [] : [h("tr", { class: "lw-total" }, h("th", { scope: "row" }, "Fine metal returned"), h("td", {}, `${weightText(figures.metal, settling.metalUnit, notation)} ${settling.metalUnit}`))]), ...(quoted === null ? [] : [h("tr", {}, h("th", { scope: "row" }, "Quoted"), h("td", {}, money(quoted))), h("tr", {}, h("th", { scope: "row" }, "Settled less quoted"), h("td", {}, money(Math.round((figures.payout - quoted) * 100) / 100)))])),
    ),
    why("Why this fineness", workingParts(figures.answers.fineness.working().lines)),
    why("Why this payout", workingParts(figures.answers.settlement.working().lines)),
    h("h2", {}, "Where the silver went"),
    ...flowParts(figures, notation),
  );
}

export const flowWords = (notation: Pick<Notation, "decimal">): FlowWords => ({
  weight: (ozt) => `${weightText(ozt, "ozt", notation).replace("-", "−")} ozt`,
  share: (share) => `${(share * 100).toFixed(2).replace(".", notation.decimal).replace("-", "−")} %`,
});

function flowParts({ flow, recovery, recoveryUncertainty }: SettlementFigures, notation: Notation): Child[] {
  if (!flow || recovery === null) return [h("p", { class: "lw-about" }, "Write the crystal weighed out, and it is drawn here.")];
  const words = flowWords(notation);
  const drawing = flowPicture(flow, words, paneColours, PANE_WIDTH);
  const range = recoveryUncertainty === null ? "" : ` ± ${words.share(recoveryUncertainty)} (k = 2)`;
  return [
    h("p", {}, "Recovery ", h("strong", {}, words.share(recovery)), range),
    ...(drawing ? [drawingElement(drawing)] : []),
    h(
      "table",
      { class: "lw-statement" },
      h("caption", { class: "lw-unseen" }, "Where the silver went"),
      h("tbody", {}, ...flow.filter(({ ozt, label }) => ozt !== 0 || label === "Unaccounted").map(({ label, ozt, share }) => h("tr", {}, h("th", { scope: "row" }, label), h("td", {}, words.weight(ozt)), h("td", {}, words.share(share))))),
    ),
  ];
}

/** The payout in a line. */
export function summary({ settling, figures }: Shown, currency: string | undefined, notation: Notation): Child[] {
  if (settling.payment === "metal" && figures.metal !== null) return [h("span", { class: "lw-of" }, "Metal to return"), h("span", { class: "lw-value" }, weightText(figures.metal, settling.metalUnit, notation)), h("span", { class: "lw-unit" }, ` ${settling.metalUnit}`)];
  return [h("span", { class: "lw-of" }, figures.payout < 0 ? "The client owes" : "Payout"), h("span", { class: "lw-value" }, moneyText(Math.abs(figures.payout), currency, notation)), h("span", { class: "lw-unit" }, ` at ${writtenNumber(Number(figures.fineness.toFixed(2)), notation)} ‰`)];
}
