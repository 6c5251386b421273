import type { Browser, Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from "vitest";
import { launch } from "./chromium";
import type {} from "./pane-page";
import { servePane } from "./serve-pane";

let browser: Browser;
let server: Awaited<ReturnType<typeof servePane>>;
let page: Page;
let faults: string[];

beforeAll(async () => {
  [browser, server] = await Promise.all([launch(), servePane()]);
});
afterAll(async () => {
  await browser?.close();
  await server?.close();
});
beforeEach(() => show());
afterEach(async () => {
  await page.close();
  expect(faults).toEqual([]);
});

async function show(query = ""): Promise<void> {
  faults = [];
  page = await browser.newPage({ viewport: { width: 300, height: 700 } });
  page.setDefaultTimeout(10_000);
  page.on("pageerror", (error) => faults.push(error.message));
  page.on("console", (message) => {
    if (message.type() === "error" && !message.location().url.endsWith("favicon.ico")) faults.push(message.text());
  });
  await page.goto(server.url + query);
  await page.getByRole("button", { name: /^Explain a cell/ }).click();
  await page.getByRole("heading", { name: "Explain a cell" }).waitFor();
}

const button = (name: string) => page.getByRole("button", { name, exact: true });
const back = (place: string) => page.getByRole("button", { name: `Back to ${place}` });
const told = (sentence: string) => page.getByText(sentence, { exact: true }).first().waitFor();
const announced = () => page.locator("[role=status].lw-unseen").textContent();
const focused = () => page.evaluate(() => document.activeElement?.textContent ?? "");
const place = () => page.locator(".lw-cell .lw-of").textContent();
const note = (cell: string) => page.evaluate((at) => window.shop.port.note({ sheet: "Lots", cell: at }), cell);
const put = (address: string, value: number | string) => page.evaluate(([at, it]) => window.shop.port.put(at, it), [address, value] as const);
const selection = () => page.evaluate(async () => Object.values(await window.shop.port.selection()).join("!"));

async function select(range: string, sheet = "Lots"): Promise<void> {
  await page.evaluate(([name, at]) => window.shop.port.move(name, at), [sheet, range] as const);
}
async function explain(cell: string): Promise<void> {
  await select(cell);
  await told(`Lots!${cell}`);
}

describe("explaining a cell", () => {
  it("says what to select first, and what the selected cell holds instead", async () => {
    await told("Select a cell whose formula holds LOT.");
    await told("B7 is empty.");
    await select("B4", "Sheet1");
    await told("B4 holds a plain value.");
    await select("D4", "Sheet1");
    await told("The formula in D4 has none of our functions in it.");
    expect(await page.getByRole("button", { name: "Copy as text" }).count()).toBe(0);
    await page.evaluate(() => (window.shop.port.fault = "The sheet cannot be reached"));
    await select("B5", "Sheet1");
    await told("The sheet cannot be reached");
    await page.evaluate(() => (window.shop.port.fault = null));
  });

  it("shows the working, follows the selection, and says so to a screen reader", async () => {
    await explain("F2");
    expect(await page.locator(".lw-shown").textContent()).toBe("36.8917760345043");
    await told("fine weight = 1240.5 × 0.925 = 1147.4625 g");
    await told("1250 − 9.5");
    expect(await announced()).toBe("Lots!F2: LOT.FINEWEIGHT");
    await explain("G2");
    expect(await announced()).toBe("Lots!G2: LOT.COPPER");
    expect(await page.getByText("Silver nitrate and nitric acid burn skin and eyes").count()).toBe(1);
    expect(await page.getByText("IUPAC Commission").isVisible()).toBe(false);
    await page.getByText("Their source").click();
    expect(await page.getByText("IUPAC Commission").isVisible()).toBe(true);
  });

  it("leads to an input by its heading and back, by keyboard alone", async () => {
    await explain("F2");
    await button("Go to Tare (g), C2").focus();
    await page.keyboard.press("Enter");
    await expect.poll(selection).toBe("Lots!C2");
    await back("F2").waitFor();
    expect(await place()).toBe("Lots!F2");
    expect(await button("Go to Tare (g), C2").getAttribute("aria-current")).toBe("true");
    expect(await focused()).toBe("Tare (g), C2");
    await page.keyboard.press("Escape");
    await expect.poll(selection).toBe("Lots!F2");
    expect(await back("F2").count()).toBe(0);
    await page.keyboard.press("Escape");
    await told("What needs doing?");
  });

  it("goes from formula to formula along the inputs, and back the same way", async () => {
    await explain("G2");
    await button("Go to Fine (ozt), F2").click();
    await expect.poll(place).toBe("Lots!F2");
    expect(await focused()).toBe("Explain a cell");
    await button("Go to Fineness, E2").click();
    await back("F2").click();
    await back("G2").click();
    await expect.poll(place).toBe("Lots!G2");
    expect(await focused()).toBe("Explain a cell");
    await button("Go to Copper allowance, Prices!B5").click();
    await expect.poll(selection).toBe("Prices!B5");
    await back("Lots!G2").click();
    await expect.poll(selection).toBe("Lots!G2");
  });

  it("reads an input again when one has changed it", async () => {
    await explain("F2");
    await button("Go to Tare (g), C2").click();
    await back("F2").waitFor();
    await put("Lots!C2", 10);
    await back("F2").click();
    await told("1250 − 10");
    expect(await page.locator(".lw-cell .lw-caution").textContent()).toMatch(/^The cell shows 36\.89\d+, but its numbers now give 36\.87\d+: have the workbook computed again \(F9\)$/);
  });

  it("says what is empty, and which input an error comes from", async () => {
    await explain("F3");
    await told("Cannot compute without weight: it is empty and must be a number above 0. Fill in what is marked below.");
    expect(await page.locator(".lw-blamed").allTextContents()).toEqual(["weight look hereemptyNet (g), D3"]);
    await explain("F4");
    expect(await page.locator(".lw-said").textContent()).toContain('#VALUE! Cannot use unit = "oz"');
    expect(await page.locator(".lw-blamed").allTextContents()).toEqual(["unit look here“oz”"]);
  });

  it("explains a cell of a spill by the formula that fills it", async () => {
    await select("B7");
    await told("Lots!A6, which fills B7");
    expect(await announced()).toBe("Lots!A6: LOT.BARS");
  });

  it("copies the working, and the formula that computes without the add-in, as the user's spreadsheet takes it", async () => {
    await page.close();
    await show("?separator=;&decimal=,");
    await page.context().grantPermissions(["clipboard-read", "clipboard-write"]);
    const clipboard = () => page.evaluate(() => navigator.clipboard.readText());
    await explain("G2");
    await told('=ROUND(LOT.COPPER(F2;"ozt";Prices!B5);2)');
    await button("Copy as text").click();
    await told("Copied");
    expect(await clipboard()).toMatch(/^Lots!G2 = 12\.28\n=ROUND\(LOT\.COPPER\(F2,"ozt",Prices!B5\),2\)\n\nLOT\.COPPER\(F2,"ozt",Prices!B5\)\nCopper that the drop consumes\n/);
    expect(await clipboard()).toMatch(/\n\nF2: Fine \(ozt\)\nPrices!B5: Copper allowance$/);
    await page.getByText("Without the add-in").click();
    await button("Copy the formula").click();
    expect(await clipboard()).toBe("=ROUND((F2*31,1034768*1/2*63,546/107,8682*(Prices!B5+1)/31,1034768);2)");
  });

  it("puts the working beside the cell as a note when that was seen, and takes it back", async () => {
    await explain("F2");
    await button("Put beside as a note").click();
    await told("The note beside F2");
    expect(await note("F2")).toBeNull();
    expect(await page.locator("pre").textContent()).toContain("fine weight = 1240.5 × 0.925 = 1147.4625 g");
    await page.keyboard.press("Escape");
    expect(await focused()).toBe("Put beside as a note");
    await page.keyboard.press("Enter");
    await button("Write it").waitFor();
    await page.keyboard.press("Enter");
    await told("The note beside F2 holds the working");
    expect(await note("F2")).toContain("Rule       net weight times fineness");

    await button("Put beside as a note").click();
    await told("The note beside F2 is filled");
    expect(await button("Overwrite").isDisabled()).toBe(true);
    await button("Keep it as it is").click();
    await page.evaluate(() => {
      window.shop.unmount();
      window.shop.mount();
    });
    await button("Undo").click();
    await told("The note beside F2 is as it was");
    expect(await note("F2")).toBeNull();
  });

  it("treats what stands in the workbook as text, and does not scroll sideways", async () => {
    await put("Lots!B1", '<img src=x onerror="document.title=1">'.repeat(2));
    await put("Lots!E2", "a_text_without_any_gap_in_it_that_is_longer_than_the_pane_is_wide");
    await explain("F2");
    expect(await page.locator("img").count()).toBe(0);
    expect(await page.evaluate(() => (document.querySelector("#pane")?.scrollWidth ?? 0) - (document.querySelector("#pane")?.clientWidth ?? 0))).toBe(0);
  });
});
