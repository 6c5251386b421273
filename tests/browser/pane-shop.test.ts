import axe, { type AxeResults } from "axe-core";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { launch } from "./chromium";
import type {} from "./pane-page";
import { servePane } from "./serve-pane";

let browser: Browser;
let server: Awaited<ReturnType<typeof servePane>>;

beforeAll(async () => {
  [browser, server] = await Promise.all([launch(), servePane()]);
});
afterAll(async () => {
  await browser?.close();
  await server?.close();
});

async function open(query = ""): Promise<Page> {
  const page = await browser.newPage({ viewport: { width: 300, height: 700 } });
  page.setDefaultTimeout(10_000);
  await page.goto(server.url + query);
  await again(page);
  return page;
}
async function again(page: Page): Promise<void> {
  await page.getByRole("button", { name: /^The shop/ }).press("Enter");
  await page.getByRole("heading", { name: "The shop" }).waitFor();
  await page.getByText("Reading what this workbook keeps").waitFor({ state: "hidden" });
}

const field = (page: Page, name: string) => page.getByLabel(name, { exact: true });
const summary = (page: Page, group: string) => page.locator("summary", { hasText: group });
const unfold = (page: Page, group: string) => summary(page, group).press("Enter");
const said = (page: Page) => page.locator(".lw-status p").textContent();
/** What the workbook keeps, as its hidden sheet holds it. */
const held = (page: Page) => page.evaluate(() => window.shop.port.at("Lotwright!B2").value as string | null);
const label = (page: Page) => page.evaluate(() => (document.activeElement as HTMLInputElement | null)?.labels?.[0]?.textContent ?? document.activeElement?.textContent);

describe("the shop in the pane", () => {
  it("is told, kept and taken back by keyboard alone", async () => {
    const page = await open();
    await page.getByText("This workbook does not know your shop yet").waitFor();
    expect(await label(page)).toBe("The shop");
    for (const step of ["The shop and its papersNothing told yet", "Name"]) {
      await page.keyboard.press("Tab");
      expect(await label(page)).toBe(step);
    }
    await page.keyboard.type("=Quillmere Silver");
    await page.keyboard.press("Tab");
    await page.keyboard.type("1 Mill Lane\nPort Hollow");
    await unfold(page, "Acid and pails");
    await page.getByText("Missing until it is told: acid, and all that goes by its volume: pails, hours, rinses, spent liquor; pails; airflow.").waitFor();
    await page.getByText("Nitric acid burns").waitFor();
    await field(page, "Strength of the nitric acid").focus();
    await page.keyboard.type("68");
    await page.getByText('could be a share or a percentage: write "68%" or 0.68').waitFor();
    await summary(page, "Acid and pails▲ 1 to mend").waitFor();

    // Enter in a field keeps, and leads to what is wrong, folded or not.
    await unfold(page, "Acid and pails");
    await field(page, "Name").press("Enter");
    await expect.poll(() => said(page)).toBe("Not kept: mend strength of the nitric acid first");
    expect(await label(page)).toBe("Strength of the nitric acid");
    expect(await held(page)).toBeNull();
    await page.keyboard.type("%");
    await page.getByText("To be written to the hidden sheet Lotwright: name, address, strength of the nitric acid.").waitFor();
    await page.keyboard.press("Enter");
    await expect.poll(() => said(page)).toBe("Kept in this workbook, on its hidden sheet Lotwright");
    expect(JSON.parse((await held(page)) ?? "")).toEqual({ name: { value: "=Quillmere Silver" }, address: { value: "1 Mill Lane\nPort Hollow" }, acidStrength: { value: "68%" } });
    await page.getByText("To be written").waitFor({ state: "hidden" });
    await page.keyboard.press("Enter");
    await expect.poll(() => said(page)).toBe("Nothing to write: this workbook keeps all that stands here");

    await page.getByRole("button", { name: "Undo" }).press("Enter");
    await expect.poll(() => said(page)).toBe("Undone: the workbook keeps what it kept before");
    expect(await held(page)).toBeNull();
    expect(await field(page, "Name").inputValue()).toBe("=Quillmere Silver");
    expect(await label(page)).toBe("Keep in this workbook");
    await page.close();
  }, 60_000);

  it("is as it was left when the pane is closed and opened, and the way back is still there", async () => {
    const page = await open();
    await field(page, "Name").fill("Quillmere");
    await unfold(page, "Melt and cell");
    await field(page, "Silver that a crucible takes").fill("250");
    await page.getByLabel("Unit of silver that a crucible takes").selectOption("kg");
    await page.evaluate(() => window.shop.unmount());
    await page.evaluate(() => window.shop.mount());
    await page.getByText("There are changes here that the workbook does not keep yet.").waitFor();
    expect(await field(page, "Name").inputValue()).toBe("Quillmere");
    expect(await field(page, "Silver that a crucible takes").inputValue()).toBe("250");
    expect(await page.getByLabel("Unit of silver that a crucible takes").inputValue()).toBe("kg");

    await page.getByRole("button", { name: "Keep in this workbook" }).press("Enter");
    await page.getByRole("button", { name: "Undo" }).waitFor();
    await page.keyboard.press("Escape");
    await again(page);
    await page.getByRole("button", { name: "Undo" }).press("Enter");
    await expect.poll(() => held(page)).toBeNull();
    expect(await field(page, "Silver that a crucible takes").inputValue()).toBe("250");
    await page.close();
  }, 60_000);

  it("says of each folded group what is told", async () => {
    const page = await open();
    await field(page, "Name").fill("Quillmere");
    await unfold(page, "Usual terms");
    await field(page, "Payable").fill("97.5%");
    await field(page, "Refining charge").fill("0.45");
    await field(page, "Minimum deduction").fill("2");
    expect(await page.locator("summary", { hasText: "Usual terms" }).textContent()).toBe("Usual termsPayable 97.5%; refining charge 0.45 per ozt; minimum deduction 2‰");
    expect(await page.locator("summary", { hasText: "Washing" }).textContent()).toBe("WashingNothing told yet");
    await page.close();
  });

  it("takes the price from the selected cell, and refuses one of a sheet that is not there", async () => {
    const page = await open();
    await unfold(page, "Usual terms");
    await page.evaluate(() => window.shop.port.move("Prices", "B4"));
    await page.getByRole("button", { name: "Put Prices!B4 into price of fine silver" }).press("Enter");
    expect(await field(page, "Price of fine silver").inputValue()).toBe("Prices!B4");
    await field(page, "Price of fine silver").fill("Rates!B4");
    await page.getByText("This workbook has no sheet ‘Rates’").waitFor();
    await field(page, "Price of fine silver").fill("prices!B4");
    await page.keyboard.press("Enter");
    await page.getByRole("button", { name: "Undo" }).waitFor();
    expect(JSON.parse((await held(page)) ?? "")).toEqual({ price: { sheet: "Prices", cell: "B4", unit: "ozt" } });
    await page.close();
  });

  it("writes decimals as the workbook does", async () => {
    const page = await open("?decimal=,");
    await unfold(page, "Usual terms");
    await page.getByText("The share of the fine weight that is paid for, as 97% or 0,97.").waitFor();
    await field(page, "Payable").fill("97,5%");
    await field(page, "Refining charge").fill("0.45");
    await page.getByText("write a comma before the decimals").waitFor();
    await field(page, "Refining charge").fill("0,45");
    await page.keyboard.press("Enter");
    await page.getByRole("button", { name: "Undo" }).waitFor();
    expect(JSON.parse((await held(page)) ?? "")).toEqual({ payable: { value: "97.5%" }, refiningCharge: { value: 0.45, unit: "ozt" } });
    expect(await field(page, "Payable").inputValue()).toBe("97,5%");
    await page.close();
  });

  it("does not write over what has been kept elsewhere meanwhile", async () => {
    const page = await open();
    await field(page, "Name").fill("Quillmere");
    await page.keyboard.press("Enter");
    await page.getByRole("button", { name: "Undo" }).waitFor();
    await page.evaluate(() => window.shop.port.put("Lotwright!B2", '{"name":{"value":"Quillmere"},"payable":{"value":"96%"}}'));
    await field(page, "Name").fill("Quillmere & Daughter");
    await page.keyboard.press("Enter");
    await expect.poll(() => said(page)).toContain("Not kept: what the workbook keeps has changed meanwhile");
    expect(await field(page, "Payable").inputValue()).toBe("96%");
    await field(page, "Name").press("Enter");
    await expect.poll(() => said(page)).toContain("Kept in this workbook");
    expect(JSON.parse((await held(page)) ?? "")).toEqual({ name: { value: "Quillmere & Daughter" }, payable: { value: "96%" } });
    await page.close();
  });

  it("is not undone when the workbook has been given other things to keep since", async () => {
    const page = await open();
    await field(page, "Name").fill("Quillmere");
    await page.keyboard.press("Enter");
    await page.getByRole("button", { name: "Undo" }).waitFor();
    await page.evaluate(() => {
      window.shop.port.put("Lotwright!A3", "columns");
      window.shop.port.put("Lotwright!B3", '{"sheet":"Lots"}');
    });
    await page.getByRole("button", { name: "Undo" }).press("Enter");
    await expect.poll(() => said(page)).toContain("The workbook keeps other things of Lotwright’s since then");
    expect(await held(page)).toContain("Quillmere");
    await page.close();
  });

  it("says when what was kept cannot be read, and writes it anew", async () => {
    const page = await open();
    await field(page, "Name").fill("Quillmere");
    await page.keyboard.press("Enter");
    await page.getByRole("button", { name: "Undo" }).waitFor();
    await page.evaluate(() => window.shop.port.put("Lotwright!B2", '{"name":'));
    await page.keyboard.press("Escape");
    await again(page);
    await page.getByText("was changed by hand and cannot all be read").waitFor();
    await field(page, "Name").fill("Quillmere Silver");
    await page.keyboard.press("Enter");
    await expect.poll(() => said(page)).toContain("Kept in this workbook");
    expect(await held(page)).toBe('{"name":{"value":"Quillmere Silver"}}');
    await page.close();
  });

  it("says why it cannot be kept where the workbook has another sheet of that name", async () => {
    const page = await browser.newPage({ viewport: { width: 300, height: 700 } });
    await page.goto(server.url);
    await page.evaluate(() => window.shop.port.put("Lotwright!A1", "My own notes"));
    await again(page);
    await page.getByText("its sheet Lotwright is not Lotwright's own: give that sheet another name").waitFor();
    await unfold(page, "The shop and its papers");
    await field(page, "Name").fill("Quillmere");
    await page.keyboard.press("Enter");
    await expect.poll(() => said(page)).toContain("is not Lotwright's own");
    expect(await page.evaluate(() => window.shop.port.at("Lotwright!A1").value)).toBe("My own notes");
    await page.close();
  });

  it("has nothing that keeps somebody out: axe finds nothing serious, light and dark", async () => {
    const page = await open();
    for (const element of await page.locator("details").all()) await element.evaluate((one) => void ((one as HTMLDetailsElement).open = true));
    await field(page, "Payable").fill("98");
    await field(page, "Name").fill("Quillmere");
    await page.evaluate(axe.source);
    for (const colorScheme of ["light", "dark"] as const) {
      await page.emulateMedia({ colorScheme });
      const { violations } = await page.evaluate(() => (window as unknown as { axe: { run(root: string): Promise<AxeResults> } }).axe.run("#pane"));
      expect(violations.filter(({ impact }) => impact === "serious" || impact === "critical").map(({ id }) => id), colorScheme).toEqual([]);
    }
    await page.close();
  }, 60_000);
});
