import type { LotPlace } from "../lots/where";
import type { LotMetal } from "./lot-metal";
import type { Measured } from "./measured";
import type { StockLine } from "./month-input";
import { onSheet } from "./month-places";
import { FINE, INPUT, type Rows, SHARE, type SheetDraft, UNCERTAINTY, UNCERTAINTY_HEADING } from "./sheet-draft";
import { STOCK, stockTerms, whatOf } from "./stock-terms";

const HEADINGS = ["Fine (ozt)", UNCERTAINTY_HEADING, "Weight", "Unit", "Fineness", "Litres", "g in a litre", "Own uncertainty"];

/** The lines that were entered, with what they come to. */
export function stockBlock(draft: SheetDraft, title: string, lines: readonly StockLine[], measured: Measured, place: LotPlace, lotOf: (number: string) => LotMetal | string): Rows {
  draft.block(title, ["What"], HEADINGS);
  const rows: Rows = { first: draft.row, last: draft.row + Math.max(lines.length, 1) - 1 };
  if (lines.length === 0) {
    draft.text("A", "nothing");
    draft.put("B", 0, FINE);
    draft.put("C", 0, UNCERTAINTY);
    draft.row += 1;
  }
  for (const line of lines) {
    const terms = stockTerms(line, draft.row, measured, lotOf);
    if (typeof terms === "string") throw new Error(terms);
    draft.put("A", whatOf(line), { asText: true, ...INPUT });
    draft.put("B", `=${terms.fine.text}`, FINE);
    draft.put("C", `=${terms.uncertainty.text}`, UNCERTAINTY);
    entered(draft, line, place, lotOf);
    draft.row += 1;
  }
  return rows;
}

function entered(draft: SheetDraft, line: StockLine, place: LotPlace, lotOf: (number: string) => LotMetal | string): void {
  switch (line.kind) {
    case "metal":
      draft.put(STOCK.weight, line.weight, INPUT);
      draft.put(STOCK.unit, line.unit, { asText: true, align: "right", ...INPUT });
      draft.put(STOCK.fineness, line.fineness, { ...(typeof line.fineness === "string" ? { asText: true } : {}), align: "right", ...INPUT });
      if (line.uncertainty !== null) draft.put(STOCK.uncertainty, line.uncertainty, { ...SHARE, ...INPUT });
      return;
    case "liquor":
      draft.put(STOCK.litres, line.litres, INPUT);
      draft.put(STOCK.gramsPerLitre, line.gramsPerLitre, INPUT);
      draft.put(STOCK.uncertainty, line.uncertainty, { ...SHARE, ...INPUT });
      return;
    case "lot": {
      const metal = lotOf(line.lot);
      const at = typeof metal === "string" ? null : (metal.lot.cell("net") ?? metal.lot.cell("fineWeight"));
      if (at) draft.text(STOCK.weight, `as in ${onSheet(place.list.sheet, at.address)}`, "note");
    }
  }
}
