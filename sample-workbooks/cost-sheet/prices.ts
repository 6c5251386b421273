import { _, computed, constant, heading, input, note, numberHeading, section, type Sheet, text, title, unit, unitHeading } from "../write/book";

const named = { SilverPrice: 5, CopperPrice: 6, AcidPrice: 7, PowerPrice: 8, LabourPrice: 9, HaulPrice: 10, RefiningCharge: 15, LotCharge: 16, TreatmentCharge: 17, CopperAllowance: 21, CopperBar: 22, BarStub: 23, GramsPerOunce: 27 };

export const names: Readonly<Record<string, string>> = Object.fromEntries(Object.entries(named).map(([name, row]) => [name, `Prices!$B$${row}`]));

export const prices: Sheet = {
  name: "Prices",
  widths: [40, 14, 20, 20, 54],
  page: "landscape",
  cursor: "B5",
  heights: { 1: 26 },
  rows: {
    1: [title("Prices and terms")],
    2: [note("Every figure on this sheet is invented. Change one and every sheet follows, where Lotwright is installed.")],
    4: [heading("Price of"), numberHeading("$"), unitHeading("per"), heading("Its name in formulas"), heading("Remark")],
    5: [text("Fine silver"), input(28, "money"), unit("troy ounce"), text("SilverPrice"), note("What a settlement is priced at.")],
    6: [text("Copper bar"), input(5.4, "money"), unit("lb"), text("CopperPrice")],
    7: [text("Nitric acid, 68 %"), input(24.5, "money"), unit("gal"), text("AcidPrice"), note("US gallons.")],
    8: [text("Power"), input(0.17, "money"), unit("kWh"), text("PowerPrice")],
    9: [text("Labour, both of us"), input(24, "money"), unit("hour"), text("LabourPrice")],
    10: [text("Licensed haul of spent liquor"), input(5.5, "money"), unit("gal"), text("HaulPrice")],

    13: [section("Terms")],
    14: [heading("Charge"), numberHeading("$"), unitHeading("per"), heading("Its name in formulas"), heading("Remark")],
    15: [text("Refining charge"), input(0.95, "money"), unit("payable troy ounce"), text("RefiningCharge")],
    16: [text("Lot charge"), input(25, "money"), unit("lot"), text("LotCharge")],
    17: [text("Treatment charge"), input(1.1, "money"), unit("kg of net weight"), text("TreatmentCharge"), note("Agreed with C-18 alone: see the sheet Settlement.")],

    19: [section("The drop")],
    20: [heading("Setting"), numberHeading("Value"), unitHeading("Unit"), heading("Its name in formulas"), heading("Remark")],
    21: [text("Copper beyond what the reaction takes"), input(0.13, "share"), unit("of the copper"), text("CopperAllowance"), note("Makes one pound of copper for about three pounds of silver.")],
    22: [text("Weight of one copper bar"), input(2, "weight"), unit("lb"), text("CopperBar")],
    23: [text("Stub that a bar leaves"), input(0.15, "share"), unit("of the bar"), text("BarStub")],

    25: [section("The silver price in other units")],
    26: [heading("Quantity"), numberHeading("Value"), unitHeading("Unit"), heading("Its name in formulas"), heading("Remark")],
    27: [text("One troy ounce"), constant(31.1034768, "constant"), unit("g"), text("GramsPerOunce"), note("Exact: 480 grains of 64.79891 mg.")],
    28: [text("Fine silver"), computed('=LOT.PRICE(SilverPrice,"ozt","g")', "price"), unit("$ per g"), _, note('=LOT.PRICE(SilverPrice,"ozt","g")')],
    29: [text("Fine silver"), computed('=LOT.PRICE(SilverPrice,"ozt","kg")', "money"), unit("$ per kg")],
    30: [text("Fine silver"), computed('=LOT.PRICE(SilverPrice,"ozt","lb")', "money"), unit("$ per lb")],
  },
};
