import { dayNumber } from "../../src/lots/calendar";
import { type Cell, blank, computed, heading, input, inputWord, note, numberHeading, type Sheet, text, title } from "../write/book";

const FIRST = 5;
const HEADINGS = ["Lot", "Date in", "Client", "Goods", "Net", "Unit", "Fineness", "Known from", "Fine weight, ozt", "Payout, $", "Status"];
const NUMBERS = new Set([4, 8, 9]);

const offered: readonly (readonly [client: string, day: number, goods: string, net: number, unit: string, fineness: number | string, basis: string])[] = [
  ["C-07", 2, "Flatware", 17.5, "lb", 925, "the stamp"],
  ["C-12", 3, "Casting sprues", 4000, "g", "92.5%", "our assay"],
  ["C-03", 4, "Coin, mixed dates", 150, "ozt", "coin", "the stamp"],
  ["C-18", 5, "Melted bars", 14.7, "kg", "91.4%", "our assay"],
  ["C-07", 6, "Forks, marked 830", 92, "ozav", "830‰", "the stamp"],
  ["C-21", 9, "Bench filings", 4.2, "kg", 895, "the client's assay"],
  ["C-15", 10, "Hollowware", 9.5, "kg", "sterling", "the stamp"],
  ["C-03", 11, "Trays, marked 800", 12, "lb", "800/1000", "the stamp"],
];

export const lots: Sheet = {
  name: "Lots",
  widths: [11, 12, 9, 20, 10, 8, 11, 18, 16, 12, 11],
  page: "landscape",
  cursor: `A${FIRST}`,
  headingRow: FIRST - 1,
  rows: {
    1: [title("Lots offered in March 2026")],
    2: [note("Shop, clients, lots and prices are invented. Payouts are reckoned at 28 $ per ozt, 95 % payable, 0.50 $ refining per ozt and 25 $ a lot.")],
    [FIRST - 1]: HEADINGS.map((words, i) => (NUMBERS.has(i) ? numberHeading(words) : heading(words))),
    ...Object.fromEntries(
      offered.map(([client, day, goods, net, unit, fineness, basis], i): readonly [number, readonly Cell[]] => {
        const r = FIRST + i;
        const lot = [text(`26-03-${String(i + 1).padStart(2, "0")}`), inputWord(dayNumber({ year: 2026, month: 3, day }), "date"), text(client), text(goods), input(net, "weight"), inputWord(unit), inputWord(fineness), inputWord(basis)];
        return [r, [...lot, computed(`=LOT.FINEWEIGHT(E${r},F${r},G${r})`, "ozt"), computed(`=LOT.PAYOUT(I${r},"ozt",28,0.95,0.5,25)`, "money"), blank("input")]];
      }),
    ),
  },
};
