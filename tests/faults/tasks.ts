import type { Locator, Page } from "playwright-core";
import { bookOf, goodRows } from "../lots/reconcile-books";
import { placed, twoMonths } from "../month/books";
import { settleBook } from "../browser/settle-book";
import type { Buttons } from "./trial";

/** A task that writes, filled in as by hand until its review can be shown. */
export interface WritingTask {
  readonly title: string;
  readonly book: keyof typeof books;
  readonly buttons: Buttons;
  fill(page: Page): Promise<void>;
}

/** Each as the bytes of a file. */
export const books = {
  shop: async (): Promise<Uint8Array> => (await settleBook()).file.bytes,
  months: async (): Promise<Uint8Array> => (await placed(await twoMonths(4))).file.bytes,
  ledger: async (): Promise<Uint8Array> => (await placed(await bookOf(goodRows(12)))).file.bytes,
} as const;

const box = (on: Page | Locator, name: RegExp | string): Locator => on.getByRole("textbox", { name });
const button = (page: Page, name: RegExp | string): Locator => page.getByRole("button", { name });

export const writingTasks: Readonly<Record<string, WritingTask>> = {
  "a lot is set up": {
    title: "Set up a lot",
    book: "shop",
    buttons: { look: "Next", write: "Write the lot", written: "is in row 13 of Lots" },
    async fill(page) {
      await button(page, "Next").click();
      await page.getByRole("heading", { name: "The lot", level: 2 }).waitFor();
      for (const [label, text] of Object.entries({ "Lot number": "26-03-09", Client: "C-31", "What it is": "Forks", Gross: "15.5", Tare: "0.5", Fineness: "925", Payable: "95%" })) await page.getByLabel(new RegExp(`^${label}( may stay empty)?$`)).fill(text);
      for (const label of ["Unit of gross", "Unit of tare"]) await page.getByLabel(label, { exact: true }).selectOption("lb");
      await button(page, "Next").click();
      await page.getByRole("heading", { name: "The plan", level: 2 }).waitFor();
    },
  },
  "a client is quoted": {
    title: "Quote a client",
    book: "shop",
    buttons: { look: "See what will be written", write: "Write the quote", written: "ready to print" },
    async fill(page) {
      for (const [label, text] of [["Client", "C-44"], ["Net weight", "7500"], ["Low fineness", "915"], ["Likely fineness", "925"], ["High fineness", "92.8%"], ["Price may go", "5%"], ["Payable share", "98%"], ["Days that it holds", "14"]] as const) await box(page, new RegExp(`^${label}`)).fill(text);
      await box(page, /^Price$/).fill("24");
    },
  },
  "a lot is settled": {
    title: "Settle a lot",
    book: "shop",
    buttons: { look: "See what will be written", write: "Write the settlement", written: "is settled on the sheet" },
    async fill(page) {
      await button(page, /26-03-07/).click();
      for (const [label, text] of [["Our assay", "800"], ["The client’s assay", "79.8%"], ["Splitting limit", "3"], ["Price", "Prices!B5"], ["Crystal weighed out", "136"]] as const) await box(page, new RegExp(`^${label}`)).fill(text);
    },
  },
  "a month is closed": {
    title: "Close a month",
    book: "months",
    buttons: { look: "Show what will be written", write: "Write the sheet", written: "is closed, on sheet" },
    async fill(page) {
      await page.getByRole("combobox", { name: "Month" }).selectOption("2026-03");
      for (const [label, text] of [["Opening, fine ozt", "100"], ["Its standard uncertainty, ozt", "0.3"], ["Scale, one weighing", "0.5"], ["Assay, in ‰", "1"], ["Bias of the scale", "0"]] as const) await box(page, label).fill(text);
      await button(page, "Add to the count").click();
      const crystal = page.getByRole("group", { name: "Counted at the end, line 1" });
      await box(crystal, "Weight").fill("9000");
      await box(crystal, "Fineness").fill("999.9");
    },
  },
  "the journal becomes a sheet": {
    title: "Journal",
    book: "ledger",
    buttons: { look: "As a new sheet", write: "Write the sheet", written: "is on the sheet" },
    fill: async () => undefined,
  },
  "the shop is told": {
    title: "The shop",
    book: "ledger",
    buttons: { write: "Keep in this workbook", written: "Kept in this workbook, on its hidden sheet" },
    async fill(page) {
      await page.getByLabel("Name", { exact: true }).fill("Quillmere Silver");
    },
  },
};
