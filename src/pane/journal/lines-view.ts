import type { Journal, JournalLine } from "../../journal/journal";
import { type Cents, centsText } from "../../journal/money";
import { fill, h } from "../dom";
import type { Notation } from "../notation";

export interface LinesView {
  readonly element: HTMLElement;
  show(journal: Journal): void;
}

/** Settlements shown at first, and with each asking for more. */
const AT_ONCE = 12;

/** The totals, and the lines of each settlement under its day, lot and client. */
export function linesView(notation: Pick<Notation, "decimal">): LinesView {
  const element = h("div", { class: "lw-journal-lines" });
  const money = (amount: Cents): string => (amount === 0n ? "" : amountText(amount, notation));

  const lineRow = ({ account, debit, credit, memo }: JournalLine): HTMLElement =>
    h("tr", {}, h("th", { scope: "row" }, account, memo === "" ? null : h("span", { class: "lw-of" }, memo)), h("td", {}, money(debit)), h("td", {}, money(credit)));
  function body(lines: readonly JournalLine[]): HTMLElement {
    const [first] = lines;
    const title = first ? [first.date, first.lot, first.client].filter((part) => part !== "").join(" · ") : "";
    return h("tbody", {}, h("tr", { class: "lw-settlement" }, h("th", { colspan: 3, scope: "rowgroup" }, title)), ...lines.map(lineRow));
  }
  return {
    element,
    show({ settlements, debit, credit }) {
      const foot = h("tbody", {}, h("tr", { class: "lw-total" }, h("th", { scope: "row" }, "Total"), h("td", {}, amountText(debit, notation)), h("td", {}, amountText(credit, notation))));
      const head = h("thead", {}, h("tr", {}, h("th", { scope: "col" }, "Account"), h("th", { scope: "col" }, "Debit"), h("th", { scope: "col" }, "Credit")));
      const table = h("table", { class: "lw-journal" }, h("caption", { class: "lw-unseen" }, "Lines of the journal"), head, foot);
      const more = h("button", { type: "button", class: "lw-quiet", onclick: () => showMore() });
      let shown = 0;
      const showMore = (): void => {
        table.append(...settlements.slice(shown, shown + AT_ONCE).map(body));
        shown = Math.min(shown + AT_ONCE, settlements.length);
        more.hidden = shown === settlements.length;
        more.textContent = `Show ${Math.min(AT_ONCE, settlements.length - shown)} more of ${settlements.length}`;
      };
      showMore();
      fill(element, table, more);
    },
  };
}

/** 1,234.50, in the signs of the workbook. */
export function amountText(amount: Cents, { decimal }: Pick<Notation, "decimal">): string {
  const [whole = "", rest = ""] = centsText(amount).split(".");
  return `${whole.replace(/(?<=\d)(?=(?:\d{3})+$)/g, decimal === "." ? "," : "\u202f").replace("-", "−")}${decimal}${rest}`;
}
