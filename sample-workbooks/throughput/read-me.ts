import { note, section, type Sheet, text, title } from "../write/book";
import { release } from "../cost-sheet/told";
import { BIAS, LOSS, YEAR } from "./year";

const month = (number: number): string => `${YEAR}-${String(number).padStart(2, "0")}`;

export const readMe: Sheet = {
  name: "Read me",
  widths: [104],
  page: "portrait",
  cursor: "A4",
  rows: {
    1: [title("Quillmere Silver: the metal of a year")],
    2: [note("An invented shop. Its lots, clients, weights and prices are invented too.")],
    3: [section("Try it here")],
    4: [text(`1.  Look at sheet Month ${month(1)}: what came in, what went out, what was counted, and whether the gap is more than scales and assays explain.`)],
    5: [text(`2.  Sheet Month ${month(LOSS.month)}: metal is missing. ${LOSS.ounces} troy ounces of crystal were gone by the count.`)],
    6: [text(`3.  Sheet Month ${month(BIAS.month)}: a gap that looks like a loss, and is the weigh-in scale's. Put 0 for its bias in the row “bias at weigh-in”, and the verdict turns.`)],
    7: [text(`4.  Sheet Month ${month(12)} has the charts of the whole year: throughput, recovery with its limits, unaccounted metal running.`)],
    8: [text("5.  In the pane, Close a month: choose a month that has no sheet yet, count your own stock, and see the balance change as you type.")],
    9: [text("6.  In the pane, Share a copy: the same workbook for someone who has no Lotwright. The sample bookkeeper-copy was made so.")],
    11: [note("Where Lotwright is not installed, a spreadsheet shows the figures that are stored here; the bookkeeper-copy computes them too.")],
    12: [note(`Written by ${release()}. =LOT.VERSION() in any cell says which release computes here.`)],
  },
};
