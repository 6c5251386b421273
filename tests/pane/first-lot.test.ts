import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { launch } from "../browser/chromium";
import { serious, serveTask } from "../journal/serve-task";
import type {} from "../journal/task-page";
import { handmade, sheet } from "../workbook/handmade";

let browser: Browser;
let server: Awaited<ReturnType<typeof serveTask>>;
beforeAll(async () => {
  const filled = '<row r="1"><c r="A1" t="inlineStr"><is><t>Lot</t></is></c></row><row r="5"><c r="A5"><v>1</v></c></row>';
  const locked = sheet("").replace("</worksheet>", '<sheetProtection sheet="1"/></worksheet>');
  [browser, server] = await Promise.all([launch(), serveTask({ new: handmade({ sheets: { Sheet1: sheet("") } }), old: handmade({ sheets: { Costs: sheet(filled), Locked: locked } }) })]);
}, 120_000);
afterAll(async () => {
  await browser?.close();
  await server?.close();
});

async function open(book: "new" | "old", query = ""): Promise<Page> {
  const context = await browser.newContext({ viewport: { width: 300, height: 800 } });
  const page = await context.newPage();
  page.setDefaultTimeout(15_000);
  await page.goto(`${server.url}?task=pane&book=${book}${query}`);
  await page.getByRole("heading", { name: "Lotwright" }).waitFor();
  return page;
}
const column = (page: Page, sheetName: string, letter: string, from: number): Promise<unknown[]> =>
  Promise.all(Array.from({ length: 7 }, (_, i) => page.evaluate(([of, cell]) => window.taskShop.value(of, cell), [sheetName, `${letter}${from + i}`] as const)));

/** 1250 g of sterling in troy ounces, by the international troy ounce. */
const FINE = (1250 * 0.925) / 31.1034768;

describe("a first lot", () => {
  it("is computed one action after the pane opens, and stands in the sheet after three, as live formulas", async () => {
    const page = await open("new");
    const actions = [
      () => page.getByRole("button", { name: "Compute a first lot" }).click(),
      () => page.getByRole("button", { name: "Put it into the sheet" }).click(),
      () => page.getByRole("button", { name: "Write the lot" }).click(),
    ];
    await actions[0]?.();
    await page.locator(".lw-lot-result").getByText(FINE.toFixed(3)).waitFor();
    await page.locator(".lw-lot-result").getByText((FINE * 24.5).toFixed(2)).waitFor();
    await actions[1]?.();
    await actions[2]?.();
    await page.getByText("The lot is in A1:B7 of Sheet1").waitFor();
    expect(actions.length).toBeLessThanOrEqual(5);
    expect(await column(page, "Sheet1", "A", 1)).toEqual(["A lot (invented)", "Weight", "Unit", "Fineness", "Price per ozt (invented)", "Fine weight, ozt", "Worth at that price"]);
    expect(await column(page, "Sheet1", "B", 1)).toEqual([null, 1250, "g", 925, 24.5, expect.closeTo(FINE, 9), Number((FINE * 24.5).toFixed(2))]);
    await page.evaluate(() => window.taskShop.write({ sheet: "Sheet1", cell: "B2", content: 2500 }));
    expect((await column(page, "Sheet1", "B", 1))[5]).toBeCloseTo(2 * FINE, 9);
    await page.context().close();
  });

  it("goes by the keyboard alone, with the working one key away, and is taken back in one step", async () => {
    const page = await open("new");
    await page.getByRole("button", { name: "Compute a first lot" }).focus();
    await page.keyboard.press("Enter");
    await page.getByLabel("Weight", { exact: true }).waitFor();
    expect(await page.evaluate(() => (document.activeElement as HTMLInputElement | null)?.value)).toBe("1250");
    await page.keyboard.press("Alt+w");
    await expect.poll(() => page.locator(".lw-working").evaluate((details) => (details as HTMLDetailsElement).open)).toBe(true);
    expect(await page.locator(".lw-working").textContent()).toContain("1250 × 0.925 = 1156.25 g");
    expect(await serious(page)).toEqual([]);
    await page.getByLabel("Fineness", { exact: true }).focus();
    await page.keyboard.press("Enter");
    await page.getByRole("button", { name: "Write the lot" }).waitFor();
    expect(await serious(page)).toEqual([]);
    await page.keyboard.press("Tab");
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe("Write the lot");
    await page.keyboard.press("Enter");
    await page.getByText("The lot is in A1:B7 of Sheet1").waitFor();
    await page.getByRole("button", { name: "Undo" }).press("Enter");
    await page.getByText("Undone: the workbook is as it was").waitFor();
    expect(await column(page, "Sheet1", "A", 1)).toEqual(Array.from({ length: 7 }, () => null));
    await page.context().close();
  });

  it("takes the user's own numbers in the user's own signs, and says at its field what cannot be used", async () => {
    const page = await open("new", "&decimal=,");
    await page.getByRole("button", { name: "Compute a first lot" }).click();
    expect(await page.getByLabel("Price of a troy ounce (ozt)").inputValue()).toBe("24,5");
    await page.getByLabel("Fineness", { exact: true }).fill("92,5");
    await page.getByText(/^Cannot use fineness = 92\.5/).waitFor();
    await page.getByText("The result stands here as soon as each field is right").waitFor();
    await page.getByRole("button", { name: "Put it into the sheet" }).click();
    expect(await page.getByLabel("Fineness", { exact: true }).evaluate((field) => field === document.activeElement)).toBe(true);
    await page.getByLabel("Fineness", { exact: true }).fill("sterling");
    await page.getByLabel("Weight", { exact: true }).fill("2,5");
    await page.getByLabel("Unit of weight").selectOption("kg");
    await page.locator(".lw-lot-result").getByText((2 * FINE).toFixed(3).replace(".", ",")).waitFor();
    await page.getByLabel("Price of a troy ounce (ozt)").fill("30");
    await page.getByText("The numbers are an invented example").waitFor({ state: "hidden" });
    await page.getByRole("button", { name: "Put it into the sheet" }).click();
    await page.getByRole("button", { name: "Write the lot" }).click();
    await page.getByText("The lot is in A1:B7 of Sheet1").waitFor();
    expect(await column(page, "Sheet1", "A", 1)).toEqual(["A lot", "Weight", "Unit", "Fineness", "Price per ozt", "Fine weight, ozt", "Worth at that price"]);
    expect(await column(page, "Sheet1", "B", 1)).toEqual([null, 2.5, "kg", "sterling", 30, expect.closeTo(2 * FINE, 9), expect.closeTo(60 * FINE, 2)]);
    await page.context().close();
  });

  it("goes from the selected cell on where there is room, else below what the sheet holds, and to no protected sheet", async () => {
    const page = await open("old");
    await page.getByRole("button", { name: "Compute a first lot" }).click();
    await page.getByText("It goes into A7:B13 of Costs, below what the sheet holds, since there is no room at A1.").waitFor();
    await page.evaluate(() => window.taskShop.move("Costs", "D2:D9"));
    await page.getByText("It goes into D2:E8 of Costs, from the selected cell on.").waitFor();
    await page.evaluate(() => window.taskShop.move("Locked", "A1"));
    await page.getByText("The sheet Locked is protected: go to another one").waitFor();
    await page.getByRole("button", { name: "Put it into the sheet" }).click();
    expect(await page.getByRole("button", { name: "Write the lot" }).count()).toBe(0);
    await page.evaluate(() => window.taskShop.move("Costs", "D2"));
    await page.getByText("It goes into D2:E8").waitFor();
    await page.getByRole("button", { name: "Put it into the sheet" }).click();
    await page.getByRole("button", { name: "Write the lot" }).click();
    await page.getByText("The lot is in D2:E8 of Costs").waitFor();
    expect(await page.evaluate(() => window.taskShop.value("Costs", "A1"))).toBe("Lot");
    await page.context().close();
  });
});

describe("the offer to those who are new", () => {
  const offer = (page: Page) => page.getByRole("button", { name: "Compute a first lot" });

  it("is gone for good once it is skipped, and the foot still leads to it", async () => {
    const page = await open("new");
    expect(await serious(page)).toEqual([]);
    await page.getByRole("button", { name: "Skip" }).click();
    expect(await offer(page).count()).toBe(0);
    expect(await page.evaluate(() => document.activeElement?.textContent)).toMatch(/^Set up a lot/);
    await page.reload();
    await page.getByRole("heading", { name: "What needs doing?" }).waitFor();
    expect(await offer(page).count()).toBe(0);
    await page.getByRole("button", { name: "A first lot" }).click();
    await page.locator(".lw-lot-result").getByText(FINE.toFixed(3)).waitFor();
    await page.keyboard.press("Escape");
    await expect.poll(() => page.evaluate(() => document.activeElement?.textContent)).toBe("A first lot");
    await page.context().close();
  });

  it("is gone once the lot was written, and comes again where it was only looked at; the workbook keeps nothing of it", async () => {
    const page = await open("new");
    await offer(page).click();
    await page.getByRole("button", { name: "All tasks" }).click();
    await offer(page).click();
    await page.getByRole("button", { name: "Put it into the sheet" }).click();
    await page.getByRole("button", { name: "Write the lot" }).click();
    await page.getByText("The lot is in A1:B7").waitFor();
    expect(await page.evaluate(() => window.taskShop.sheets())).toEqual(["Sheet1"]);
    expect(await page.evaluate(() => [window.taskShop.selected().at(-1), document.activeElement?.textContent])).toEqual(["Sheet1!A1:B7", "See all tasks"]);
    await page.keyboard.press("Enter");
    await page.getByRole("heading", { name: "What needs doing?" }).waitFor();
    expect(await offer(page).count()).toBe(0);
    await page.context().close();
  });

  it("works where the web view keeps nothing", async () => {
    const context = await browser.newContext({ viewport: { width: 300, height: 800 } });
    const page = await context.newPage();
    await page.addInitScript(() => Object.defineProperty(window, "localStorage", { get: () => { throw new DOMException("denied", "SecurityError"); } }));
    await page.goto(`${server.url}?task=pane&book=new`);
    await page.getByRole("button", { name: "Skip" }).click();
    expect(await offer(page).count()).toBe(0);
    await context.close();
  });
});
