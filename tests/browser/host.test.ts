import { readFile } from "node:fs/promises";
import { unzipSync } from "fflate";
import type { Browser, BrowserContext, Download, Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it, vi } from "vitest";
import { type Cell, openXlsx } from "../../src/workbook/file";
import { type Started, start } from "../host/started";
import { shopBook } from "../workbook/written-by-excelts";
import { launch } from "./chromium";

let started: Started;
let browser: Browser;
let context: BrowserContext;
let page: Page;
let shop: Uint8Array;
/** What the page says to a developer, and where it goes: neither is to happen. */
let complaints: string[];
let abroad: string[];

beforeAll(async () => {
  [started, browser, shop] = await Promise.all([start(), launch(), shopBook()]);
}, 240_000);
afterAll(async () => {
  await browser.close();
  await started.stop();
});

beforeEach(async () => {
  context = await browser.newContext({ viewport: { width: 1280, height: 800 }, permissions: ["clipboard-read", "clipboard-write"], acceptDownloads: true });
  page = await context.newPage();
  page.setDefaultTimeout(8000);
  complaints = [];
  abroad = [];
  page.on("console", (message) => {
    if (["error", "warning"].includes(message.type())) complaints.push(message.text());
  });
  page.on("pageerror", (error) => complaints.push(String(error)));
  page.on("request", (request) => {
    if (!/^(?:blob|data):/.test(request.url()) && !request.url().startsWith(started.address)) abroad.push(request.url());
  });
  await page.goto(started.address);
  await opened("cost-sheet.xlsx");
});
afterEach(async () => {
  expect(complaints).toEqual([]);
  expect(abroad).toEqual([]);
  await context.close();
});

const opened = async (name: string): Promise<void> => {
  await page.locator(".file-name", { hasText: name }).waitFor();
  await page.locator(".busy").waitFor({ state: "hidden" });
};

const openBytes = (name: string, bytes: Uint8Array): Promise<void> =>
  page.locator("input[type=file]").setInputFiles({ name, mimeType: "application/octet-stream", buffer: Buffer.from(bytes) });

/** As a finger does it: the grid counts on some time between a key's going down and coming up. */
const press = (key: string): Promise<void> => page.keyboard.press(key, { delay: 40 });

/** With the keyboard, from the sheet's first cell. */
async function goTo(cell: string): Promise<void> {
  const [, column = "", row = ""] = /^([A-Z])(\d+)$/.exec(cell) ?? [];
  await press("Control+Home");
  for (let i = 0; i < column.charCodeAt(0) - 65; i++) await press("ArrowRight");
  for (let i = 1; i < Number(row); i++) await press("ArrowDown");
  await drawn();
}

/** The grid makes itself ready for the next key while it draws; no hand types faster. */
const drawn = (): Promise<void> =>
  page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => setTimeout(done, 30)))));

async function typeInto(cell: string, text: string): Promise<void> {
  await goTo(cell);
  await page.keyboard.type(text, { delay: 10 });
  await press("Enter");
  await drawn();
}

/** What a cell shows, by copying it: the grid hands a copy over some time after the key. */
async function shown(cell: string): Promise<string> {
  await goTo(cell);
  await page.evaluate(() => navigator.clipboard.writeText("not copied yet"));
  await page.keyboard.press("Control+c");
  return vi.waitUntil(
    async () => {
      const text = await page.evaluate(() => navigator.clipboard.readText());
      return text === "not copied yet" ? false : text === "" ? " " : text;
    },
    { timeout: 5000 },
  );
}

const status = (): Promise<string> => page.locator(".cell-status").innerText();
const notices = async (): Promise<string> => (await page.locator(".notice p").allInnerTexts()).join("\n");

async function saved(save: () => Promise<void> = () => page.keyboard.press("Control+s")): Promise<Uint8Array> {
  const [download] = await Promise.all([page.waitForEvent("download"), save()]);
  return bytesOf(download);
}
const bytesOf = async (download: Download): Promise<Uint8Array> => new Uint8Array(await readFile(await download.path()));

const cellsOf = (bytes: Uint8Array, sheet: string): Map<string, Cell> => new Map([...openXlsx(bytes).cells(sheet)].map((cell) => [cell.address, cell]));

describe("the page, as a refiner finds it", () => {
  it("opens on the sample cost sheet with the keyboard in its cells", async () => {
    expect(await page.title()).toBe("cost-sheet.xlsx – Lotwright");
    expect(await shown("A2")).toContain("An invented shop");
  });

  it("computes a formula that is typed into a cell", async () => {
    await typeInto("C4", '=LOT.COPPER(B4,"lb")');
    expect(Number(await shown("C4"))).toBeCloseTo(2.9455, 4);
    expect(await page.locator(".changed").innerText()).toBe("changed, not saved");
    expect(await page.title()).toMatch(/^• /);
  });

  it("says what to write instead of a wrong unit, beside the cell and at the foot", async () => {
    await typeInto("C4", '=LOT.COPPER(B4,"oz")');
    expect(await shown("C4")).toBe("#VALUE!");
    expect(await status()).toMatch(/^#VALUE! Cannot use unit = "oz": .* write "ozt" \(troy/);
    await goTo("A1");
    const overlay = await page.locator(".o-grid-overlay").boundingBox();
    await page.mouse.move((overlay?.x ?? 0) + 380, (overlay?.y ?? 0) + 120);
    await page.mouse.move((overlay?.x ?? 0) + 375, (overlay?.y ?? 0) + 118);
    await page.locator(".o-error-tooltip", { hasText: 'write "ozt"' }).waitFor({ timeout: 5000 });
  });

  it("offers the nearest name for one that does not exist", async () => {
    await typeInto("C4", "=LOT.COPER(B4)");
    await goTo("C4");
    expect(await status()).toBe("#NAME? Cannot find LOT.COPER: did you mean LOT.COPPER");
  });

  it("lists our functions as they are typed, and tells of the argument at hand", async () => {
    await goTo("C4");
    await page.keyboard.type("=LOT.COP", { delay: 10 });
    const list = page.locator(".o-autocomplete-value");
    await list.first().waitFor();
    expect((await list.allInnerTexts()).slice(0, 1)).toEqual(["LOT.COPPER"]);
    await press("Tab");
    await drawn();
    await page.keyboard.type('B4,"lb",', { delay: 10 });
    const help = page.locator(".o-formula-assistant");
    await help.waitFor();
    expect((await help.innerText()).replace(/\s+/g, " ")).toMatch(/^LOT\.COPPER \( fine, unit, \[allowance\], \[freeAcid\], \[to\] \) allowance .*Copper beyond what the reaction takes/);
    await page.keyboard.press("Escape");
  });

  it("can be walked with the keyboard alone: bar, sheet, pane and back", async () => {
    const where = (): Promise<string> =>
      page.evaluate(() => ["bar", "grid", "pane"].find((part) => document.querySelector(`.${part}`)?.contains(document.activeElement)) ?? "nowhere");
    const walk: string[] = [await where()];
    for (const key of ["F6", "F6", "F6", "Shift+F6"]) {
      await page.keyboard.press(key);
      walk.push(await where());
    }
    expect(walk).toEqual(["grid", "pane", "bar", "grid", "bar"]);
    const reached: string[] = [];
    for (let i = 0; i < 6; i++) {
      reached.push(await page.evaluate(() => document.activeElement?.getAttribute("aria-label") ?? document.activeElement?.textContent ?? ""));
      await page.keyboard.press("Tab");
    }
    expect(reached).toEqual(expect.arrayContaining(["Open a sample workbook", "Open…", "Save", "Pane"]));
  });

  it("shows and hides the pane", async () => {
    const pane = page.locator("aside.pane");
    await page.getByRole("button", { name: "Pane" }).click();
    expect(await pane.isVisible()).toBe(false);
    await page.getByRole("button", { name: "Pane" }).click();
    expect(await pane.isVisible()).toBe(true);
    expect(await pane.innerText()).toContain("All functions");
  });

  it("offers the samples", async () => {
    const picker = page.getByRole("combobox", { name: "Open a sample workbook" });
    expect(await picker.locator("option").allInnerTexts()).toEqual(expect.arrayContaining(["Cost sheet"]));
    await openBytes("shop.xlsx", shop);
    await opened("shop.xlsx");
    await picker.selectOption({ label: "Cost sheet" });
    await opened("cost-sheet.xlsx");
  });
});

describe("a workbook of one's own", () => {
  beforeEach(async () => {
    await openBytes("shop.xlsx", shop);
    await opened("shop.xlsx");
  });

  it("is shown with its formats and its chart", async () => {
    expect(await shown("C2")).toBe("1,250.50");
    expect(await page.locator(".o-figure canvas, canvas.o-figure-canvas").count()).toBeGreaterThan(0);
  });

  it("is saved with the new formula as Excel stores it and with all else as it was", async () => {
    await typeInto("F2", '=LOT.FINEWEIGHT(C2,"g",D2,"g")');
    await typeInto("C3", "2000");
    const after = await saved();
    const [before, now] = [unzipSync(shop), unzipSync(after)];
    expect(Object.keys(now)).toEqual(Object.keys(before));
    const changed = Object.keys(before).filter((part) => Buffer.compare(before[part] ?? new Uint8Array(), now[part] ?? new Uint8Array()) !== 0);
    expect(changed).toEqual(["xl/worksheets/sheet1.xml"]);
    expect(now["xl/charts/chart1.xml"]).toEqual(before["xl/charts/chart1.xml"]);
    const sheet = new TextDecoder().decode(now["xl/worksheets/sheet1.xml"]);
    expect(sheet).toContain('<f>_xldudf_LOT_FINEWEIGHT(C2,"g",D2,"g")</f><v>1156.7125</v>');
    expect(cellsOf(after, "Lots").get("E3")).toMatchObject({ formula: "=C3*D3/1000", value: 1600 });
    expect(await notices()).toMatch(/^Saved shop\.xlsx with 3 changed cells/);
    expect(await page.locator(".changed").innerText()).toBe("");
  });

  it("is saved with what is still being typed", async () => {
    await goTo("F2");
    await page.keyboard.type("=1+1");
    expect(cellsOf(await saved(), "Lots").get("F2")).toMatchObject({ formula: "=1+1", value: 2 });
  });

  it("goes on from what was saved", async () => {
    await typeInto("F2", "first");
    await saved();
    await page.keyboard.press("Control+s");
    await page.locator(".notice", { hasText: "Nothing has changed" }).waitFor();
    await typeInto("F3", "second");
    const lots = cellsOf(await saved(() => page.getByRole("button", { name: "Save" }).click()), "Lots");
    expect([lots.get("F2")?.value, lots.get("F3")?.value]).toEqual(["first", "second"]);
  });

  it("keeps the old content out of what is typed while the page is too busy to be drawn", async () => {
    await typeInto("C4", "310.25");
    await goTo("C4");
    await page.evaluate(() => {
      for (const key of "2000") document.execCommand("insertText", false, key);
    });
    await press("Enter");
    expect(cellsOf(await saved(), "Lots").get("C4")?.value).toBe(2000);
  });

  it("undoes and redoes by the buttons", async () => {
    await typeInto("F2", "typed");
    await page.getByRole("button", { name: "Undo" }).click();
    expect(await shown("F2")).not.toBe("typed");
    await page.getByRole("button", { name: "Redo" }).click();
    expect(await shown("F2")).toBe("typed");
  });

  it("asks before it saves without what the file cannot take", async () => {
    await goTo("A1");
    await page.keyboard.press("Control+c");
    await goTo("F5");
    await page.keyboard.press("Control+v");
    await page.keyboard.press("Control+s");
    const question = page.getByRole("dialog");
    await question.waitFor();
    expect(await question.innerText()).toMatch(/Save shop\.xlsx all the same\?[^]*number formats, styles and borders stay behind: make them in Excel/);
    await question.getByRole("button", { name: "Cancel" }).click();
    expect(await page.locator(".changed").innerText()).toBe("changed, not saved");
    await page.keyboard.press("Control+s");
    const after = await saved(() => question.getByRole("button", { name: "Save" }).click());
    expect(cellsOf(after, "Lots").get("F5")?.value).toBe("Lot");
  });

  it("asks before unsaved changes are left", async () => {
    await typeInto("F2", "unsaved");
    await openBytes("other.xlsx", shop);
    const question = page.getByRole("dialog");
    await question.getByRole("button", { name: "Cancel" }).click();
    expect(await page.locator(".file-name").innerText()).toBe("shop.xlsx");
    await openBytes("other.xlsx", shop);
    await question.getByRole("button", { name: "Leave them" }).click();
    await opened("other.xlsx");
    expect(await page.locator(".changed").innerText()).toBe("");
  });

  it("stays open when another file turns out to be damaged", async () => {
    await typeInto("F2", "kept");
    await saved();
    await openBytes("cut-off.xlsx", shop.subarray(0, shop.length / 2));
    await page.locator(".notice.fault").waitFor();
    expect(await notices()).toContain("damaged");
    expect(await page.locator(".file-name").innerText()).toBe("shop.xlsx");
    expect(await shown("F2")).toBe("kept");
  });

  it("opens when it is dropped on the page", async () => {
    const data = await page.evaluateHandle((bytes) => {
      const transfer = new DataTransfer();
      transfer.items.add(new File([new Uint8Array(bytes)], "dropped.xlsx"));
      return transfer;
    }, [...shop]);
    await page.dispatchEvent(".o-grid", "drop", { dataTransfer: data });
    await opened("dropped.xlsx");
  });

  it("offers in its menus only what a saved file can hold, and renames no sheet", async () => {
    const overlay = await page.locator(".o-grid-overlay").boundingBox();
    await page.mouse.click((overlay?.x ?? 0) + 30, (overlay?.y ?? 0) + 30, { button: "right" });
    await page.locator(".o-menu-item").first().waitFor();
    expect((await page.locator(".o-menu-item-name").allInnerTexts()).map((text) => text.trim())).toEqual(["Cut", "Copy", "Paste", "Paste special"]);
    await page.keyboard.press("Escape");
    await page.locator(".o-sheet-name", { hasText: "Lots" }).dblclick();
    expect(await page.locator(".o-sheet-name", { hasText: "Lots" }).getAttribute("contenteditable")).toBe("false");
  });
});

describe("a formula from the pane", () => {
  it("lands in the selected cell, computed, as one step of undo", async () => {
    await goTo("C4");
    const pane = page.locator("aside.pane");
    await pane.getByRole("button", { name: /All functions/ }).click();
    await page.keyboard.type("fine weight of");
    await pane.getByRole("button", { name: /LOT\.FINEWEIGHT/ }).first().click();
    await pane.getByLabel("weight", { exact: true }).fill("B7");
    await pane.getByLabel("unit", { exact: true }).fill("g");
    await pane.getByLabel("fineness", { exact: true }).fill("sterling");
    await pane.getByRole("button", { name: "Insert at C4" }).click();
    await pane.getByRole("status").filter({ hasText: "C4" }).first().waitFor();
    await page.locator(".o-grid-overlay").click({ position: { x: 30, y: 10 } });
    expect(Number(await shown("C4"))).toBeCloseTo(223.0458, 4);
    await page.keyboard.press("Control+z");
    await drawn();
    expect((await shown("C4")).trim()).toBe("");
  });
});
