import { _, blank, type Cell, cautionBlock, computed, heading, input, note, noteBlock, numberHeading, section, type Sheet, text, title, total, totalLabel } from "../write/book";

interface Item {
  readonly name: string;
  readonly measure: string;
  readonly used: Cell;
  readonly price: Cell;
  /** How much of its measure one of it lasts; what has no life is used up. */
  readonly life?: number;
}

const items: readonly Item[] = [
  { name: "Nitric acid, 68 %", measure: "gal", used: input(16.5, "weight"), price: computed("=AcidPrice", "money") },
  { name: "Copper", measure: "lb", used: computed("=Lots!K13", "weight"), price: computed("=CopperPrice", "money") },
  { name: "Distilled water", measure: "gal", used: input(45, "weight"), price: input(1.1, "money") },
  { name: "Salt, for the test", measure: "lb", used: input(2, "weight"), price: input(0.9, "money") },
  { name: "Filter papers", measure: "sheet", used: input(16, "weight"), price: input(2.1, "money") },
  { name: "Soda ash", measure: "lb", used: input(36, "weight"), price: input(0.65, "money") },
  { name: "Spent liquor, hauled", measure: "gal", used: input(38, "weight"), price: computed("=HaulPrice", "money") },
  { name: "Power", measure: "kWh", used: input(210, "weight"), price: computed("=PowerPrice", "money") },
  { name: "Labour", measure: "hour", used: input(38, "weight"), price: computed("=LabourPrice", "money") },
  { name: "Crucible", measure: "heat", used: input(9, "weight"), price: input(165, "money"), life: 40 },
  { name: "Bar mould", measure: "pour", used: input(24, "weight"), price: input(95, "money"), life: 500 },
  { name: "Air mixer", measure: "hour", used: input(66, "weight"), price: input(480, "money"), life: 2500 },
  { name: "Filter cloth", measure: "lb of silver", used: computed('=LOT.WEIGHT(Lots!M13,"ozt","lb")', "weight"), price: input(58, "money"), life: 400 },
  { name: "Scrubber packing", measure: "hour", used: input(66, "weight"), price: input(340, "money"), life: 600 },
];

const FIRST = 5;
const LAST = FIRST + items.length - 1;
const LAST_USED_UP = FIRST + items.filter(({ life }) => life === undefined).length - 1;

const row = ({ name, measure, used, price, life }: Item, i: number): readonly [number, readonly Cell[]] => {
  const r = FIRST + i;
  return [
    r,
    [
      text(name),
      text(measure),
      used,
      price,
      life === undefined ? _ : input(life, "weight"),
      computed(life === undefined ? `=ROUND(C${r}*D${r},2)` : `=ROUND(LOT.WEARCOST(D${r},E${r},C${r}),2)`, "money"),
      computed(`=F${r}/$B$24`, "moneyPerOunce"),
      computed(`=F${r}/$F$19`, "share"),
    ],
  ];
};

export const consumables: Sheet = {
  name: "Consumables",
  widths: [34, 20, 12, 13, 13, 13, 12, 13],
  page: "portrait",
  cursor: "C5",
  headingRow: 4,
  merged: ["A2:H2", "A21:H21"],
  heights: { 1: 26, 2: 30, 4: 33, 21: 30 },
  rows: {
    1: [title("What the month used up and wore down")],
    2: [noteBlock("What is used up costs quantity times price. What wears down costs the share of its life that the month took: a crucible lasts so many heats, a mixer so many hours. Every figure is invented.")],
    4: [
      heading("Item"),
      heading("Measured in"),
      numberHeading("Used"),
      numberHeading("Price each, $"),
      numberHeading("Life of one"),
      numberHeading("Cost, $"),
      numberHeading("$ per ozt"),
      numberHeading("Share of cost"),
    ],
    ...Object.fromEntries(items.map(row)),
    [LAST + 1]: [totalLabel("Month"), ...Array.from({ length: 4 }, () => blank("totalLabel")), total(`=SUM(F${FIRST}:F${LAST})`, "money"), total("=F19/$B$24", "moneyPerOunce"), total(`=SUM(H${FIRST}:H${LAST})`, "share")],
    21: [cautionBlock("Nitric acid, silver nitrate and spent liquor injure, their fume is toxic, and hot metal burns. The quantities are a record of purchases and no procedure; local fire, air, water and waste codes and licensed practice decide.")],

    23: [section("Per troy ounce")],
    24: [text("Fine silver received, ozt"), computed("=Lots!J13", "ozt")],
    25: [text("Cost per ozt, $"), computed("=F19/B24", "moneyPerOunce")],
    26: [text("Share of the silver price"), computed("=B25/SilverPrice", "share")],
    27: [text("Used up, in one formula, $"), computed(`=LOT.LOTCOST(C${FIRST}:C${LAST_USED_UP},D${FIRST}:D${LAST_USED_UP})`, "money"), _, note(`=LOT.LOTCOST(C${FIRST}:C${LAST_USED_UP},D${FIRST}:D${LAST_USED_UP}), rounded once at the end`)],

    29: [section("What the month leaves, $")],
    30: [text("Silver, at the recovery so far"), computed("=ROUND(Lots!J13*Lots!N13*SilverPrice,2)", "money")],
    31: [text("Payouts to clients"), computed("=-Lots!Q13", "money")],
    32: [text("Cost of the month"), computed("=-F19", "money")],
    33: [totalLabel("Left to the shop"), total("=SUM(B30:B32)", "money")],
  },
  chart: { title: "Cost per troy ounce, $", over: "A35:H55", categories: `A${FIRST}:A${LAST}`, values: `G${FIRST}:G${LAST}`, format: "money" },
};
