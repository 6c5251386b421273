/** npm run pictures: the README's pictures, taken from the running product. */
import { mkdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import type { Locator, Page } from "playwright-core";
import { findLots } from "../../src/lots/find";
import { readSheets } from "../../src/lots/sheet-reading";
import { placeChanges } from "../../src/lots/where";
import { openXlsx } from "../../src/workbook/file";
import { FilePort } from "../../src/workbook/file-port";
import { start } from "../host/started";
import { launch } from "./chromium";

const samples = fileURLToPath(new URL("../../sample-workbooks/", import.meta.url));
const folder = `${samples}pictures/`;
mkdirSync(folder, { recursive: true });

const pane = (page: Page): Locator => page.locator(".pane");
const button = (page: Page, name: string | RegExp): Locator => pane(page).getByRole("button", { name });
const field = (page: Page, name: RegExp): Locator => pane(page).getByRole("textbox", { name });
const step = (page: Page, name: string): Promise<void> => pane(page).getByRole("heading", { name, level: 2 }).waitFor();

const host = await start();
const browser = await launch();
try {
  await costSheet(await opened("cost-sheet.xlsx"));
  await setUpALot(await opened("cost-sheet.xlsx"));
  await settleALot(await opened("cost-sheet.xlsx", await placed("cost-sheet.xlsx")));
  await closeAMonth(await opened("throughput.xlsx", openXlsx(readFileSync(`${samples}throughput.xlsx`)).patch([], { withoutSheets: ["Month 2025-12"] })));
  await sheetOf("quotes", 3, 38, 980);
  await sheetOf("throughput", 10, 0);
  await sheetOf("bookkeeper-copy", 15, 0);
} finally {
  await browser.close();
  await host.stop();
}

/** A page with a workbook in it: a sample as it is, or what is given for it. */
async function opened(name: string, bytes: Uint8Array = readFileSync(samples + name)): Promise<Page> {
  const page = await browser.newPage({ viewport: { width: 1440, height: 800 }, deviceScaleFactor: 1.1 });
  await page.goto(host.address);
  await page.locator(".file-name", { hasText: "cost-sheet.xlsx" }).waitFor();
  await page.locator(".busy").waitFor({ state: "hidden" });
  await page.locator("input[type=file]").setInputFiles({ name, mimeType: "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet", buffer: Buffer.from(bytes) });
  await page.locator(".file-name", { hasText: name }).waitFor();
  await page.locator(".busy").waitFor({ state: "hidden" });
  return page;
}

/** The sample, in which where its lots live is kept. */
async function placed(name: string): Promise<Uint8Array> {
  const port = new FilePort(openXlsx(readFileSync(samples + name)));
  const [proposal] = findLots(await readSheets(port)).proposals;
  if (!proposal) throw new Error(`${name} has no list of lots`);
  await port.write(await placeChanges(port, proposal));
  return port.file.bytes;
}

/** Counted from the first sheet, hidden ones too. */
async function onSheet(page: Page, sheet: number): Promise<void> {
  await move(page, "Shift+PageDown", sheet);
}

async function move(page: Page, key: string, times: number): Promise<void> {
  for (let i = 0; i < times; i++) await page.keyboard.press(key, { delay: 40 });
}

async function taken(page: Page, name: string, clip?: { x: number; y: number; width: number; height: number }): Promise<void> {
  await page.waitForTimeout(1000);
  await page.screenshot({ path: `${folder}${name}.png`, ...(clip ? { clip } : {}) });
  await page.close();
}

/** The pane alone, from one of its parts downwards. */
async function paneTaken(page: Page, name: string, from: Locator): Promise<void> {
  await page.setViewportSize({ width: 1440, height: 950 });
  await from.evaluate((part: HTMLElement) => {
    part.style.scrollMarginTop = "8px";
    part.scrollIntoView({ block: "start" });
  });
  const [whole, part] = [await pane(page).boundingBox(), await from.boundingBox()];
  if (!whole || !part) throw new Error(`${name}: nothing is shown`);
  const y = Math.max(whole.y, part.y - 8);
  await taken(page, name, { x: whole.x, y, width: whole.width, height: whole.y + whole.height - y });
}

/** The list of lots, and the pane explaining the copper of one. */
async function costSheet(page: Page): Promise<void> {
  await onSheet(page, 1);
  await page.keyboard.press("Control+Home", { delay: 40 });
  await move(page, "ArrowRight", 10);
  await move(page, "ArrowDown", 4);
  await button(page, /^Explain a cell/).click();
  await pane(page).locator(".lw-part-result").first().waitFor();
  await taken(page, "cost-sheet");
}

/** A sheet with the pane put away, the cell that is so many rows down in sight. */
async function sheetOf(sample: string, sheet: number, down: number, width = 1440): Promise<void> {
  const page = await opened(`${sample}.xlsx`);
  await page.setViewportSize({ width, height: 800 });
  await onSheet(page, sheet);
  await move(page, "ArrowDown", down);
  await page.getByRole("button", { name: "Pane" }).click();
  await taken(page, sample);
}

async function setUpALot(page: Page): Promise<void> {
  await button(page, /^Set up a lot/).click();
  await button(page, "Next").click();
  await step(page, "The lot");
  for (const [name, text] of [["Lot number", "26-03-09"], ["Date", "2026-03-30"], ["Client", "C-31"], ["What it is", "Forks and spoons"], ["Gross", "15.5"], ["Tare", "0.5"], ["Fineness", "925"], ["Payable", "95%"]] as const)
    await pane(page).getByLabel(new RegExp(`^${name}( may stay empty)?$`)).fill(text);
  for (const name of ["Unit of gross", "Unit of tare"]) await pane(page).getByLabel(name, { exact: true }).selectOption("lb");
  await button(page, "Next").click();
  await step(page, "The plan");
  await button(page, "Next").click();
  await step(page, "What will be written");
  await paneTaken(page, "set-up-a-lot", pane(page).getByRole("heading", { level: 1 }));
}

async function settleALot(page: Page): Promise<void> {
  await button(page, /^Settle a lot/).click();
  await button(page, /26-03-07/).click();
  for (const [name, text] of [[/^Our assay/, "800"], [/^The client’s assay/, "79.2%"], [/^Splitting limit/, "3"], [/^Umpire’s assay/, "796"], [/^Price/, "Prices!B5"], [/^Refining charge/, "Prices!B14"], [/^Crystal weighed out/, "136"], [/^Silver on stubs/, "0.9"]] as const)
    await field(page, name).fill(text);
  await button(page, "See what will be written").click();
  await pane(page).getByText("A new sheet, ‘Statement S-2026-001’").waitFor();
  await paneTaken(page, "settle-a-lot", pane(page).getByRole("heading", { name: "Where the silver went" }));
}

async function closeAMonth(page: Page): Promise<void> {
  await button(page, /^Close a month/).click();
  await pane(page).getByText("From the closing of sheet Month 2025-11.").waitFor();
  for (const [name, text] of [["Scale, one weighing", "1"], ["Assay, in ‰", "1"], ["Bias of the scale", "0"]] as const) await pane(page).getByRole("textbox", { name }).fill(text);
  for (const [list, what, weight, fineness] of [["count", "Crystal", "1835.4", "999.9"], ["count", "Filters, slimes and skulls", "1036", "120"], ["shipment", "Crystal sold", "28646", "999.9"], ["shipment", "Residues sold", "9050", "120"]] as const) {
    await button(page, list === "count" ? "Add to the count" : "Add a shipment").click();
    const line = pane(page).getByRole("group", { name: new RegExp(`^${list === "count" ? "Counted at the end" : "Shipped in the month"}, line \\d+$`) }).last();
    await line.getByRole("combobox", { name: "What" }).selectOption("Other metal");
    await line.getByRole("textbox", { name: /^Which/ }).fill(what);
    await line.getByRole("textbox", { name: "Weight" }).fill(weight);
    await line.getByRole("combobox", { name: "Unit of weight" }).selectOption("g");
    await line.getByRole("textbox", { name: "Fineness" }).fill(fineness);
  }
  await pane(page).getByText("within measurement").first().waitFor();
  await paneTaken(page, "close-a-month", pane(page).getByText("Balance, fine troy ounces"));
}
