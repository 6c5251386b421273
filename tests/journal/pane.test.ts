import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { launch } from "../browser/chromium";
import { bookOf } from "../lots/reconcile-books";
import { uglyBooks } from "../lots/ugly/books";
import { placed } from "../month/books";
import { column, rowsOf } from "./books";
import { serious, serveTask } from "./serve-task";
import type {} from "./task-page";

let browser: Browser;
let server: Awaited<ReturnType<typeof serveTask>>;

beforeAll(async () => {
  const rows = rowsOf(20, (row, i) => {
    if (i === 1) row[column("Payout")] = 600;
    if (i === 19) row[column("Date")] = 46_113;
  });
  const books = { month: (await placed(await bookOf(rows))).file.bytes, unplaced: await uglyBooks["French Canada"]() };
  [browser, server] = await Promise.all([launch(), serveTask(books)]);
}, 60_000);
afterAll(async () => {
  await browser?.close();
  await server?.close();
});

async function open(book = "month", more = ""): Promise<Page> {
  const page = await browser.newPage({ viewport: { width: 300, height: 700 } });
  page.setDefaultTimeout(15_000);
  await page.goto(`${server.url}?task=journal&book=${book}${more}`);
  await page.getByRole("heading", { name: "Journal" }).waitFor();
  return page;
}
async function inMarch(more = ""): Promise<Page> {
  const page = await open("month", more);
  await page.getByRole("combobox", { name: "Month" }).selectOption("2026-03");
  await page.getByText(/^16 settlements: debits and credits are/).waitFor();
  return page;
}
const button = (page: Page, name: string) => page.getByRole("button", { name });

describe("Journal", () => {
  it("begins with the last month, shows any other with its totals, lines and remarks, and saves it as a file", async () => {
    const page = await open();
    await page.getByText("2026-04 has no lot that is settled: there is nothing to write.").waitFor();
    expect(await button(page, "Save as a CSV file").count()).toBe(0);
    await page.getByRole("combobox", { name: "Month" }).selectOption("2026-03");
    await page.getByText(/^16 settlements: debits and credits are [\d,]+\.\d\d each\.$/).waitFor();
    await page.getByText(/^Lot 26-002: its terms give .* two lines over the payout: look at it under Reconcile\.$/).waitFor();
    expect(await page.getByRole("rowheader", { name: "2026-03-01 · 26-001 · C-01" }).count()).toBe(1);
    expect(await page.getByRole("row", { name: /^Silver from clients Metal value [\d,]+\.\d\d$/ }).count()).toBeGreaterThan(5);
    expect(await serious(page)).toEqual([]);
    const before = await page.getByRole("rowheader", { name: / · C-0/ }).count();
    await button(page, "Show 4 more of 16").click();
    expect(await page.getByRole("rowheader", { name: / · C-0/ }).count()).toBe(before + 4);
    await button(page, "Save as a CSV file").click();
    await page.getByText("journal-2026-03.csv: look for it among your downloads").waitFor();
    const [file] = await page.evaluate(() => window.taskShop.files());
    expect(file?.name).toBe("journal-2026-03.csv");
    expect(file?.text.split("\r\n")[1]).toMatch(/^2026-03-01,26-001,C-01,Silver from clients,\d+\.\d\d,,Metal value$/);
    await page.close();
  });

  it("keeps the names of the accounts in the workbook, uses them at once, and takes them back", async () => {
    const page = await inMarch();
    await page.getByText("Names of the accounts").click();
    await page.getByRole("combobox", { name: "Metal taken in" }).fill("1200 Silver");
    await expect.poll(() => page.getByRole("row", { name: /^1200 Silver Metal value/ }).count()).toBeGreaterThan(5);
    expect(await serious(page)).toEqual([]);
    await button(page, "Keep these names").click();
    await page.getByText("Kept in this workbook, on its hidden sheet Lotwright").waitFor();
    await page.evaluate(() => (window.taskShop.close(), window.taskShop.open()));
    await expect.poll(() => page.getByRole("combobox", { name: "Metal taken in" }).inputValue()).toBe("1200 Silver");
    await button(page, "Undo").click();
    await page.getByText("Undone: the workbook keeps what it kept before").waitFor();
    expect(await button(page, "Keep these names").isEnabled()).toBe(true);
    await page.close();
  });

  it("goes onto a new sheet after a review, and is undone", async () => {
    const page = await inMarch();
    await button(page, "As a new sheet").click();
    await page.getByText(/^A new sheet, ‘Journal 2026-03’, with \d+ filled cells\.$/).waitFor();
    expect(await serious(page)).toEqual([]);
    await button(page, "Write the sheet").click();
    await page.getByText("The journal of 2026-03 is on the sheet ‘Journal 2026-03’").waitFor();
    expect(await page.evaluate(() => window.taskShop.selected())).toEqual(["Journal 2026-03!A1"]);
    expect(await page.evaluate(() => window.taskShop.value("Journal 2026-03", "D4"))).toBe("Silver from clients");
    await button(page, "Undo").click();
    await page.getByText("Undone: the workbook is as it was").waitFor();
    expect(await page.evaluate(() => window.taskShop.sheets())).not.toContain("Journal 2026-03");
    await page.close();
  });

  it("is copied where no file can be saved, and the spreadsheet's own sentence says so", async () => {
    const page = await inMarch("&refuses");
    await button(page, "Save as a CSV file").click();
    await page.getByText("Cannot save journal-2026-03.csv from here: copy it instead").waitFor();
    await page.context().grantPermissions(["clipboard-read", "clipboard-write"]);
    await button(page, "Copy").click();
    await page.getByText("Copied: paste it into a text file whose name ends with .csv").waitFor();
    expect(await page.evaluate(() => navigator.clipboard.readText())).toMatch(/^Date,Lot,Client,Account,Debit,Credit,Memo\r?\n2026-03-01,26-001,/);
    await page.close();
  });

  it("shows amounts in the signs of the workbook, and writes points into the file", async () => {
    const page = await inMarch("&decimal=,");
    expect(await page.getByText(/^16 settlements/).textContent()).toMatch(/are \d{1,3}(\u202f\d{3})*,\d\d each\.$/);
    await button(page, "Save as a CSV file").click();
    await expect.poll(() => page.evaluate(() => window.taskShop.files()[0]?.text ?? "")).toMatch(/,\d+\.\d\d,,Metal value\r\n/);
    await page.close();
  });

  it("says what to do where no list is set up, and Escape leaves", async () => {
    const page = await open("unplaced");
    await page.getByText("It is not set up yet where this workbook keeps its lots.").waitFor();
    await page.keyboard.press("Escape");
    expect(await page.evaluate(() => window.taskShop.hasLeft())).toBe(true);
    await page.close();
  });
});
