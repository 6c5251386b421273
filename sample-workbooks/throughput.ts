import { findLots } from "../src/lots/find";
import { readSheets } from "../src/lots/sheet-reading";
import { type Shop, shopChanges } from "../src/lots/shop";
import { placeChanges, readWorkbook } from "../src/lots/where";
import { closedMonth } from "../src/month/close-month";
import { monthBasis } from "../src/month/month-basis";
import type { MonthInput, StockLine } from "../src/month/month-input";
import { openXlsx } from "../src/workbook/file";
import { FilePort } from "../src/workbook/file-port";
import { lotsSheet } from "./throughput/lots";
import { readMe } from "./throughput/read-me";
import { BIAS, CRYSTAL_FINENESS, inventedYear, RESIDUE_FINENESS, type YearMonth } from "./throughput/year";
import { bookFile } from "./write/file";

const shop: Shop = {
  name: { value: "Quillmere Silver" },
  currency: { value: "$" },
  payable: { value: "95%" },
  refiningCharge: { value: 0.5, unit: "ozt" },
  lotCharges: { value: 25 },
  scale: { value: 1, unit: "g" },
  assay: { value: "1‰" },
};

const metal = (what: string, weight: number, fineness: number, uncertainty: number | null): StockLine => ({ kind: "metal", what, weight, unit: "g", fineness, uncertainty });

/** The opening of the year, as it was counted in troy ounces. */
const OPENING = { fine: 52, uncertainty: 0.3 };

const inputOf = (month: YearMonth): MonthInput => ({
  month: { year: month.year, month: month.month },
  opening: month.month === 1 ? OPENING : null,
  counted: [metal("Crystal", month.crystal, CRYSTAL_FINENESS, null), metal("Filters, slimes and skulls", month.residues, RESIDUE_FINENESS, 0.02)],
  shipped: [metal("Crystal sold", month.soldCrystal, CRYSTAL_FINENESS, null), ...(month.soldResidues > 0 ? [metal("Residues sold", month.soldResidues, RESIDUE_FINENESS, 0.02)] : [])],
  scale: { value: 1, unit: "g" },
  assay: 1,
  bias: 0,
  // The shop has seen by then, with a check weight, that its weigh-in scale is off.
  weighInBias: month.month === BIAS.month ? BIAS.share : null,
});

/** A year of an invented shop, closed month by month as its pane closes them. */
export async function throughput(): Promise<Uint8Array> {
  const year = inventedYear();
  const book = bookFile({ title: "The metal of a year in an invented silver shop", subject: "A sample workbook: shop, clients, lots and prices are invented", creator: "Lotwright", date: "2026-01-05", names: {}, sheets: [readMe, lotsSheet(year.flatMap(({ lots }) => lots))] });
  const port = new FilePort(openXlsx(book));
  const [proposal] = findLots(await readSheets(port)).proposals;
  if (!proposal) throw new Error("The list of lots was not found");
  await port.write(await placeChanges(port, proposal));
  await port.write(await shopChanges(port, shop));
  for (const month of year) {
    const { sheets, place } = await readWorkbook(port);
    if (place === null || typeof place === "string") throw new Error(place ?? "The place of the lots was not kept");
    const input = inputOf(month);
    await port.write([closedMonth({ sheets, place }, input, await monthBasis(place, input.month, input)).change]);
  }
  return port.file.bytes;
}
