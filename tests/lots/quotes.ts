import { dayNumber } from "../../src/lots/calendar";
import type { QuoteInput } from "../../src/lots/quote";
import { quoteSheet } from "../../src/lots/quote-sheet";
import { openXlsx } from "../../src/workbook/file";
import { FilePort } from "../../src/workbook/file-port";
import type { CellReading } from "../../src/workbook/port";
import { Sheet, workbook } from "../native/workbook";

/** What an invented shop offers for an invented lot; prices are invented. */
export const plainQuote: QuoteInput = {
  number: "Q-2026-004",
  date: dayNumber({ year: 2026, month: 3, day: 2 }),
  days: 14,
  shop: { name: "Fourlane Refining", address: "12 Example Lane\nMilltown", currency: "$", paper: "letter" },
  client: "Client C-17",
  lot: "L-104",
  goods: "Sterling flatware",
  basis: "the stamp",
  weight: { value: 1240.5, unit: "g" },
  low: "91.5%",
  likely: 925,
  high: "22.3k",
  terms: { price: { value: 24, unit: "ozt" }, swing: "5%", payable: "98%", refiningCharge: { value: 0.5, unit: "ozt" }, lotCharges: 25 },
  payment: "either",
  metalUnit: "ozt",
};

export const SHEET = "Quote Q-2026-004";

/** With a treatment charge, a deduction, and rates in other units than the goods' weight. */
export const fullQuote: QuoteInput = {
  ...plainQuote,
  terms: { price: { value: 771.61, unit: "kg" }, swing: 0.075, payable: 0.98, refiningCharge: { value: 16.25, unit: "kg" }, treatmentCharge: { value: 1.2, unit: "lb" }, lotCharges: 25, deduction: "5‰" },
  metalUnit: "g",
  priceFrom: "Prices!B4",
};

export interface WrittenQuote {
  readonly port: FilePort;
  /** The three figures of a row by its label, below a heading where several rows have that label. */
  three(label: string, heading?: string): Promise<readonly CellReading["value"][]>;
  cells(): Promise<readonly (readonly CellReading[])[]>;
}

/** A file with nothing but a quote in it. */
export async function written(input: QuoteInput): Promise<WrittenQuote> {
  const port = new FilePort(openXlsx(workbook([new Sheet("Sheet1")])));
  await port.write([quoteSheet(input, SHEET)]);
  const cells = (): Promise<CellReading[][]> => port.read({ sheet: SHEET, range: "A1:E90" });
  return {
    port,
    cells,
    async three(label, heading) {
      const rows = await cells();
      const from = heading === undefined ? 0 : rows.findIndex(([first]) => first?.value === heading);
      const row = rows.slice(Math.max(from, 0)).find(([first]) => first?.value === label);
      if (!row || from < 0) throw new Error(`The quote has no row ${label}`);
      return row.slice(2).map(({ value }) => value);
    },
  };
}
