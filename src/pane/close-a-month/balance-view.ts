import type { MonthBasis } from "../../month/month-basis";
import type { Figures } from "../../month/figures";
import { READINGS } from "../../month/readings";
import { workingView } from "../all-functions/working-view";
import { fill, h } from "../dom";
import type { Notation } from "../notation";

export interface BalanceView {
  readonly element: HTMLElement;
  show(figures: Figures, basis: MonthBasis): void;
  /** What is still needed before there is a balance. */
  wait(sentences: readonly string[]): void;
}

const REMARKS = 8;

/** The month's balance as it stands, its verdict in plain words, and its working. */
export function balanceView(notation: Notation): BalanceView {
  const body = h("div", {});
  const working = workingView();
  const said = h("p", { class: "lw-unseen", role: "status" });
  return {
    element: h("section", { class: "lw-balance", "aria-label": "Balance" }, h("h2", {}, "Balance, fine troy ounces"), body, working.element, said),
    show(figures, basis) {
      const { opening, received, shipped, closing, unaccounted, expanded, share, verdict, answer } = figures;
      const fine = (value: number): string => shownFine(value, notation);
      const row = (label: string, value: string, beside: string, className?: string): HTMLElement => h("tr", { class: className }, h("th", { scope: "row" }, label), h("td", { class: "lw-number" }, value), h("td", { class: "lw-number" }, beside));
      const side = (label: string, { fine: value, uncertainty }: Figures["opening"]): HTMLElement => row(label, fine(value), `± ${fine(uncertainty)}`);
      fill(
        body,
        h(
          "table",
          {},
          h("tbody", {}, side("Opening", opening), side("Received", received), side("Shipped", shipped), side("Closing", closing), row("Unaccounted", fine(unaccounted), typeof share === "number" ? percent(share, notation) : "", "lw-sum"), row("Explained up to", fine(expanded), "")),
        ),
        h("p", { class: `lw-verdict lw-verdict-${verdict.replaceAll(" ", "-")}` }, verdict),
        h("p", {}, READINGS[verdict].meaning),
        h("p", {}, h("strong", {}, "Look first at: "), READINGS[verdict].lookFirst),
        basis.inProcess.length === 0 ? null : h("p", { class: "lw-about" }, `${lots(basis.inProcess.length)} still in process, ${fine(basis.inProcess.reduce((sum, { fine: of }) => sum + Number(of.value()), 0))} ozt fine: it is in the closing only as far as you count it.`),
        remarks(basis.remarks),
      );
      said.textContent = `${verdict}: ${fine(unaccounted)} ozt unaccounted, explained up to ${fine(expanded)}`;
      working.show(answer.working());
    },
    wait(sentences) {
      working.show(null);
      said.textContent = "";
      fill(body, h("ul", {}, ...sentences.map((sentence) => h("li", {}, sentence))));
    },
  };
}

function remarks(all: readonly string[]): HTMLElement | null {
  if (all.length === 0) return null;
  const more = all.length - REMARKS;
  return h(
    "details",
    { class: "lw-caution" },
    h("summary", {}, `${all.length} ${all.length === 1 ? "row of the list is" : "rows of the list are"} not counted`),
    h("ul", {}, ...all.slice(0, REMARKS).map((remark) => h("li", {}, remark)), more > 0 ? h("li", {}, `and ${more} more`) : null),
  );
}

const lots = (count: number): string => (count === 1 ? "1 lot is" : `${count} lots are`);

export const shownFine = (value: number, { decimal }: Notation): string => value.toFixed(3).replace(/^-(?=0\.000$)/, "").replace("-", "−").replace(".", decimal);

const percent = (share: number, { decimal }: Notation): string => `${(share * 100).toFixed(2).replace("-", "−").replace(".", decimal)} %`;
