import { mkdtemp, readFile, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import axe from "axe-core";
import type { Browser, Locator, Page } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import { type Cell, openXlsx } from "../../src/workbook/file";
import { type Started, start } from "../host/started";
import { outside } from "../outside";
import { shownBy } from "../workbook/libreoffice";
import { launch } from "./chromium";

const MONTH = "Month 2025-12";
let started: Started;
let browser: Browser;
let page: Page;
let sample: Uint8Array;
/** The sample with its last month still open. */
let open: Uint8Array;
let written = new Uint8Array();

beforeAll(async () => {
  [started, browser] = await Promise.all([start(), launch()]);
  sample = new Uint8Array(await readFile(new URL("../../sample-workbooks/throughput.xlsx", import.meta.url)));
  open = openXlsx(sample).patch([], { withoutSheets: [MONTH] });
  page = await browser.newPage({ viewport: { width: 1280, height: 900 } });
  page.setDefaultTimeout(20_000);
  await page.goto(started.address);
  await page.locator(".file-name", { hasText: "cost-sheet.xlsx" }).waitFor();
  await page.locator(".busy").waitFor({ state: "hidden" });
  const path = join(await mkdtemp(join(tmpdir(), "lotwright-month-")), "december.xlsx");
  await writeFile(path, open);
  const [chooser] = await Promise.all([page.waitForEvent("filechooser"), page.getByRole("button", { name: /^Open/ }).click()]);
  await chooser.setFiles(path);
  await page.locator(".file-name", { hasText: "december.xlsx" }).waitFor();
  await page.locator(".busy").waitFor({ state: "hidden" });
}, 240_000);
afterAll(async () => {
  await browser.close();
  await started.stop();
});

const pane = () => page.locator(".pane");
const button = (name: string | RegExp) => pane().getByRole("button", { name });
const field = (name: string, on: Locator = pane()) => on.getByRole("textbox", { name });
const saved = async (): Promise<Uint8Array> => {
  const [download] = await Promise.all([page.waitForEvent("download"), page.keyboard.press("Control+s")]);
  return new Uint8Array(await readFile(await download.path()));
};
const cells = (bytes: Uint8Array): Map<string, Cell> => new Map([...openXlsx(bytes).cells(MONTH)].map((cell) => [cell.address, cell]));

/** Adds a line of metal to one of the two lists. */
async function metal(list: "Counted at the end" | "Shipped in the month", what: string, weight: string, fineness: string, own?: string): Promise<void> {
  await button(list.startsWith("Counted") ? "Add to the count" : "Add a shipment").click();
  const line = pane().getByRole("group", { name: new RegExp(`^${list}, line \\d+$`) }).last();
  await line.getByRole("combobox", { name: "What" }).selectOption("Other metal");
  await line.getByRole("textbox", { name: /^Which/ }).fill(what);
  await field("Weight", line).fill(weight);
  await line.getByRole("combobox", { name: "Unit of weight" }).selectOption("g");
  await field("Fineness", line).fill(fineness);
  if (own !== undefined) await line.getByRole("textbox", { name: /^Its own uncertainty/ }).fill(own);
}

it("a month is closed from what was counted and shipped, on a sheet with its charts, and undone to the same bytes", async () => {
  await button(/^Close a month/).click();
  await expect.poll(() => pane().getByRole("combobox", { name: "Month" }).inputValue()).toBe("2025-12");
  await pane().getByText("From the closing of sheet Month 2025-11.").waitFor();
  await field("Scale, one weighing").fill("1");
  await field("Assay, in ‰").fill("1");
  await field("Bias of the scale").fill("0");
  await metal("Counted at the end", "Crystal", "1835.4", "999.9");
  await metal("Counted at the end", "Filters, slimes and skulls", "1036", "120", "2%");
  await metal("Shipped in the month", "Crystal sold", "28646", "999.9");
  await metal("Shipped in the month", "Residues sold", "9050", "120", "2%");
  await pane().getByText("within measurement").first().waitFor();

  await page.evaluate(axe.source);
  const found = await page.evaluate(async () => {
    const { violations } = await (window as unknown as { axe: { run(on: string): Promise<{ violations: { id: string; impact: string }[] }> } }).axe.run(".pane");
    return violations.filter(({ impact }) => impact === "serious" || impact === "critical").map(({ id }) => id);
  });
  expect(found).toEqual([]);

  // A form survives the pane's leaving it.
  await page.keyboard.press("Escape");
  await button(/^Close a month/).click();
  await expect.poll(() => field("Weight", pane().getByRole("group", { name: "Shipped in the month, line 2" })).inputValue()).toBe("9050");

  await button("Show what will be written").click();
  await pane().getByText(new RegExp(`A new sheet, .?${MONTH}.?, with \\d+ filled cells`)).waitFor();
  await button("Write the sheet").click();
  await button("Undo").waitFor({ timeout: 60_000 });
  expect(await page.evaluate(() => document.scrollingElement?.scrollTop)).toBe(0);

  written = new Uint8Array(await saved());
  const [month, made] = [cells(written), cells(sample)];
  // The sample's month was written over a file by another adapter: the grid's is the same sheet, but that the grid writes 1e-9 for 1E-9.
  const held = (cells: ReadonlyMap<string, Cell>) => [...cells.values()].map(({ address, value, formula }) => ({ address, value, formula: formula?.replace(/(?<=\d)e(?=-\d)/g, "E") ?? null }));
  expect(held(month)).toEqual(held(made));
  expect(month.get("B13")?.value).toBe("within measurement");
  const charts = (bytes: Uint8Array): number => Object.keys(openXlsx(bytes).parts()).filter((name) => /^xl\/charts\/chart[^/]*\.xml$/.test(name)).length;
  expect(charts(written) - charts(open)).toBe(3);

  await button("Undo").click();
  await pane().getByText("Undone: the workbook is as it was").waitFor();
  expect(Buffer.compare(open, await saved())).toBe(0);
}, 180_000);

outside("soffice", "the closed month, opened by LibreOffice", (soffice) => {
  it("shows the figures that the grid stored", () => {
    const rows = shownBy(soffice, written).get(MONTH) ?? [];
    let compared = 0;
    for (const { row, column, value, formula } of cells(written).values()) {
      if (typeof value !== "number" || formula === null) continue;
      const shown = rows[row - 1]?.[column - 1] ?? "";
      const number = shown.endsWith("%") ? Number(shown.slice(0, -1)) / 100 : Number(shown.replace(/[^\d.eE+-]/g, ""));
      if (/^\d{4}-\d\d-\d\d/.test(shown)) continue;
      expect(Math.abs(number - value), `row ${row} shows ${shown} for ${value}`).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(value)));
      compared++;
    }
    expect(compared).toBeGreaterThan(100);
  }, 60_000);
});
