import axe, { type AxeResults } from "axe-core";
import type { Browser, Locator, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { launch } from "../browser/chromium";
import { uglyBooks } from "../lots/ugly/books";
import { MARCH, SHOP, close, metal, placed, twoMonths } from "./books";
import type {} from "./month-page";
import { serveMonth } from "./serve-month";

let browser: Browser;
let server: Awaited<ReturnType<typeof serveMonth>>;

beforeAll(async () => {
  const two = await placed(await twoMonths());
  const bytes = two.file.bytes;
  await close(two, { ...SHOP, month: MARCH, opening: { fine: 100, uncertainty: 0.3 }, counted: [metal("Crystal", 5000, "g", 999.9)], shipped: [] });
  [browser, server] = await Promise.all([launch(), serveMonth({ two: bytes, closed: two.file.bytes, unplaced: await uglyBooks["French Canada"]() })]);
}, 60_000);
afterAll(async () => {
  await browser?.close();
  await server?.close();
});

async function open(book: string, more = ""): Promise<Page> {
  const page = await browser.newPage({ viewport: { width: 300, height: 700 } });
  page.setDefaultTimeout(15_000);
  await page.goto(`${server.url}?book=${book}${more}`);
  await page.getByRole("heading", { name: "Close a month" }).waitFor();
  return page;
}

const field = (on: Page | Locator, name: string): Locator => on.getByRole("textbox", { name });
const line = (page: Page, name: string): Locator => page.getByRole("group", { name });

async function measure(page: Page): Promise<void> {
  await field(page, "Scale, one weighing").fill("0.5");
  await field(page, "Assay, in ‰").fill("1");
  await field(page, "Bias of the scale").fill("0");
}

/** Counts some crystal and liquor, and ships bars. */
async function fillIn(page: Page): Promise<void> {
  await page.getByRole("combobox", { name: "Month" }).selectOption("2026-03");
  await field(page, "Opening, fine ozt").fill("100");
  await field(page, "Its standard uncertainty, ozt").fill("0.3");
  await measure(page);
  await page.getByRole("button", { name: "Add to the count" }).click();
  const crystal = line(page, "Counted at the end, line 1");
  await field(crystal, "Weight").fill("21000");
  await field(crystal, "Fineness").fill("999.9");
  await page.getByRole("button", { name: "Add to the count" }).click();
  const liquor = line(page, "Counted at the end, line 2");
  await liquor.getByRole("combobox", { name: "What" }).selectOption("Liquor, by test");
  await field(liquor, "Litres").fill("120");
  await field(liquor, "Silver in a litre, g").fill("0.3");
  await field(liquor, "How far the test can be off").fill("10%");
  await page.getByRole("button", { name: "Add a shipment" }).click();
  const bars = line(page, "Shipped in the month, line 1");
  await bars.getByRole("combobox", { name: "What" }).selectOption("Bars");
  await field(bars, "Weight").fill("900");
  await bars.getByRole("combobox", { name: "Unit of weight" }).selectOption("ozt");
  await field(bars, "Fineness").fill("999");
  await page.getByText("metal missing").first().waitFor();
}

const value = (page: Page, cell: string): Promise<unknown> => page.evaluate((at) => window.monthShop.value("Month 2026-03", at), cell);

describe("Close a month", () => {
  it("goes from what was counted to the month's sheet and back", async () => {
    const page = await open("two");
    await fillIn(page);
    await page.getByRole("button", { name: "Show what will be written" }).click();
    await page.getByText(/A new sheet, .?Month 2026-03.?, with \d+ filled cells/).waitFor();
    // By now what was typed last is in it.
    const shown = await page.locator(".lw-sum td").first().textContent();
    expect(await page.evaluate(() => window.monthShop.sheets())).not.toContain("Month 2026-03");
    await page.getByRole("button", { name: "Write the sheet" }).click();
    await page.getByRole("button", { name: "Undo" }).waitFor();
    expect(Number(await value(page, "B10")).toFixed(3)).toBe(shown);
    expect(await value(page, "B13")).toBe("metal missing");
    await page.getByText(/2026-03 is closed already/).waitFor();
    await page.getByRole("button", { name: "Undo" }).click();
    await page.getByText("Undone: the workbook is as it was").waitFor();
    await expect.poll(() => page.evaluate(() => window.monthShop.sheets())).not.toContain("Month 2026-03");
    await page.close();
  }, 60_000);

  it("keeps what was typed when the pane is closed and opened again, each month's its own", async () => {
    const page = await open("two");
    await fillIn(page);
    await page.evaluate(() => window.monthShop.close());
    await page.evaluate(() => window.monthShop.open());
    const crystal = line(page, "Counted at the end, line 1");
    await crystal.waitFor();
    expect(await field(crystal, "Weight").inputValue()).toBe("21000");
    expect(await field(page, "Opening, fine ozt").inputValue()).toBe("100");
    expect(await page.getByRole("combobox", { name: "Month" }).inputValue()).toBe("2026-03");
    await page.getByText("metal missing").first().waitFor();
    await page.getByRole("combobox", { name: "Month" }).selectOption("2026-04");
    expect(await line(page, "Counted at the end, line 1").count()).toBe(0);
    await page.close();
  }, 60_000);

  it("opens with the closing of the month before, and says from where", async () => {
    const page = await open("closed");
    expect(await page.getByRole("combobox", { name: "Month" }).inputValue()).toBe("2026-04");
    await page.getByText("From the closing of sheet Month 2026-03.").waitFor();
    await measure(page);
    await page.getByRole("row", { name: /^Opening 160\.7\d\d/ }).waitFor();
    await page.close();
  }, 60_000);

  it("is worked by the keyboard alone: adding, taking out, the working, the review and the way out", async () => {
    const page = await open("two");
    await page.getByRole("combobox", { name: "Month" }).waitFor();
    await page.getByRole("button", { name: "Add to the count" }).focus();
    await page.keyboard.press("Enter");
    expect(await page.evaluate(() => document.activeElement?.tagName)).toBe("SELECT");
    await page.keyboard.press("Tab");
    await page.keyboard.type("5");
    expect(await field(line(page, "Counted at the end, line 1"), "Weight").inputValue()).toBe("5");
    await page.getByRole("button", { name: "Take out Counted at the end, line 1" }).focus();
    await page.keyboard.press("Enter");
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe("Add to the count");
    await fillIn(page);
    await page.getByText("Working", { exact: true }).focus();
    await page.keyboard.press("Enter");
    await page.getByText("expanded uncertainty", { exact: true }).first().waitFor();
    await field(page, "Bias of the scale").focus();
    await page.keyboard.press("Enter");
    await page.getByRole("button", { name: "Write the sheet" }).waitFor();
    await page.keyboard.press("Escape");
    expect(await page.getByRole("button", { name: "Write the sheet" }).count()).toBe(0);
    expect(await page.evaluate(() => window.monthShop.hasLeft())).toBe(false);
    await page.keyboard.press("Escape");
    expect(await page.evaluate(() => window.monthShop.hasLeft())).toBe(true);
    await page.close();
  }, 60_000);

  it("takes decimals with a comma where the spreadsheet does, and says beside the field what it cannot read", async () => {
    const page = await open("two", "&decimal=,");
    await page.getByRole("button", { name: "Add to the count" }).click();
    const first = line(page, "Counted at the end, line 1");
    await field(page, "Scale, one weighing").fill("0,5");
    await field(page, "Assay, in ‰").fill("1");
    await field(page, "Bias of the scale").fill("0,05%");
    await field(first, "Weight").fill("1.5");
    await first.getByText(/write a comma before the decimals/).waitFor();
    await field(first, "Weight").fill("1,5");
    await first.getByRole("combobox", { name: "Unit of weight" }).selectOption("kg");
    await field(first, "Fineness").fill("92,5");
    await first.getByText(/could be %, karat or ‰/).waitFor();
    await field(first, "Fineness").fill("92,5%");
    await first.getByText(/^44,609 ozt ± 0,0/).waitFor();
    await page.close();
  }, 60_000);

  it("says what to do where lots have no place yet", async () => {
    const page = await open("unplaced");
    await page.getByText("It is not set up yet where this workbook keeps its lots.").waitFor();
    await page.getByText(/open Set up a lot/).waitFor();
    await page.close();
  }, 60_000);
});

/** What axe finds that keeps somebody from using the page. */
async function serious(page: Page): Promise<string[]> {
  await page.evaluate(axe.source);
  const { violations } = await page.evaluate(() => (window as unknown as { axe: { run(root: string): Promise<AxeResults> } }).axe.run("#pane"));
  return violations
    .filter(({ impact }) => impact === "serious" || impact === "critical")
    .flatMap(({ id, nodes }) => nodes.map(({ target, failureSummary }) => `${id} at ${target.join(" ")}: ${failureSummary ?? ""}`));
}

describe("axe finds nothing serious", () => {
  it.each<[string, () => Promise<Page>]>([
    ["where nothing is set up", () => open("unplaced")],
    ["on a month with faults in it", async () => {
      const page = await open("two");
      await page.getByRole("button", { name: "Add to the count" }).click();
      await field(line(page, "Counted at the end, line 1"), "Weight").fill("x");
      await line(page, "Counted at the end, line 1").getByText("Write a number here").waitFor();
      return page;
    }],
    ["on a whole month before it is written", async () => {
      const page = await open("two");
      await fillIn(page);
      await page.getByText("Working", { exact: true }).click();
      await page.getByRole("button", { name: "Show what will be written" }).click();
      await page.getByRole("button", { name: "Write the sheet" }).waitFor();
      return page;
    }],
  ])("%s, light and dark", async (_, show) => {
    const page = await show();
    for (const colorScheme of ["light", "dark"] as const) {
      await page.emulateMedia({ colorScheme });
      expect(await serious(page), colorScheme).toEqual([]);
    }
    await page.close();
  }, 60_000);
});
