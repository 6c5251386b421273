import axe, { type AxeResults } from "axe-core";
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { inflateSync } from "node:zlib";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { launch } from "./chromium";
import type {} from "./plan-page";
import { servePane } from "./serve-pane";

let browser: Browser;
let server: Awaited<ReturnType<typeof servePane>>;

beforeAll(async () => {
  [browser, server] = await Promise.all([launch(), servePane("plan-page.ts")]);
});
afterAll(async () => {
  await browser?.close();
  await server?.close();
});

async function open(ask = ""): Promise<Page> {
  const page = await browser.newPage({ viewport: { width: 300, height: 700 } });
  page.setDefaultTimeout(10_000);
  await page.goto(`${server.url}${ask}`);
  await page.getByRole("heading", { name: "Dissolving" }).waitFor({ state: ask === "?unreadable" ? "hidden" : "visible" });
  return page;
}

const water = (page: Page) => page.getByRole("textbox", { name: "Water added before the drop" });
const figure = (page: Page, label: string) => page.getByRole("row", { name: new RegExp(`^${label}`) }).first();
const numberOf = async (page: Page, label: string): Promise<string> => (await figure(page, label).locator("td.lw-number").innerText()).replace(/\s+/g, " ");

async function whole(): Promise<Page> {
  const page = await open();
  await water(page).fill("5");
  await page.getByLabel("Start of the drop").fill("2026-03-04T08:00");
  await page.getByLabel("Free acid left, mol").fill("3");
  await page.getByLabel("Fineness of the silver bars").fill("99%");
  await page.getByLabel("Take the copper out with iron").check();
  return page;
}

describe("the plan of a batch", () => {
  it("asks for the water, and has pails, load and times as soon as it is given", async () => {
    const page = await open();
    expect(await figure(page, "Pails").innerText()).toContain("Fill in above: the water that is added");
    await water(page).fill("5");
    expect(await numberOf(page, "Pails")).toBe("2 to 3");
    expect(await numberOf(page, "Silver per litre")).toBe("237.2 to 272.5");
    expect(await figure(page, "When").innerText()).toContain("Fill in above: when the drop starts");
    await page.getByLabel("Start of the drop").fill("2026-03-04T08:00");
    expect(await figure(page, "Hang the bars").innerText()).toContain("Wed 4 Mar 08:00");
    await page.close();
  });

  it("follows the share of acid and the hours that are given, in place", async () => {
    const page = await whole();
    await page.getByLabel("Strong route share").fill("0");
    expect(await numberOf(page, "Nitric acid")).toBe("2.118");
    await page.getByLabel("Strong route share").fill("2");
    expect(await page.getByText("Cannot use 2: it must be a share").isVisible()).toBe(true);
    expect(await numberOf(page, "Nitric acid")).toBe("2.118 to 3.177");
    await page.getByLabel("Hours you give it").fill("48");
    expect(await figure(page, "Test for silver").innerText()).toContain("Fri 6 Mar 08:00");
    expect(await numberOf(page, "Share dropped by then")).toBe("99.925 %");
    expect(await page.getByLabel("Hours you give it").evaluate((field) => field === document.activeElement)).toBe(true);
    await page.close();
  });

  it("remarks on a pail over its fill, and tells it on", async () => {
    const page = await whole();
    expect(await page.evaluate(() => window.plan.view.remarks.length)).toBe(0);
    await page.getByLabel("Pails that you take").fill("2");
    expect(await page.getByRole("note").innerText()).toContain("is over the fill of 2 pails");
    expect(await page.evaluate(() => window.plan.view.remarks.map(({ about }) => about))).toEqual([["acid"]]);
    await page.close();
  });

  it("opens a working with one key and closes it with one, the focus staying where it was", async () => {
    const page = await whole();
    const why = page.getByRole("button", { name: "why: Copper that it takes" });
    await why.focus();
    await page.keyboard.press("Enter");
    expect(await why.getAttribute("aria-expanded")).toBe("true");
    const working = page.locator(`[id="${await why.getAttribute("aria-controls")}"]`);
    expect(await working.innerText()).toContain("Copper that the drop consumes");
    expect(await working.innerText()).toContain('"ozt","13%",3,"lb")');
    await page.keyboard.press("Enter");
    expect(await working.isVisible()).toBe(false);
    await page.keyboard.press("Enter");
    await page.keyboard.press("Tab");
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe("Their source");
    await page.keyboard.press("Escape");
    expect(await working.isVisible()).toBe(false);
    expect(await why.evaluate((button) => button === document.activeElement)).toBe(true);
    await page.close();
  });

  it("keeps a working open, and live, while the batch is changed", async () => {
    const page = await whole();
    await page.getByRole("button", { name: "why: Nitric acid" }).click();
    expect(await page.getByText("Nitric acid to dissolve a charge, at least").isVisible()).toBe(true);
    expect(await page.getByText("Nitric acid to dissolve a charge, at most").isVisible()).toBe(true);
    await page.getByLabel("Strong route share").fill("40%");
    expect(await page.getByText("no2share = \"40%\" = 0.4").isVisible()).toBe(true);
    expect(await page.getByText("Nitric acid to dissolve a charge, at least").count()).toBe(0);
    await page.close();
  });

  it("draws the pails and the drop, and says both to whoever does not see them", async () => {
    const page = await whole();
    const alts = await page.getByRole("img").evaluateAll((images) => images.map((image) => image.getAttribute("aria-label")));
    expect(alts).toEqual([
      "3 pails of 5 gal: the liquor stands at 47.5 % to 54.5 % of the brim. They are filled to 75 % at most",
      "Silver left in the liquor: 272.5 g/L at the start, 3.691 g/L half-way, 0.05 g/L at the test after 57.36 h; decanted after 81.36 h",
    ]);
    await page.close();
  });

  it("names what the shop has not told, all of it once at the top", async () => {
    const page = await open("?untold");
    expect(await page.getByText("in The shop: the strength of the acid").innerText()).toContain("the crucible");
    expect(await figure(page, "Heats").innerText()).toContain("Say the crucible in The shop");
    expect(await page.getByRole("img").count()).toBe(0);
    await page.close();
  });

  it("says in a sentence why a lot has no plan", async () => {
    const page = await open("?unreadable");
    expect(await page.locator(".lw-plan").innerText()).toMatch(/^Cannot .*fineness/);
    await page.close();
  });

  it("reads and writes a comma where that is the decimal", async () => {
    const page = await open("?comma");
    await water(page).fill("4,5");
    expect(await numberOf(page, "Nitric acid")).toBe("2,118 to 3,177");
    expect(await numberOf(page, "Pails")).toBe("2 to 3");
    await page.close();
  });

  it("fits 300 pixels with every working open", async () => {
    const page = await whole();
    for (const why of await page.getByRole("button", { name: /^why/ }).all()) await why.click();
    const [inner, outer] = await page.evaluate(() => [document.querySelector("#pane")?.scrollWidth, document.querySelector("#pane")?.clientWidth]);
    expect(inner).toBe(outer);
    await page.close();
  });
});

async function serious(page: Page): Promise<string[]> {
  await page.evaluate(axe.source);
  const { violations } = await page.evaluate(() => (window as unknown as { axe: { run(root: string): Promise<AxeResults> } }).axe.run("#pane"));
  return violations.filter(({ impact }) => impact === "serious" || impact === "critical").flatMap(({ id, nodes }) => nodes.map(({ target }) => `${id} at ${target.join(" ")}`));
}

describe("axe finds nothing serious", () => {
  it.each(["light", "dark"] as const)("in the plan with a fault and its workings open: %s", async (colorScheme) => {
    const page = await whole();
    await page.getByLabel("Pails that you take").fill("1.5");
    for (const why of await page.getByRole("button", { name: /^why/ }).all()) await why.click();
    await page.emulateMedia({ colorScheme });
    expect(await serious(page)).toEqual([]);
    await page.close();
  });

  it.each(["light", "dark"] as const)("in a plan that lacks much: %s", async (colorScheme) => {
    const page = await open("?untold");
    await page.emulateMedia({ colorScheme });
    expect(await serious(page)).toEqual([]);
    await page.close();
  });
});

describe("a drawing as a PNG", () => {
  it("is drawn under the page's policy, twice as fine, on white, with the text escaped", async () => {
    const page = await open();
    const png = Buffer.from(await page.evaluate(() => window.plan.png()));
    await page.close();
    expect(png.subarray(1, 4).toString()).toBe("PNG");
    expect([png.readUInt32BE(16), png.readUInt32BE(20)]).toEqual([80, 40]);
    expect(pixels(png, 80)).toEqual({ left: [255, 255, 255], right: [0x91, 0x47, 0x19] });
  });

  it("is allowed by the policy of the embedded host's page", () => {
    const server = readFileSync(fileURLToPath(new URL("../../src/build/serve.mjs", import.meta.url)), "utf8");
    expect(server).toMatch(/img-src 'self' data:/);
  });
});

/** The colours of the first pixel and of the last one of the first row, whose filter no reader needs more of. */
function pixels(png: Buffer, width: number): { left: number[]; right: number[] } {
  const parts: Buffer[] = [];
  for (let at = 8; at < png.length; at += 12 + png.readUInt32BE(at)) if (png.toString("latin1", at + 4, at + 8) === "IDAT") parts.push(png.subarray(at + 8, at + 8 + png.readUInt32BE(at)));
  const channels = png[25] === 6 ? 4 : 3;
  const data = inflateSync(Buffer.concat(parts));
  const [filter, row] = [data[0], [...data.subarray(1, 1 + width * channels)]];
  // The row above the first counts as nought, so that of the filters only "left" (and its kin) changes it.
  if (filter !== 0 && filter !== 2) row.forEach((value, i) => (row[i] = (value + (i < channels ? 0 : filter === 3 ? Math.floor((row[i - channels] ?? 0) / 2) : (row[i - channels] ?? 0))) & 255));
  return { left: row.slice(0, 3), right: row.slice((width - 1) * channels, (width - 1) * channels + 3) };
}
