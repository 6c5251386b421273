import { dayNumber } from "../src/lots/calendar";
import { findLots } from "../src/lots/find";
import type { QuoteInput } from "../src/lots/quote";
import { quoteSheet } from "../src/lots/quote-sheet";
import { readSheets } from "../src/lots/sheet-reading";
import { type Shop, shopChanges } from "../src/lots/shop";
import { placeChanges } from "../src/lots/where";
import { openXlsx } from "../src/workbook/file";
import { FilePort } from "../src/workbook/file-port";
import { lots } from "./quotes/lots";
import { readMe } from "./quotes/read-me";
import { bookFile } from "./write/file";

const shop: Shop = {
  name: { value: "Quillmere Silver" },
  address: { value: "1 Mill Lane\nPort Hollow" },
  currency: { value: "$" },
  paper: { value: "letter" },
  quoteNumber: { value: "Q-2026-001" },
  quoteDays: { value: 14 },
  payable: { value: "95%" },
  refiningCharge: { value: 0.5, unit: "ozt" },
  lotCharges: { value: 25 },
  priceSwing: { value: "5%" },
};

const head: Pick<QuoteInput, "days" | "shop"> = { days: 14, shop: { name: "Quillmere Silver", address: "1 Mill Lane\nPort Hollow", currency: "$", paper: "letter" } };
const march = (day: number): number => dayNumber({ year: 2026, month: 3, day });

const quotes: readonly QuoteInput[] = [
  { ...head, number: "Q-2026-001", date: march(2), client: "C-07", lot: "26-03-01", goods: "Flatware", basis: "the stamp", weight: { value: 17.5, unit: "lb" }, low: 915, likely: 925, high: 928, terms: { price: { value: 28, unit: "ozt" }, swing: "5%", payable: "95%", refiningCharge: { value: 0.5, unit: "ozt" }, lotCharges: 25 }, payment: "money", metalUnit: "ozt" },
  { ...head, number: "Q-2026-002", date: march(5), client: "C-18", goods: "Melted bars", basis: "our assay", weight: { value: 14.7, unit: "kg" }, low: "91.1%", likely: "91.4%", high: "91.7%", terms: { price: { value: 900.21, unit: "kg" }, swing: "7.5%", payable: "97%", refiningCharge: { value: 16.1, unit: "kg" }, treatmentCharge: { value: 1.2, unit: "kg" }, lotCharges: 40, deduction: "5‰" }, payment: "metal", metalUnit: "g" },
  { ...head, number: "Q-2026-003", date: march(9), client: "C-21", goods: "Bench filings, with steel and abrasive", basis: "the client's assay", weight: { value: 4.2, unit: "kg" }, low: 860, likely: 895, high: 915, terms: { price: { value: 408.33, unit: "lb" }, swing: "5%", payable: "93%", refiningCharge: { value: 0.5, unit: "ozt" }, lotCharges: 25 }, payment: "either", metalUnit: "ozt" },
];

/** Three quotes of an invented shop, made as its pane makes them. */
export async function quotesBook(): Promise<Uint8Array> {
  const book = bookFile({ title: "Quotes of an invented silver shop", subject: "A sample workbook: shop, clients, lots and prices are invented", creator: "Lotwright", date: "2026-03-10", names: {}, sheets: [readMe, lots] });
  const port = new FilePort(openXlsx(book));
  const [proposal] = findLots(await readSheets(port)).proposals;
  if (!proposal) throw new Error("The list of lots was not found");
  await port.write(await placeChanges(port, proposal));
  await port.write(await shopChanges(port, shop));
  for (const quote of quotes) await port.write([quoteSheet(quote, `Quote ${quote.number}`)]);
  return port.file.bytes;
}
