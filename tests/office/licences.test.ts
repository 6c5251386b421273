import { rmSync } from "node:fs";
import axe, { type AxeResults } from "axe-core";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import { launch } from "../browser/chromium";
import { type Built, buildAddIn } from "./built";
import { openOfficePage } from "./office-page";

let built: Built;
let browser: Browser;
beforeAll(async () => {
  [built, browser] = [await buildAddIn("https://lotwright.example/addin/"), await launch()];
});
afterAll(async () => {
  await browser?.close();
  rmSync(built.folder, { recursive: true });
});

it("shows in Excel what comes with the page, from the front page's foot, and loads it only then", async () => {
  const { page, asked, complaints } = await openOfficePage(browser, built.file);
  const foot = page.getByRole("list", { name: "About Lotwright" }).getByRole("button", { name: "Licences" });
  await foot.waitFor();
  expect(asked).not.toContain("licences.js");
  await foot.click();
  await page.getByRole("heading", { name: "Licences" }).waitFor();
  expect(asked).toContain("licences.js");
  const names = await page.locator(".lw-licence-list h2").allTextContents();
  expect(names).toEqual(["Lotwright 0.1.0", expect.stringMatching(/^decimal\.js \d/), expect.stringMatching(/^fflate \d/), expect.stringMatching(/^webpack \d/)]);
  await page.getByText("Licence of decimal.js").click();
  await page.getByText("The MIT Licence").waitFor();
  await page.evaluate(axe.source);
  const { violations } = await page.evaluate(() => (window as unknown as { axe: { run(root: string): Promise<AxeResults> } }).axe.run("#pane"));
  expect(violations.filter(({ impact }) => impact === "serious" || impact === "critical")).toEqual([]);
  await page.keyboard.press("Escape");
  await foot.waitFor();
  expect(await foot.evaluate((button) => button === document.activeElement)).toBe(true);
  expect(complaints).toEqual([]);
  await page.context().close();
});

it("says so where the list cannot be had, and the rest of the pane goes on", async () => {
  const { page } = await openOfficePage(browser, (name) => (name === "licences.js" ? null : built.file(name)));
  await page.getByRole("button", { name: "Licences" }).click();
  await page.getByText("“Licences” could not be loaded: see that this machine is online, then open it again").waitFor();
  await page.getByRole("button", { name: /^All functions/ }).click();
  await page.getByRole("searchbox").waitFor();
  await page.context().close();
});
