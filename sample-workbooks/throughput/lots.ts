import { type Cell, computed, heading, input, inputWord, note, numberHeading, type Sheet, text, title } from "../write/book";
import type { YearLot } from "./year";

const FIRST = 5;
const HEADINGS = ["Lot", "Date in", "Client", "Goods", "Gross, g", "Tare, g", "Net, g", "Fineness, ‰", "Fine weight, ozt", "Outturn, ozt", "Recovery", "Price, $ per ozt", "Payable", "Payout, $", "Status"];
const WORDS = new Set([0, 1, 2, 3, 14]);

/** The year's lots, from weigh-in to payout. */
export const lotsSheet = (lots: readonly YearLot[]): Sheet => ({
  name: "Lots",
  widths: [11, 12, 9, 20, 11, 9, 11, 12, 15, 13, 11, 15, 10, 13, 11],
  page: "landscape",
  cursor: `A${FIRST}`,
  headingRow: FIRST - 1,
  rows: {
    1: [title("Lots of 2025")],
    2: [note("Shop, clients, lots and prices are invented. Refining charge 0.50 $ per ozt, lot charge 25 $.")],
    [FIRST - 1]: HEADINGS.map((words, i) => (WORDS.has(i) ? heading(words) : numberHeading(words))),
    ...Object.fromEntries(lots.map(rowOf)),
  },
});

function rowOf(lot: YearLot, i: number): readonly [number, readonly Cell[]] {
  const r = FIRST + i;
  return [
    r,
    [
      text(lot.number),
      inputWord(lot.day, "date"),
      text(lot.client),
      text(lot.goods),
      input(lot.gross, "weight"),
      input(lot.tare, "weight"),
      computed(`=E${r}-F${r}`, "weight"),
      input(lot.fineness, "ppt"),
      computed(`=LOT.FINEWEIGHT(G${r},"g",H${r})`, "ozt"),
      input(lot.outturn, "ozt"),
      computed(`=IF(J${r}="","",LOT.RECOVERY(J${r},I${r}))`, "share"),
      input(lot.price, "money"),
      input(lot.payable, "share"),
      computed(`=LOT.PAYOUT(I${r},"ozt",L${r},M${r},0.5,25)`, "money"),
      text("settled"),
    ],
  ];
}
