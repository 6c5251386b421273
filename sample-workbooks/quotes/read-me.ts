import { note, section, type Sheet, text, title } from "../write/book";
import { release } from "../cost-sheet/told";

export const readMe: Sheet = {
  name: "Read me",
  widths: [104],
  page: "portrait",
  cursor: "A4",
  rows: {
    1: [title("Quillmere Silver: quotes of March 2026")],
    2: [note("An invented shop. Its lots, clients, terms and prices are invented too.")],
    3: [section("Try it here")],
    4: [text("1.  Look at sheet Quote Q-2026-001 and print it: it takes one page. Change its likely fineness, and every payout follows.")],
    5: [text("2.  Sheet Quote Q-2026-002 is paid in metal, with a treatment charge, a least deduction and everything per kilogram.")],
    6: [text("3.  Sheet Quote Q-2026-003 leaves the choice between money and metal to the client; its price was told per pound.")],
    7: [text("4.  In the pane, Quote a client: choose lot 26-03-07, and the quote begins with what the list and the shop say already.")],
    8: [text("5.  In the pane, Settle a lot: choose lot 26-03-01, and what was quoted stands beside what is settled.")],
    10: [note(`Written by ${release()}. =LOT.VERSION() in any cell says which release computes here.`)],
  },
};
