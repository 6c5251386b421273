import { readFile } from "node:fs/promises";
import { dayNumber } from "../../src/lots/calendar";
import { findLots } from "../../src/lots/find";
import { quoteSheet } from "../../src/lots/quote-sheet";
import { readSheets } from "../../src/lots/sheet-reading";
import { type Shop, shopChanges } from "../../src/lots/shop";
import { placeChanges } from "../../src/lots/where";
import { openXlsx } from "../../src/workbook/file";
import { FilePort } from "../../src/workbook/file-port";

/** The lot of the sample that is still in work. */
export const OPEN_LOT = "26-03-07";

const SHOP: Shop = {
  name: { value: "Fourlane Refining" },
  address: { value: "12 Example Lane\nMilltown" },
  currency: { value: "$" },
  paper: { value: "letter" },
  statementNumber: { value: "S-2026-041" },
  price: { sheet: "Prices", cell: "B5", unit: "ozt" },
  refiningCharge: { sheet: "Prices", cell: "B14", unit: "ozt" },
  scale: { value: 1, unit: "g" },
  assay: { value: "1.5‰" },
};

export const sampleBook = async (): Promise<FilePort> => new FilePort(openXlsx(new Uint8Array(await readFile(new URL("../../sample-workbooks/cost-sheet.xlsx", import.meta.url)))));

/** The sample, whose shop and place of lots are told, and in which the open lot was quoted. */
export async function settleBook(): Promise<FilePort> {
  const port = await sampleBook();
  const [proposal] = findLots(await readSheets(port)).proposals;
  if (!proposal) throw new Error("The sample has no list of lots");
  await port.write([...(await shopChanges(port, SHOP))]);
  await port.write(await placeChanges(port, proposal));
  await port.write([
    quoteSheet(
      {
        number: "Q-2026-009", date: dayNumber({ year: 2026, month: 3, day: 2 }), days: 14, shop: { name: "Fourlane Refining", currency: "$" }, client: "C-03", lot: OPEN_LOT, goods: "Trays",
        weight: { value: 12, unit: "lb" }, low: 780, likely: 790, high: 800,
        terms: { price: { value: 28, unit: "ozt" }, payable: "94%", refiningCharge: { value: 0.95, unit: "ozt" }, lotCharges: 25 },
        payment: "money", metalUnit: "ozt",
      },
      "Quote Q-2026-009",
    ),
  ]);
  return port;
}
