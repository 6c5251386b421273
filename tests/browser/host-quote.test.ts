import { readFile } from "node:fs/promises";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import { evaluate } from "../../src/engine/evaluate";
import { type Cell, openXlsx } from "../../src/workbook/file";
import { type Started, start } from "../host/started";
import { outside } from "../outside";
import { shownBy } from "../workbook/libreoffice";
import { launch } from "./chromium";

let started: Started;
let browser: Browser;
let page: Page;
let written = new Uint8Array();

beforeAll(async () => {
  [started, browser] = await Promise.all([start(), launch()]);
  page = await browser.newPage({ viewport: { width: 1280, height: 900 } });
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
const field = (name: RegExp) => pane().getByRole("textbox", { name });
const saved = async (): Promise<Uint8Array> => {
  const [download] = await Promise.all([page.waitForEvent("download"), page.keyboard.press("Control+s")]);
  return new Uint8Array(await readFile(await download.path()));
};
const NAME = `Quote Q-${new Date().getFullYear()}-001`;
const cells = (): Cell[] => [...openXlsx(written).cells(NAME)];

it("a client is quoted from scratch, on a sheet that the saved file has, and Escape and Undo lead back", async () => {
  await button(/^Quote a client/).click();
  await field(/^Client/).fill("@Bright & Sons");
  await field(/^Net weight/).fill("7500");
  await field(/^Low fineness/).fill("915");
  await field(/^Likely fineness/).fill("925");
  await field(/^High fineness/).fill("92.8%");
  await field(/^Price$/).fill("24");
  await field(/^Price may go/).fill("5%");
  await field(/^Payable share/).fill("98%");
  await field(/^Days that it holds/).fill("14");
  await expect.poll(() => pane().locator(".lw-result").textContent()).toContain("5,246.04");
  await button("See what will be written").click();
  await pane().getByText(`A new sheet, ‘${NAME}’`).waitFor();
  await page.keyboard.press("Escape");
  expect(await pane().getByText(`A new sheet, ‘${NAME}’`).count()).toBe(0);
  await button("See what will be written").click();
  await button("Write the quote").click();
  await pane().getByText(/is on the sheet/).waitFor();

  written = new Uint8Array(await saved());
  const payouts = cells().filter(({ formula }) => formula?.startsWith("=LOT.PAYOUT("));
  const expected = evaluate('=LOT.QUOTE(7500,"g",915,925,"92.8%",24,0.98,0,0,0.05)') as unknown as (string | number)[][];
  for (const label of ["Payout, price down", "Payout, price as quoted", "Payout, price up"])
    for (const value of expected.find(([name]) => name === label)?.slice(1) ?? []) expect(payouts.map((cell) => cell.value)).toContain(value);
  expect(cells().find(({ value }) => value === "@Bright & Sons")).toMatchObject({ formula: null });

  await button("Undo").click();
  await pane().getByText("Undone: the workbook is as it was").waitFor();
  const sample = await readFile(new URL("../../sample-workbooks/cost-sheet.xlsx", import.meta.url));
  expect(Buffer.compare(sample, await saved())).toBe(0);
}, 60_000);

outside("soffice", "the quoted workbook, opened by LibreOffice", (soffice) => {
  it("shows the stored values of the quote", () => {
    const rows = shownBy(soffice, written).get(NAME) ?? [];
    const numbers = cells().filter(({ value, formula }) => typeof value === "number" && formula?.includes("LOT."));
    expect(numbers.length).toBeGreaterThan(10);
    for (const { row, column, value } of numbers) expect(Math.abs(Number((rows[row - 1]?.[column - 1] ?? "").replace(/[^\d.eE+-]/g, "")) - Number(value))).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(Number(value))));
  }, 60_000);
});
