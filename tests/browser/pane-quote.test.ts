import axe, { type AxeResults } from "axe-core";
import type { Browser, Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, describe, expect, it } from "vitest";
import { unzipSync } from "fflate";
import { launch } from "./chromium";
import { type QuoteBook, emptyBook, shopBook } from "./quote-book";
import { servePane } from "./serve-pane";

let browser: Browser;
let server: Awaited<ReturnType<typeof servePane>>;
let page: Page;
let faults: string[] = [];

beforeAll(async () => {
  [browser, server] = await Promise.all([launch(), servePane("quote-page.ts")]);
});
afterAll(async () => {
  await browser?.close();
  await server?.close();
});
afterEach(async () => {
  await page.close();
  expect(faults).toEqual([]);
});

async function show(book: QuoteBook, query = ""): Promise<void> {
  faults = [];
  page = await browser.newPage({ viewport: { width: 300, height: 700 } });
  page.setDefaultTimeout(15_000);
  page.on("pageerror", (error) => faults.push(error.message));
  await book.servedTo(page);
  await page.goto(server.url + query);
  await page.getByLabel("Quote number").waitFor();
}

const field = (label: string) => page.getByLabel(label, { exact: true });
const button = (name: string | RegExp) => page.getByRole("button", { name });
const result = () => page.locator(".lw-result").textContent();
const sheets = async ({ port }: QuoteBook): Promise<string[]> => (await port.sheets()).map(({ name }) => name);
const column = async ({ port }: QuoteBook, letter: string) => (await port.read({ sheet: "Quote Q-2026-001", range: `${letter}1:${letter}70` })).map(([cell]) => cell);
const reopen = () =>
  page.evaluate(() => {
    window.quoting.close();
    window.quoting.open();
  });

async function fromFirstLot(): Promise<void> {
  await button(/^2026-001/).click();
  await field("Low fineness").fill("915");
  await field("High fineness").fill("930");
  await expect.poll(result).toContain("$824.62");
}

/** What axe finds that keeps somebody from using the page. */
async function serious(): Promise<string[]> {
  await page.evaluate(axe.source);
  const { violations } = await page.evaluate(() => (window as unknown as { axe: { run(root: string): Promise<AxeResults> } }).axe.run("#pane"));
  return violations.filter(({ impact }) => impact === "serious" || impact === "critical").flatMap(({ id, nodes }) => nodes.map(({ target, failureSummary }) => `${id} at ${target.join(" ")}: ${failureSummary ?? ""}`));
}

describe("quoting a client", () => {
  it("goes from a lot of the list to a sheet with its picture, and back", async () => {
    const book = await shopBook();
    const before = Buffer.from(book.port.file.bytes);
    await show(book);
    await fromFirstLot();
    expect([await field("Client may be left out").inputValue(), await field("Net weight").inputValue(), await field("Payable share").inputValue(), await field("Price").inputValue()]).toEqual(["Client A-3", "1240.5", "98%", "24"]);
    expect(await page.locator(".lw-range .lw-quoted td").allTextContents()).toEqual(["815.43", "824.62", "829.21"]);
    await button("See what will be written").click();
    await page.getByText(/^A new sheet, ‘?Quote Q-2026-001’?, with \d+ filled cells\.$/).waitFor();
    expect(await sheets(book)).not.toContain("Quote Q-2026-001");
    await button("Write the quote").click();
    await page.getByText("Quote Q-2026-001 is on the sheet ‘Quote Q-2026-001’, ready to print").waitFor();
    await expect.poll(() => book.selected.sheet).toBe("Quote Q-2026-001");

    const [labels, likely] = [await column(book, "A"), await column(book, "D")];
    expect(likely[labels.findIndex((cell) => cell?.value === "Payout")]).toMatchObject({ value: 824.62, error: false });
    expect(labels[0]?.value).toBe("Fourlane Refining");
    const parts = unzipSync(book.port.file.bytes);
    expect(Object.keys(parts).filter((name) => name.endsWith(".png"))).toHaveLength(1);
    expect(Object.entries(parts).filter(([name]) => name.includes("drawings/drawing")).map(([, bytes]) => new TextDecoder().decode(bytes)).join("")).toContain("likely $824.62");

    await expect.poll(() => field("Quote number").inputValue()).toBe("Q-2026-002");
    await button("Undo").click();
    await page.getByText("Undone: the workbook is as it was").waitFor();
    expect(Buffer.compare(Buffer.from(book.port.file.bytes), before)).toBe(0);
  }, 60_000);

  it("finds a lot by any of its words, and writes a client's odd name as a text", async () => {
    const book = await shopBook();
    await show(book);
    await field("From a lot or from scratch below").fill("back door");
    expect(await page.locator(".lw-lots li").count()).toBe(1);
    await button(/^2026-002/).click();
    expect(await field("Client may be left out").inputValue()).toBe("=Client B & sons\nBack door");
    await field("Low fineness").fill("88%");
    await field("High fineness").fill("905");
    await field("Payment").selectOption("either");
    await button("See what will be written").click();
    await button("Write the quote").click();
    await page.getByText("ready to print").waitFor();
    const cells = await column(book, "B");
    for (const line of ["=Client B & sons", "Back door"]) expect(cells.find((cell) => cell?.value === line)).toMatchObject({ formula: null });
  }, 60_000);

  it("takes the price from a cell as a number, and names the cell", async () => {
    const book = await shopBook();
    await show(book);
    await field("Net weight").fill("100");
    await page.getByLabel("Unit of net weight").selectOption("ozt");
    for (const [label, value] of [["Low fineness", "915"], ["Likely fineness", "925"], ["High fineness", "930"], ["Payable share", "98%"]] as const) await field(label).fill(value);
    expect(await field("Price").inputValue()).toBe("Prices!B1");
    await expect.poll(result).toContain("$2,105.28");
    await button("See what will be written").click();
    await button("Write the quote").click();
    await page.getByText("ready to print").waitFor();
    const [labels, values, words] = [await column(book, "A"), await column(book, "B"), await column(book, "C")];
    const price = labels.findIndex((cell) => cell?.value === "Price");
    expect(values[price]).toMatchObject({ value: 24, formula: null });
    expect(String(words[price]?.value)).toContain("per ozt, as Prices!B1 showed it");
  }, 60_000);

  it("says what is missing or ambiguous beside its field, and writes nothing", async () => {
    const book = await shopBook();
    await show(book);
    expect(await result()).toBe("Still needed: net weight, low fineness, likely fineness, high fineness, payable share");
    await button("See what will be written").click();
    await expect.poll(() => page.evaluate(() => (document.activeElement as HTMLInputElement).labels?.[0]?.textContent)).toBe("Net weight");
    await fromFirstLot();
    await field("Low fineness").fill("92.5");
    await page.getByText('Cannot use low = 92.5: could be %, karat or ‰: write "92.5%" or 925').waitFor();
    await button("See what will be written").click();
    expect(await page.locator(".lw-review").count()).toBe(0);
    await field("Low fineness").fill("940");
    await expect.poll(() => page.getByText("not in that order").count()).toBe(3);
    await field("Low fineness").fill("915");
    await field("Price").fill("350");
    await page.getByText("it looks like a price per lb").waitFor();
    expect(await field("Price").getAttribute("aria-invalid")).toBeNull();
    expect(await sheets(book)).toHaveLength(3);
  }, 60_000);

  it("keeps what was written when the pane is closed", async () => {
    await show(await shopBook());
    await fromFirstLot();
    await field("Payment").selectOption("metal");
    await reopen();
    await expect.poll(() => field("Low fineness").inputValue()).toBe("915");
    expect(await page.getByText("Lot 2026-001").count()).toBe(1);
    await expect.poll(result).toContain("fine metal given back, ozt");
    await button("Another lot, or from scratch").click();
    expect([await field("Low fineness").inputValue(), await field("Client may be left out").inputValue()]).toEqual(["", ""]);
  }, 60_000);

  it("works in a workbook in which nothing was told, and says what will be blank", async () => {
    const book = emptyBook();
    await show(book);
    expect(await page.locator(".lw-caution").textContent()).toBe("The shop’s name, address and sign of its money will be blank on the paper: tell them under The shop.");
    await page.getByText("You can quote from scratch all the same.").waitFor();
    for (const [label, value] of [["Net weight", "500"], ["Low fineness", "90%"], ["Likely fineness", "sterling"], ["High fineness", "930"], ["Price", "24"], ["Payable share", "0.95"], ["Days that it holds", "7"]] as const) await field(label).fill(value);
    await button("See what will be written").click();
    await button("Write the quote").click();
    await page.getByText("ready to print").waitFor();
    expect((await sheets(book)).at(-1)).toMatch(/^Quote Q-\d{4}-001$/);
  }, 60_000);

  it("reads numbers as the user's spreadsheet writes them", async () => {
    await show(await shopBook(), "?decimal=,");
    await button(/^2026-001/).click();
    expect(await field("Net weight").inputValue()).toBe("1240,5");
    await field("Low fineness").fill("91,5%");
    await field("High fineness").fill("930");
    await expect.poll(result).toContain("$824,62");
  }, 60_000);

  it("is looked through with the Enter key, and a change takes what was shown away", async () => {
    await show(await shopBook());
    await fromFirstLot();
    await field("High fineness").press("Enter");
    await expect.poll(() => page.evaluate(() => document.activeElement?.textContent)).toBe("What will be written");
    await field("High fineness").fill("931");
    await expect.poll(() => page.locator(".lw-review").count()).toBe(0);
  }, 60_000);

  it("is usable by everyone, light and dark, and does not scroll sideways", async () => {
    await show(await shopBook());
    expect(await serious()).toEqual([]);
    await fromFirstLot();
    await field("Payment").selectOption("either");
    await field("Price").fill("350");
    await button("See what will be written").click();
    await page.locator(".lw-review").waitFor();
    for (const colorScheme of ["light", "dark"] as const) {
      await page.emulateMedia({ colorScheme });
      expect(await serious(), colorScheme).toEqual([]);
    }
    expect(await page.evaluate(() => (document.querySelector("#pane")?.scrollWidth ?? 0) - (document.querySelector("#pane")?.clientWidth ?? 0))).toBe(0);
  }, 60_000);
});
