import { readFile } from "node:fs/promises";
import { Workbook } from "@cj-tech-master/excelts";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import { openXlsx } from "../../src/workbook/file";
import { type Started, start } from "../host/started";
import { HEADINGS, goodRows } from "../lots/reconcile-books";
import { bytesOf, listOn } from "../lots/ugly/writing";
import { placed } from "../month/books";
import { outside } from "../outside";
import { shownBy } from "../workbook/libreoffice";
import { launch } from "./chromium";

/** What people who mean harm, or a careless import, put into cells. */
const TEXTS = [
  "<img src=x onerror=boom()>", "<script>boom()</script>", '"><svg onload="boom()">', "=cmd|' /C calc'!A0", "+1", "-1", "@SUM(1;2)", "\tTab", "two\nlines",
  "javascript:boom()", "&lt;b&gt;", '=HYPERLINK("https://elsewhere.example","x")',
];
const SHEET = "Lots <img src=x onerror=boom()>";

let started: Started;
let browser: Browser;
let page: Page;
let saved = new Uint8Array();

beforeAll(async () => {
  [started, browser] = await Promise.all([start(), launch()]);
  const book = new Workbook();
  const rows = goodRows(TEXTS.length);
  rows.forEach((row, i) => {
    if (i === 1) row[0] = `26-002 ${TEXTS[1] ?? ""}`;
    row[2] = TEXTS[i] ?? "";
    // One lot that contradicts itself, and the last one open.
    if (i === 1) row[13] = 600;
    row.push(TEXTS[(i + 3) % TEXTS.length] ?? "");
  });
  listOn(book.addWorksheet(SHEET), { headings: [...HEADINGS, 'Remarks <svg onload="boom()">'], headingRow: 1, rows, formats: { B: "yyyy-mm-dd", J: "0.0%", P: "0.0%", R: "yyyy-mm-dd" } });
  const bytes = (await placed(await bytesOf(book))).file.bytes;
  page = await browser.newPage({ viewport: { width: 1280, height: 900 } });
  page.setDefaultTimeout(15_000);
  await page.addInitScript(() => {
    const found: string[] = [];
    Object.assign(window, { found, boom: () => void found.push("it ran") });
    const look = (node: Node): void => {
      if (!(node instanceof Element)) return;
      for (const one of [node, ...node.querySelectorAll("*")])
        if (one.matches("[onerror], [onload], img[src='x'], a[href^='javascript:'], a[href*='elsewhere']") || (one.localName === "script" && one.textContent?.includes("boom"))) found.push(one.outerHTML);
    };
    new MutationObserver((changes) => changes.forEach(({ addedNodes, target }) => (addedNodes.forEach(look), look(target)))).observe(document, { subtree: true, childList: true, attributes: true });
  });
  await page.goto(started.address);
  await page.locator(".file-name", { hasText: "cost-sheet.xlsx" }).waitFor();
  await page.locator(".busy").waitFor({ state: "hidden" });
  await page.locator("input[type=file]").setInputFiles({ name: "lots <img src=x onerror=boom()>.xlsx", mimeType: "application/octet-stream", buffer: Buffer.from(bytes) });
  await page.locator(".file-name", { hasText: "onerror" }).waitFor();
  await page.locator(".busy").waitFor({ state: "hidden" });
}, 240_000);
afterAll(async () => {
  await browser.close();
  await started.stop();
});

const pane = () => page.locator(".pane");
const button = (name: string | RegExp) => pane().getByRole("button", { name, exact: typeof name === "string" });
const box = (name: RegExp) => pane().getByLabel(name).and(pane().locator("input, textarea")).first();
const unharmed = async (): Promise<void> => expect(await page.evaluate(() => (window as unknown as { found: string[] }).found)).toEqual([]);
async function task(name: RegExp, body: () => Promise<void>): Promise<void> {
  await button(name).click();
  await body();
  await unharmed();
  await button(/All tasks/).click();
}

it("what stands in cells, headings and the names of sheets and files is shown as it is, and written as a text", async () => {
  await task(/^Set up a lot/, async () => {
    await button("Next").click();

    await box(/^Lot number/).fill(TEXTS[0] ?? "");
    await box(/^Client/).fill(TEXTS[3] ?? "");
    await box(/^Gross/).fill("1000");
    await box(/^Tare/).fill("10");
    await box(/^Fineness/).fill("925");
    await button("Next").click();
    await pane().getByRole("heading", { name: "The plan", level: 2 }).waitFor();
    await button("Next").click();
    await button("Write the lot").click();
    await pane().getByText(/is in row \d+ of Lots <img src=x/).waitFor();
  });
  await task(/^Quote a client/, async () => {
    await button(/^26-012 /).click();
    for (const [label, text] of [["Client", TEXTS[5]], ["Goods", TEXTS[1]], ["Net weight", "7500"], ["Low fineness", "915"], ["Likely fineness", "925"], ["High fineness", "928"], ["Price$", "24"], ["Payable share", "98%"], ["Days that it holds", "14"]] as const) await box(new RegExp(`^${label}`)).fill(text ?? "");
    await button("See what will be written").click();
    await button("Write the quote").click();
    await pane().getByText(/ready to print/).waitFor();
  });
  await task(/^Settle a lot/, async () => {
    await pane().getByRole("searchbox").fill("26-010");
    await button(/^26-010 /).click();
    for (const [label, text] of [["Our assay", "800"], ["Price", "24"], ["Crystal weighed out", "60"]] as const) await box(new RegExp(`^${label}`)).fill(text);
    await button("See what will be written").click();
    for (const tick of await pane().getByRole("checkbox").all()) await tick.check();
    await button("Write the settlement").click();
    await pane().getByText(/is settled on the sheet/).waitFor();
  });
  await task(/^Close a month/, async () => {
    for (const [label, text] of [["Opening, fine ozt", "100"], ["Its standard uncertainty, ozt", "0.3"], ["Scale, one weighing", "0.5"], ["Assay, in ‰", "1"], ["Bias of the scale", "0"]] as const) await pane().getByRole("textbox", { name: label }).fill(text);
    await button("Add to the count").click();
    const line = pane().getByRole("group", { name: "Counted at the end, line 1" });
    await line.getByRole("combobox", { name: "What" }).selectOption("Other metal");
    await line.getByRole("textbox", { name: /^Which/ }).fill(TEXTS[2] ?? "");
    await line.getByRole("textbox", { name: "Weight" }).fill("9000");
    await line.getByRole("textbox", { name: "Fineness" }).fill("999");
    await button("Show what will be written").click();
    await button("Write the sheet").click();
    await button("Undo").waitFor();
  });
  await task(/^Reconcile/, async () => {
    await pane().getByText(/26-002 <script>/).first().waitFor();
  });
  await task(/^Journal/, async () => {
    await pane().getByRole("combobox", { name: "Month" }).selectOption("2026-03");
    await button("As a new sheet").click();
    await button("Write the sheet").click();
    await pane().getByText(/The journal of .* is on the sheet/).waitFor();
  });
  await task(/^The shop/, async () => {
    await pane().getByLabel("Name", { exact: true }).fill(TEXTS[0] ?? "");
    await button("Keep in this workbook").click();
    await pane().getByText("Kept in this workbook, on its hidden sheet").waitFor();
  });
  const [download] = await Promise.all([page.waitForEvent("download"), page.keyboard.press("Control+s")]);
  saved = new Uint8Array(await readFile(await download.path()));
  const file = openXlsx(saved);
  const cells = file.sheets.flatMap(({ name }) => [...file.cells(name)].map((cell) => ({ name, ...cell })));
  for (const text of [TEXTS[0], TEXTS[1], TEXTS[3], TEXTS[5]]) expect(cells.some(({ value }) => value === text), text).toBe(true);
  // What a formula says in quotation marks is a text, and a sheet's name a name.
  const code = (formula: string): string => formula.replace(/"(?:[^"]|"")*"|'(?:[^']|'')*'/g, "");
  expect(cells.filter(({ formula }) => /cmd|HYPERLINK|boom|@SUM/.test(code(formula ?? ""))).map(({ name, address, formula }) => `${name}!${address} ${formula}`)).toEqual([]);
  await unharmed();
}, 180_000);

outside("soffice", "the workbook with such texts, opened by LibreOffice", (soffice) => {
  it("shows each of them as the text that it is", () => {
    const shown = [...shownBy(soffice, saved).values()].flat(2);
    for (const text of TEXTS.filter((one) => !one.includes("\n"))) expect(shown, text).toContain(text);
  }, 90_000);
});
