import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { lookThrough } from "../../src/pane/repair/look-through";
import { FilePort } from "../../src/workbook/file-port";
import { openXlsx } from "../../src/workbook/file";
import { launch } from "../browser/chromium";
import { serious, serveTask } from "../journal/serve-task";
import type {} from "../journal/task-page";
import { repairBooks } from "./repair-book";

let browser: Browser;
let server: Awaited<ReturnType<typeof serveTask>>;
beforeAll(async () => {
  [browser, server] = await Promise.all([launch(), serveTask(repairBooks)]);
}, 120_000);
afterAll(async () => {
  await browser?.close();
  await server?.close();
});

async function open(book: keyof typeof repairBooks): Promise<Page> {
  const page = await browser.newPage({ viewport: { width: 300, height: 800 } });
  page.setDefaultTimeout(15_000);
  await page.goto(`${server.url}?task=repair&book=${book}`);
  await page.getByRole("heading", { name: "Repair", exact: true }).waitFor();
  return page;
}
const formulas = (page: Page, ...cells: readonly string[]): Promise<(string | null)[]> => Promise.all(cells.map((cell) => page.evaluate((one) => window.taskShop.formula("Lots", one), cell)));

describe("looking through a workbook", () => {
  it("finds each kind of what is wrong, once a cell, and what repairs it", async () => {
    const { findings, sheets, isWhole } = await lookThrough(new FilePort(openXlsx(repairBooks.wrong)), ".", async () => true);
    expect(findings.map(({ sheet, cell, kind, write }) => [`${sheet}!${cell}`, kind, write?.content ?? null])).toEqual([
      ["Lots!D2", "anew", '=LOT.FINEWEIGHT(B2,"g",C2)'],
      ["Lots!D3", "near", '=LOT.FINEWEIGHT(B3,"g",C3)'],
      ["Lots!D4", "text", '=LOT.FINEWEIGHT(B4,"g",C4)'],
      ["Lots!D5", "prefix", '=LOT.FINEWEIGHT(B5,"g",C5)'],
      ["Lots!D6", "at", '=LOT.FINEWEIGHT(B6,"g",C6)'],
      ["Lots!D7", "busy", '=LOT.FINEWEIGHT(B7,"g",C7)'],
      ["Lots!D8", "value", null],
      ["Lots!D9", "stale", '=LOT.FINEWEIGHT(B9,"g",C9)'],
      ["Lots!D10", "missing", null],
      ["Lots!D11", "unknown", null],
      ["Lots!D12", "letters", '=LOT.FINEWEIGHT(B12,"g",C12)'],
      ["Old prices!A1", "anew", null],
    ]);
    expect(findings.find(({ cell }) => cell === "D8")?.sentence).toMatch(/^Cannot use unit = "oz": .*write "ozt" .* or "ozav"/);
    expect(findings.find(({ sheet }) => sheet === "Old prices")?.sentence).toMatch(/is protected: take the protection off/);
    expect(sheets).toEqual([{ name: "Lots", cells: 12, isProtected: false }, { name: "Old prices", cells: 1, isProtected: true }]);
    expect(isWhole).toBe(true);
  });
});

describe("Repair", () => {
  it("shows each repair before and after, writes what is ticked, has the workbook computed again, and takes it all back at once", async () => {
    const page = await open("wrong");
    await page.getByText("12 of 13 cells with LOT formulas need a look").waitFor();
    expect(await serious(page)).toEqual([]);
    const before = await formulas(page, "D2", "D3", "D4", "D5", "D6", "D7", "D9", "D12");
    await page.getByRole("button", { name: "Repair what is ticked" }).click();
    await page.getByText("Tick what is to be repaired first").waitFor();
    expect(await page.evaluate(() => (document.activeElement as HTMLInputElement | null)?.type)).toBe("checkbox");
    const ticks = page.getByRole("checkbox");
    const text = page.getByRole("region", { name: /^Formulas kept as texts/ });
    expect(await text.locator(".lw-before").textContent()).toContain('=LOT.FINEWEIGHT(B4;"g";C4)');
    expect(await text.locator(".lw-after").textContent()).toContain('=LOT.FINEWEIGHT(B4,"g",C4)');
    for (const tick of await ticks.all()) await tick.check();
    await page.getByRole("button", { name: "Repair what is ticked" }).click();
    await page.getByText("3 of 13 cells with LOT formulas need a look").waitFor();
    expect(await formulas(page, "D2", "D3", "D12")).toEqual(['=LOT.FINEWEIGHT(B2,"g",C2)', '=LOT.FINEWEIGHT(B3,"g",C3)', '=LOT.FINEWEIGHT(B12,"g",C12)']);
    expect(await page.evaluate(() => window.taskShop.value("Lots", "D4"))).toBeCloseTo((310 * 0.8) / 31.1034768, 6);
    expect(await page.evaluate(() => window.taskShop.value("Lots", "D9"))).toBeCloseTo((500 * 0.925) / 31.1034768, 6);
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe("Look again");
    await page.getByText("The ticked formulas are repaired").waitFor();
    await page.getByRole("button", { name: "Undo" }).click();
    await page.getByText("Undone: the workbook is as it was").waitFor();
    await page.getByText("12 of 13 cells with LOT formulas need a look").waitFor();
    expect(await formulas(page, "D2", "D3", "D4", "D5", "D6", "D7", "D9", "D12")).toEqual(before);
    await page.close();
  });

  it("leaves what is not ticked, and still offers the undoing beside what is left", async () => {
    const page = await open("wrong");
    await page.getByLabel("Take the prefixes away").check();
    await page.getByRole("button", { name: "Repair what is ticked" }).click();
    // What had not been computed since is computed now: three formulas, and one on a protected sheet.
    await page.getByText("7 of 13 cells with LOT formulas need a look").waitFor();
    await page.getByText(/^The ticked formulas are repaired; 7 filled cells stay as before$/).waitFor();
    expect(await formulas(page, "D3", "D5")).toEqual(['=LOT.FINEWIGHT(B3,"g",C3)', '=LOT.FINEWEIGHT(B5,"g",C5)']);
    expect(await page.getByRole("button", { name: "Undo" }).count()).toBe(1);
    await page.close();
  });

  it("goes to the cells that only their owner can mend, with our sentence, and changes nothing there", async () => {
    const page = await open("wrong");
    const wrong = page.getByRole("button", { name: /^Lots!D8/ });
    await wrong.waitFor();
    expect(await wrong.textContent()).toMatch(/LOT\.FINEWEIGHT.*#VALUE!.*Cannot use unit = "oz"/);
    await wrong.focus();
    await page.keyboard.press("Enter");
    await page.keyboard.press("ArrowDown");
    await page.keyboard.press("Enter");
    await expect.poll(() => page.evaluate(() => window.taskShop.selected())).toEqual(["Lots!D8", "Lots!D10"]);
    expect(await formulas(page, "D8")).toEqual(['=LOT.FINEWEIGHT(B8,"oz",C8)']);
    await page.close();
  });

  it("says that nothing is wrong, and what was looked at", async () => {
    const page = await open("good");
    await page.getByText("Nothing is wrong in 1 cell with LOT formulas").waitFor();
    expect(await page.locator(".lw-looked > div").allTextContents()).toEqual(["Lots1 with LOT formulas", "Notesno LOT formula"]);
    expect(await page.getByRole("button", { name: "Repair what is ticked" }).isVisible()).toBe(false);
    expect(await serious(page)).toEqual([]);
    await page.getByRole("button", { name: "Compute all again" }).click();
    await page.getByText("Nothing is wrong in 1 cell with LOT formulas").waitFor();
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe("Look again");
    await page.keyboard.press("Escape");
    expect(await page.evaluate(() => window.taskShop.hasLeft())).toBe(true);
    await page.close();
  });

  it("says so where no cell holds a formula of ours", async () => {
    const page = await open("none");
    await page.getByText("No cell of this workbook holds a LOT formula").waitFor();
    await page.close();
  });
});
