import { _, type Cell, computed, constant, heading, input, note, numberHeading, section, type Sheet, text, title, unit, unitHeading } from "../write/book";

const headings = (what: string, value: string, per: string): readonly Cell[] => [
  heading(what),
  numberHeading(value),
  unitHeading(per),
  heading("Name in formulas"),
  heading("Remark"),
];

const rows: Sheet["rows"] = {
  1: [title("Prices and terms")],
  2: [note("Every figure on this sheet is invented. Change one and every sheet follows, where Lotwright is installed.")],

  4: headings("Price of", "$", "per"),
  5: [text("Fine silver"), input(28, "money"), unit("troy ounce"), text("SilverPrice"), note("What a settlement is priced at.")],
  6: [text("Copper bar"), input(5.4, "money"), unit("lb"), text("CopperPrice")],
  7: [text("Nitric acid, 68 %"), input(24.5, "money"), unit("gal"), text("AcidPrice"), note("US gallons.")],
  8: [text("Power"), input(0.17, "money"), unit("kWh"), text("PowerPrice")],
  9: [text("Labour, both of us"), input(24, "money"), unit("hour"), text("LabourPrice")],
  10: [text("Licensed haul of spent liquor"), input(5.5, "money"), unit("gal"), text("HaulPrice")],

  12: [section("Terms")],
  13: headings("Charge", "$", "per"),
  14: [text("Refining charge"), input(0.95, "money"), unit("payable troy ounce"), text("RefiningCharge")],
  15: [text("Lot charge"), input(25, "money"), unit("lot"), text("LotCharge")],
  16: [text("Treatment charge"), input(1.1, "money"), unit("kg of net weight"), text("TreatmentCharge"), note("Agreed with C-18 alone: see the sheet Settlement.")],

  18: [section("The drop")],
  19: headings("Setting", "Value", "Unit"),
  20: [text("Copper beyond the reaction's need"), input(0.13, "share"), unit("of the copper"), text("CopperAllowance"), note("Makes one pound of copper for about three pounds of silver.")],
  21: [text("Weight of one copper bar"), input(2, "weight"), unit("lb"), text("CopperBar")],
  22: [text("Stub that a bar leaves"), input(0.15, "share"), unit("of the bar"), text("BarStub")],

  24: [section("The silver price in other units")],
  25: headings("Quantity", "Value", "Unit"),
  26: [text("One troy ounce"), constant(31.1034768, "constant"), unit("g"), text("GramsPerOunce"), note("Exact: 480 grains of 64.79891 mg.")],
  27: [text("Fine silver"), computed('=LOT.PRICE(SilverPrice,"ozt","g")', "price"), unit("$ per g"), _, note('=LOT.PRICE(SilverPrice,"ozt","g")')],
  28: [text("Fine silver"), computed('=LOT.PRICE(SilverPrice,"ozt","kg")', "money"), unit("$ per kg")],
  29: [text("Fine silver"), computed('=LOT.PRICE(SilverPrice,"ozt","lb")', "money"), unit("$ per lb")],
};

export const prices: Sheet = { name: "Prices", widths: [42, 15, 24, 24, 58], page: "landscape", cursor: "B5", heights: { 1: 26 }, rows };

/** What column D calls the cell beside it, the workbook calls it too. */
export const names: Readonly<Record<string, string>> = Object.fromEntries(
  Object.entries(rows).flatMap(([row, [, , , cell]]) => (cell?.kind === "text" && cell.look === "label" ? [[cell.text, `Prices!$B$${row}`]] : [])),
);
