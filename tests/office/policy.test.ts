import { rmSync } from "node:fs";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import { launch } from "../browser/chromium";
import { evaluated, keptInBrowser, smuggled, watchRequests } from "../browser/outward";
import { type Built, buildAddIn } from "./built";
import { type OfficePage, openOfficePage } from "./office-page";

let built: Built;
let browser: Browser;
let office: OfficePage;
let requests: () => string[];

beforeAll(async () => {
  built = await buildAddIn("https://lotwright.example/addin/");
  browser = await launch();
  office = await openOfficePage(browser, built.file, {});
  requests = watchRequests(office.page);
  await office.page.reload();
  await office.page.evaluate(() => Office.onReady());
  await office.page.evaluate(() => {
    const forbidden: string[] = [];
    Object.assign(window, { forbidden });
    document.addEventListener("securitypolicyviolation", ({ effectiveDirective, blockedURI }) => forbidden.push(`${effectiveDirective} ${blockedURI}`));
  });
}, 180_000);
afterAll(async () => {
  await browser?.close();
  rmSync(built.folder, { recursive: true });
});

const forbidden = (): Promise<string[]> => office.page.evaluate(() => (window as unknown as { forbidden: string[] }).forbidden);

it("a whole task breaks no rule of the page, asks nobody but its own folder and Office's script, and keeps nothing in the browser", async () => {
  const { page, complaints } = office;
  await page.getByRole("button", { name: /^The shop/ }).click();
  await page.getByLabel("Name", { exact: true }).fill("Quillmere Silver");
  await page.getByRole("button", { name: "Keep in this workbook" }).click();
  await page.getByText("Kept in this workbook, on its hidden sheet Lotwright").waitFor();
  expect(await page.evaluate(() => JSON.stringify(window.stub.state()))).toContain("Quillmere");
  expect(await forbidden()).toEqual([]);
  expect(complaints).toEqual([]);
  expect(requests().length).toBeGreaterThan(3);
  expect(requests().filter((url) => !/^(?:https:\/\/lotwright\.example\/addin\/|https:\/\/appsforoffice\.microsoft\.com\/lib\/1\/hosted\/|data:)/.test(url))).toEqual([]);
  expect(await keptInBrowser(page)).not.toMatch(/Quillmere|Lotwright/i);
  expect(JSON.parse(await keptInBrowser(page))).toMatchObject({ cookies: "", databases: [] });
});

it("code that is smuggled into the page does not run, and nothing leaves", async () => {
  const { page } = office;
  expect(await smuggled(page)).toEqual([]);
  expect(await evaluated(page)).toEqual(["EvalError", "EvalError"]);
  expect((await forbidden()).map((one) => one.split(" ")[0])).toEqual(expect.arrayContaining(["script-src-elem", "connect-src", "img-src", "frame-src", "script-src"]));
  expect(requests().filter((url) => url.includes("elsewhere.example"))).toEqual([]);
});
