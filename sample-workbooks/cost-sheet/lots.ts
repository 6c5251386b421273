import { _, blank, type Cell, caution, computed, heading, input, inputWord, note, numberHeading, section, type Sheet, text, title, total, totalLabel, unitHeading } from "../write/book";
import { cautionOf } from "./told";

interface Lot {
  readonly client: string;
  readonly came: number;
  readonly goods: string;
  readonly gross: number;
  readonly tare: number;
  readonly unit: string;
  readonly fineness: Cell;
  /** In troy ounces; the lot is still in work where it is missing. */
  readonly outturn?: number;
  readonly payable: number;
  readonly charges?: string;
}

const FIRST = 5;
/** 1 March 2026, as a spreadsheet counts days. */
const FIRST_OF_MONTH = 46082;
const march = (day: number): number => FIRST_OF_MONTH + day - 1;

const month: readonly Lot[] = [
  { client: "C-07", came: march(2), goods: "Flatware", gross: 18.6, tare: 1.1, unit: "lb", fineness: inputWord(925), outturn: 233.412, payable: 0.95 },
  { client: "C-12", came: march(4), goods: "Casting sprues", gross: 4210, tare: 210, unit: "g", fineness: inputWord("92.5%"), outturn: 117.968, payable: 0.95 },
  { client: "C-03", came: march(6), goods: "Coin, mixed dates", gross: 150.4, tare: 0.4, unit: "ozt", fineness: inputWord("coin"), outturn: 133.706, payable: 0.96 },
  { client: "C-15", came: march(10), goods: "Hollowware, cut up", gross: 9.85, tare: 0.35, unit: "kg", fineness: inputWord("sterling"), outturn: 278.241, payable: 0.95 },
  { client: "C-07", came: march(12), goods: "Forks, marked 830", gross: 96.5, tare: 4.5, unit: "ozav", fineness: inputWord("830‰"), outturn: 68.557, payable: 0.94 },
  { client: "C-21", came: march(17), goods: "Bench filings", gross: 1480, tare: 30, unit: "dwt", fineness: inputWord(0.895, "share"), outturn: 63.602, payable: 0.93 },
  { client: "C-03", came: march(23), goods: "Trays, marked 800", gross: 12.4, tare: 0.4, unit: "lb", fineness: inputWord("800/1000"), payable: 0.94 },
  { client: "C-18", came: march(25), goods: "Melted bars, assayed", gross: 14.72, tare: 0.02, unit: "kg", fineness: computed("=Settlement!B11", "ppt", "computedWord"), outturn: 427.105, payable: 0.96, charges: "=LotCharge+TreatmentCharge*G12" },
];
const LAST = FIRST + month.length - 1;

const row = (lot: Lot, i: number): readonly [number, readonly Cell[]] => {
  const r = FIRST + i;
  return [
    r,
    [
      text(`26-03-${String(i + 1).padStart(2, "0")}`),
      text(lot.client),
      inputWord(lot.came, "date"),
      text(lot.goods),
      input(lot.gross, "weight"),
      input(lot.tare, "weight"),
      computed(`=E${r}-F${r}`, "weight"),
      inputWord(lot.unit),
      lot.fineness,
      computed(`=LOT.FINEWEIGHT(G${r},H${r},I${r})`, "ozt"),
      computed(`=LOT.COPPER(J${r},"ozt",CopperAllowance,0,"lb")`, "weight"),
      computed(`=LOT.COPPERBARS(K${r},"lb",CopperBar,"lb",BarStub)`, "count"),
      lot.outturn === undefined ? blank("input") : input(lot.outturn, "ozt"),
      computed(`=IF(M${r}="","",LOT.RECOVERY(M${r},J${r}))`, "share"),
      input(lot.payable, "share"),
      computed(lot.charges ?? "=LotCharge", "money"),
      computed(`=LOT.PAYOUT(J${r},"ozt",SilverPrice,O${r},RefiningCharge,P${r})`, "money"),
    ],
  ];
};

const sum = (column: string): string => `=SUM(${column}${FIRST}:${column}${LAST})`;

export const lots: Sheet = {
  name: "Lots",
  widths: [12, 9, 14, 24, 13, 10, 12, 9, 13, 14, 12, 12, 14, 13, 11, 12, 14],
  page: "landscape",
  cursor: "I5",
  headingRow: 4,
  heights: { 1: 26, 4: 48 },
  lists: [{ range: `H${FIRST}:H${LAST}`, choices: ["kg", "g", "lb", "ozt", "ozav", "dwt", "gr"] }],
  numberTexts: `I${FIRST}:I${LAST}`,
  rows: {
    1: [title("Lots of March 2026")],
    2: [note("From weigh-in to payout. Lots and clients are invented. A fineness may be written as it stands on the paper: 925, 92.5%, coin, 830‰, 800/1000.")],
    4: [
      heading("Lot"),
      heading("Client"),
      unitHeading("Weighed in"),
      heading("Goods"),
      numberHeading("Gross, in unit"),
      numberHeading("Tare, in unit"),
      numberHeading("Net, in unit"),
      unitHeading("Unit"),
      unitHeading("Fineness as written"),
      numberHeading("Fine weight, ozt"),
      numberHeading("Copper for the drop, lb"),
      numberHeading("Copper bars to hang"),
      numberHeading("Outturn, ozt"),
      numberHeading("Recovery"),
      numberHeading("Payable"),
      numberHeading("Charges on the lot, $"),
      numberHeading("Payout, $"),
    ],
    ...Object.fromEntries(month.map(row)),
    [LAST + 1]: [
      totalLabel("Month"),
      ...Array.from({ length: 8 }, () => blank("totalLabel")),
      total(sum("J"), "ozt"),
      total(sum("K"), "weight"),
      total(sum("L"), "count"),
      total(sum("M"), "ozt"),
      total(`=LOT.RECOVERY(M13,SUMIF(M${FIRST}:M${LAST},">0",J${FIRST}:J${LAST}))`, "share"),
      blank("totalLabel"),
      total(sum("P"), "money"),
      total(sum("Q"), "money"),
    ],
    14: [note("Lot 26-03-07 is still in work: it has no outturn, and the recovery of the month leaves it out. Every lot is paid on the fine weight that was agreed at weigh-in.")],
    16: [caution(`Copper: ${cautionOf("COPPER")}`)],

    18: [section("Metal balance of the month"), _, _, _, numberHeading("Fine, ozt")],
    19: [text("In the shop on 1 March"), _, _, _, input(61.25, "ozt"), _, note("Bar stubs, filter papers, cell and two bars, as counted.")],
    20: [text("Received"), _, _, _, computed("=J13", "ozt"), _, note("Fine weight of the lots above.")],
    21: [text("Shipped"), _, _, _, input(1240, "ozt"), _, note("Fine bars sent out, by the bar list.")],
    22: [text("In the shop on 31 March"), _, _, _, input(297.2, "ozt"), _, note("Lot 26-03-07 in work, and what was counted again.")],
    23: [totalLabel("Unaccounted"), blank("totalLabel"), blank("totalLabel"), blank("totalLabel"), total("=LOT.UNACCOUNTED(E19,E20,E21,E22)", "ozt"), _, note("Opening + received − shipped − closing. Above zero, metal is missing.")],
  },
};
