import { readFile } from "node:fs/promises";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import { openXlsx } from "../../src/workbook/file";
import { type Started, start } from "../host/started";
import { launch } from "./chromium";

let started: Started;
let browser: Browser;
let page: Page;

beforeAll(async () => {
  [started, browser] = await Promise.all([start(), launch()]);
  page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
  page.setDefaultTimeout(10_000);
  await page.goto(started.address);
  await page.locator(".file-name", { hasText: "cost-sheet.xlsx" }).waitFor();
  await page.locator(".busy").waitFor({ state: "hidden" });
}, 240_000);
afterAll(async () => {
  await browser.close();
  await started.stop();
});

const button = (name: string | RegExp) => page.locator(".pane").getByRole("button", { name });
const place = () => page.locator(".lw-cell .lw-of").textContent();

/** As a finger does it: the grid counts on some time between a key's going down and coming up. */
const press = (key: string): Promise<void> => page.keyboard.press(key, { delay: 40 });

it("a cell of the sample is explained, its working put beside it as a note, taken back, and kept in the saved file", async () => {
  await press("Shift+PageDown");
  await press("Control+Home");
  for (let i = 0; i < 10; i++) await press("ArrowRight");
  for (let i = 0; i < 4; i++) await press("ArrowDown");
  await button(/^Explain a cell/).click();
  await expect.poll(place).toBe("Lots!K5");
  const inputs = await page.locator(".lw-jump").allTextContents();
  expect(inputs[0]).toMatch(/^Fine.*, J5$/);
  expect(inputs[1]).toMatch(/.+, \S+![A-Z]+\d+$/);
  expect(await page.locator(".lw-part-result").textContent()).toMatch(/copper = 5\.3879\d+… lb/);
  expect(await page.locator(".lw-cell .lw-caution").count()).toBe(0);

  await page.locator(".lw-jump").first().click();
  await expect.poll(place).toBe("Lots!J5");
  await button(/Back to K5$/).click();
  await expect.poll(place).toBe("Lots!K5");

  const keep = async (): Promise<void> => {
    await button("Put beside as a note").click();
    await button("Write it").click();
    await page.getByText("The note beside K5 holds the working").waitFor();
  };
  await keep();
  await button("Undo").click();
  await page.getByText("The note beside K5 is as it was").waitFor();
  await page.keyboard.press("Control+s");
  await page.getByText("Nothing has changed in cost-sheet.xlsx since it was opened").waitFor();

  await keep();
  const [download] = await Promise.all([page.waitForEvent("download"), page.keyboard.press("Control+s")]);
  const file = openXlsx(new Uint8Array(await readFile(await download.path())));
  expect(file.notes("Lots").get("K5")).toContain("Copper that the drop consumes");

  await button("Undo").click();
  await page.getByText("The note beside K5 is as it was").waitFor();
  const [again] = await Promise.all([page.waitForEvent("download"), page.keyboard.press("Control+s")]);
  const sample = await readFile(new URL("../../sample-workbooks/cost-sheet.xlsx", import.meta.url));
  expect(sample.equals(await readFile(await again.path()))).toBe(true);
});
