import type { Page } from "playwright-core";
import { findLots } from "../../src/lots/find";
import { readSheets } from "../../src/lots/sheet-reading";
import { type Shop, shopChanges } from "../../src/lots/shop";
import { placeChanges } from "../../src/lots/where";
import { openXlsx } from "../../src/workbook/file";
import { FilePort } from "../../src/workbook/file-port";
import type { BookPort, Change, Place, Undo } from "../../src/workbook/port";
import { Sheet, type SheetCell, workbook } from "../native/workbook";

const ROWS: readonly (readonly SheetCell[])[] = [
  ["Lot", "Date", "Client", "Goods", "Net weight (g)", "Fineness", "Price per ozt", "Payable %"],
  ["2026-001", 46030, "Client A-3", "Sterling flatware", 1240.5, 925, 24, 98],
  ["2026-002", 46041, "=Client B & sons\nBack door", "Coin silver", 812, 900, 24.5, 97],
  ["2026-003", 46052, "Client C-17", "Casting scrap, sterling", 310.25, 925, 24.2, 98],
];

const SHOP: Shop = {
  name: { value: "Fourlane Refining" },
  address: { value: "12 Example Lane\nMilltown" },
  currency: { value: "$" },
  paper: { value: "letter" },
  quoteNumber: { value: "Q-2026-001" },
  quoteDays: { value: 14 },
  price: { sheet: "Prices", cell: "B1", unit: "ozt" },
  priceSwing: { value: "5%" },
  refiningCharge: { value: 0.5, unit: "ozt" },
  lotCharges: { value: 25 },
};

/** A small shop's workbook in a file, and whatever a page asks of it. */
export class QuoteBook {
  selected: Place = { sheet: "Prices", range: "B1" };
  readonly #undos: Undo[] = [];

  constructor(readonly port: FilePort) {}

  /** The page's way to the file. */
  async servedTo(page: Page): Promise<void> {
    await page.exposeFunction("book", async (method: string, argument: string) => {
      try {
        return JSON.stringify({ value: await this.#answer(method, JSON.parse(argument, (_, value: unknown) => (isBytes(value) ? new Uint8Array(value.bytes) : value))) });
      } catch (thrown) {
        return JSON.stringify({ fault: thrown instanceof Error ? thrown.message : String(thrown) });
      }
    });
  }

  async #answer(method: string, argument: unknown): Promise<unknown> {
    switch (method) {
      case "selection":
        return this.selected;
      case "select":
        await this.port.select(argument as Place);
        return (this.selected = argument as Place);
      case "read":
        return this.port.read(argument as Place);
      case "write":
        return this.#undos.push(await this.port.write(argument as readonly Change[])) - 1;
      case "undo":
        return this.#undos[argument as number]?.undo();
      case "sheets":
        return this.port.sheets();
      case "names":
        return this.port.names();
      case "recalculate":
        return this.port.recalculate();
      case "note":
        return this.port.note(argument as Parameters<BookPort["note"]>[0]);
      default:
        throw new Error(`The page asked for ${method}`);
    }
  }
}

const isBytes = (value: unknown): value is { readonly bytes: readonly number[] } => typeof value === "object" && value !== null && Array.isArray((value as { bytes?: unknown }).bytes);

/** With its lots, its shop and where the lots are told. */
export async function shopBook(): Promise<QuoteBook> {
  const [lots, prices] = [new Sheet("Lots"), new Sheet("Prices")];
  ROWS.forEach((row, r) => row.forEach((cell, c) => lots.set(r, c, cell)));
  prices.set(0, 0, "Silver today");
  prices.set(0, 1, 24);
  const port = new FilePort(openXlsx(workbook([lots, prices])));
  await port.write(await shopChanges(port, SHOP));
  const [proposal] = findLots(await readSheets(port)).proposals;
  if (!proposal) throw new Error("The lots were not found");
  await port.write(await placeChanges(port, proposal));
  return new QuoteBook(port);
}

/** In which nothing was ever told. */
export const emptyBook = (): QuoteBook => new QuoteBook(new FilePort(openXlsx(workbook([new Sheet("Sheet1")]))));
