import { readFile, writeFile, mkdtemp } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser, Download, Page } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import { type XlsxFile, openXlsx } from "../../src/workbook/file";
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

const button = (name: string | RegExp) => page.locator(".pane").getByRole("button", { name });
const read = async (download: Download): Promise<XlsxFile> => openXlsx(new Uint8Array(await readFile(await download.path())));
const formulas = (file: XlsxFile): string[] => file.sheets.flatMap(({ name }) => [...file.cells(name)].flatMap(({ address, formula }) => (formula === null ? [] : [`${name}!${address} ${formula}`])));

it("a copy is shared, comes back changed, and is put back in the pane", async () => {
  const before = openXlsx(new Uint8Array(await readFile(new URL("../../sample-workbooks/cost-sheet.xlsx", import.meta.url))));
  await button(/^Share a copy/).click();
  const [download] = await Promise.all([page.waitForEvent("download"), button("Make the copy").click()]);
  expect(download.suggestedFilename()).toBe("cost-sheet for the bookkeeper.xlsx");
  const copy = await read(download);
  expect(formulas(copy).filter((formula) => formula.includes("LOT."))).toEqual([]);
  expect(copy.sheets.at(-1)?.name).toBe("Workings");
  await page.getByText(/The copy is made, 87 cells now an ordinary formula each/).waitFor();
  expect(await page.locator(".lw-share").count()).toBe(1);

  const folder = await mkdtemp(join(tmpdir(), "lotwright-share-"));
  const back = join(folder, "came-back.xlsx");
  await writeFile(back, copy.patch([{ sheet: "Lots", cell: "K5", formula: null, value: 6 }, { sheet: "Lots", cell: "G6", value: 12 }]));
  const [chooser] = await Promise.all([page.waitForEvent("filechooser"), page.getByRole("button", { name: /^Open/ }).click()]);
  await chooser.setFiles(back);
  await page.locator(".file-name", { hasText: "came-back.xlsx" }).waitFor();
  await page.locator(".busy").waitFor({ state: "hidden" });
  await page.getByText("This workbook is a shared copy").waitFor();
  const [whole] = await Promise.all([page.waitForEvent("download"), button("Put back").click()]);
  expect(whole.suggestedFilename()).toBe("came-back put back.xlsx");
  const restored = await read(whole);
  expect(formulas(restored)).toEqual(formulas(before).filter((formula) => !formula.startsWith("Lots!K5 ")));
  await page.getByText(/54 formulas of Lotwright stand again; 1 cell stays as it came back/).waitFor();
  await button("Lots!K5").click();
  await expect.poll(() => page.locator(".pane").textContent()).toContain("what stands there was changed");
}, 60_000);
