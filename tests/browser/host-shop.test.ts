import { readFile } from "node:fs/promises";
import axe from "axe-core";
import type { Browser, Download, Page } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import { readShop } from "../../src/lots/shop";
import { openXlsx } from "../../src/workbook/file";
import { FilePort } from "../../src/workbook/file-port";
import { type Started, start } from "../host/started";
import { launch } from "./chromium";

let started: Started;
let browser: Browser;
let page: Page;

beforeAll(async () => {
  [started, browser] = await Promise.all([start(), launch()]);
  page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
  page.setDefaultTimeout(15_000);
  await page.goto(started.address);
  await page.locator(".file-name", { hasText: "cost-sheet.xlsx" }).waitFor();
  await page.locator(".busy").waitFor({ state: "hidden" });
}, 240_000);
afterAll(async () => {
  await browser.close();
  await started.stop();
});

const pane = () => page.locator(".pane");
const button = (name: string | RegExp) => pane().getByRole("button", { name });
const field = (name: string) => pane().getByLabel(name, { exact: true });
const saved = async (): Promise<Uint8Array> => {
  const [download] = await Promise.all([page.waitForEvent("download"), page.keyboard.press("Control+s")]);
  return new Uint8Array(await readFile(await (download as Download).path()));
};

it("the shop is told by keyboard, kept in the saved file, taken back, and a form that was left is there again", async () => {
  await button(/^The shop/).press("Enter");
  await pane().getByText("This workbook does not know your shop yet").waitFor();
  await field("Name").fill("=Quillmere Silver");
  await field("Address").fill("1 Mill Lane\nPort Hollow");
  await pane().locator("summary", { hasText: "Usual terms" }).focus();
  await page.keyboard.press("Enter");
  await field("Payable").fill("98");
  await pane().getByText('could be a share or a percentage: write "98%" or 0.98').waitFor();
  await button("Keep in this workbook").press("Enter");
  await pane().getByText("Not kept: mend payable first").waitFor();
  expect(await page.evaluate(() => (document.activeElement as HTMLInputElement | null)?.value)).toBe("98");
  await page.keyboard.press("Control+a");
  await page.keyboard.type("98%");

  await page.keyboard.press("Escape");
  await button(/^The shop/).press("Enter");
  await pane().getByText("There are changes here that the workbook does not keep yet").waitFor();
  await expect.poll(() => field("Payable").inputValue()).toBe("98%");

  await field("Price of fine silver").fill("Prices!B5");
  await button("Keep in this workbook").press("Enter");
  await pane().getByText("Kept in this workbook, on its hidden sheet Lotwright").waitFor();
  const bytes = await saved();
  expect(await readShop(new FilePort(openXlsx(bytes)))).toEqual({
    name: { value: "=Quillmere Silver" },
    address: { value: "1 Mill Lane\nPort Hollow" },
    payable: { value: "98%" },
    price: { sheet: "Prices", cell: "B5", unit: "ozt" },
  });
  expect(openXlsx(bytes).sheets.find(({ name }) => name === "Lotwright")?.state).toBe("hidden");

  await button("Undo").press("Enter");
  await pane().getByText("Undone: the workbook keeps what it kept before").waitFor();
  const sample = await readFile(new URL("../../sample-workbooks/cost-sheet.xlsx", import.meta.url));
  expect(Buffer.compare(sample, await saved())).toBe(0);
}, 60_000);

it("has nothing that keeps someone out", async () => {
  for (const details of await pane().locator("details").all()) await details.evaluate((one) => ((one as HTMLDetailsElement).open = true));
  await page.evaluate(axe.source);
  const found = await page.evaluate(async () => {
    const { violations } = await (window as unknown as { axe: { run(on: string): Promise<{ violations: { id: string; impact: string }[] }> } }).axe.run(".pane");
    return violations.filter(({ impact }) => impact === "serious" || impact === "critical").map(({ id }) => id);
  });
  expect(found).toEqual([]);
}, 60_000);
