import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import { type Started, start } from "../host/started";
import { launch } from "./chromium";
import { keptInBrowser, smuggled, watchPolicy, watchRequests } from "./outward";

let started: Started;
let browser: Browser;
let page: Page;
let forbidden: () => Promise<string[]>;
let requests: () => string[];

beforeAll(async () => {
  [started, browser] = await Promise.all([start(), launch()]);
  page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
  page.setDefaultTimeout(15_000);
  forbidden = await watchPolicy(page);
  requests = watchRequests(page);
  await page.goto(started.address);
  await page.locator(".file-name", { hasText: "cost-sheet.xlsx" }).waitFor();
  await page.locator(".busy").waitFor({ state: "hidden" });
}, 240_000);
afterAll(async () => {
  await browser.close();
  await started.stop();
});

it("a whole task breaks no rule of the page, asks nobody but its own server, and keeps nothing in the browser", async () => {
  await page.getByRole("button", { name: /^The shop/ }).click();
  await page.getByLabel("Name", { exact: true }).fill("Quillmere Silver");
  await page.getByRole("button", { name: "Keep in this workbook" }).click();
  await page.getByText("Kept in this workbook, on its hidden sheet Lotwright").waitFor();
  expect(await forbidden()).toEqual([]);
  expect(requests().length).toBeGreaterThan(5);
  expect(requests().filter((url) => !url.startsWith(started.address) && !/^(?:data|blob):/.test(url))).toEqual([]);
  expect(JSON.parse(await keptInBrowser(page))).toEqual({ local: {}, session: {}, cookies: "", databases: [], caches: [] });
});

it("code that is smuggled into the page does not run, and nothing leaves", async () => {
  expect(await smuggled(page)).toEqual([]);
  expect((await forbidden()).map((one) => one.split(" ")[0])).toEqual(expect.arrayContaining(["script-src-elem", "connect-src", "img-src", "frame-src"]));
  expect(requests().filter((url) => url.includes("elsewhere.example"))).toEqual([]);
});
