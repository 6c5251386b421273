import axe, { type AxeResults } from "axe-core";
import { build } from "esbuild";
import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { createServer } from "node:http";
import type { AddressInfo } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import type { Browser, BrowserContextOptions, Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, describe, expect, it } from "vitest";
import { inRepository } from "../../src/build/excel-files";
import { serveFolder } from "../../src/build/serve-folder";
import { catalogue } from "../../src/catalogue/catalogue";
import { type Started, start } from "../host/started";
import { type Built, buildAddIn } from "../office/built";
import { outside } from "../outside";
import { launch } from "./chromium";

const FROM_DISK = pathToFileURL(inRepository("src/reference-page/reference.html")).href;
const WIDE = { width: 1200, height: 800 };
const NARROW = { width: 300, height: 700 };

let browser: Browser;
/** What the pages say to a developer, a load that their policy forbids among it: nothing of it is to happen. */
let complaints: string[] = [];

beforeAll(async () => {
  browser = await launch();
});
afterAll(() => browser?.close());
afterEach(() => {
  const heard = complaints;
  complaints = [];
  expect(heard).toEqual([]);
});

async function open(address = FROM_DISK, options: BrowserContextOptions = {}): Promise<Page> {
  const context = await browser.newContext({ viewport: WIDE, locale: "en-US", ...options });
  const page = await context.newPage();
  page.setDefaultTimeout(8000);
  page.on("console", (message) => {
    if (["error", "warning"].includes(message.type())) complaints.push(message.text());
  });
  page.on("pageerror", (error) => complaints.push(String(error)));
  await page.goto(address);
  return page;
}

const close = (page: Page): Promise<void> => page.context().close();
const listed = (page: Page): Promise<string[]> => page.locator(".lw-hit .lw-name").allTextContents();
const count = (page: Page): Promise<string> => page.locator(".lw-count").innerText();
const examples = (page: Page, id: string): Promise<string> => page.locator(`#${id} .examples`).innerText();
/** The name of the function, the field or the choice that has the focus. */
const focused = (page: Page): Promise<string> =>
  page.evaluate(() => {
    const element = document.activeElement;
    return element instanceof HTMLInputElement ? element.type : (element?.querySelector(".lw-name") ?? element)?.textContent ?? "";
  });
const topOf = (page: Page, id: string): Promise<number> => page.evaluate((name) => document.getElementById(name)?.getBoundingClientRect().top ?? Number.NaN, id);
const search = async (page: Page, words: string): Promise<void> => {
  await page.keyboard.press("/");
  await page.keyboard.press("ControlOrMeta+a");
  await page.keyboard.type(words);
};

describe("the search on the reference page", () => {
  it("reads from the page all that it looks at: what the catalogue says", async () => {
    const { outputFiles } = await build({ entryPoints: [inRepository("src/reference-page/functions-on.ts")], bundle: true, format: "iife", globalName: "page", write: false });
    const page = await open();
    expect(await page.evaluate(`${outputFiles[0]?.text ?? ""}; page.functionsOn(document)`)).toEqual(
      catalogue.map((entry) => ({
        ...Object.fromEntries((["id", "name", "description", "returns", "group", "words"] as const).map((key) => [key, entry[key]])),
        parameters: entry.parameters.map(({ name, description, wants }) => ({ name, description, wants })),
      })),
    );
    await close(page);
  });

  it("finds by name, by argument, by a word of the trade, by a unit, and forgives a slip", async () => {
    const page = await open();
    expect(await listed(page)).toEqual(catalogue.map(({ name }) => name));
    expect(await count(page)).toBe(`${catalogue.length} functions`);
    await search(page, "copperbars");
    expect((await listed(page))[0]).toBe("LOT.COPPERBARS");
    await search(page, "freeacid");
    expect((await listed(page))[0]).toBe("LOT.COPPER");
    await search(page, "electrolyte");
    expect(await listed(page)).toEqual(["LOT.CELLDRAW"]);
    expect(await count(page)).toBe("1 function");
    await search(page, "galimp");
    expect(await listed(page)).toEqual(expect.arrayContaining(["LOT.VOLUME", "LOT.VESSELS"]));
    expect(await listed(page)).not.toContain("LOT.RECOVERY");
    await search(page, "settelment");
    expect((await listed(page))[0]).toBe("LOT.SETTLEMENT");
    await close(page);
  });

  it("says what to try where nothing is found, and Escape empties it", async () => {
    const page = await open();
    await search(page, "xyzzy");
    expect(await page.locator(".lw-nothing").innerText()).toBe("No function for “xyzzy”: try weight, copper, payout");
    await page.getByRole("button", { name: "copper" }).click();
    expect((await listed(page))[0]).toBe("LOT.COPPER");
    expect(await focused(page)).toBe("search");
    await page.keyboard.press("Escape");
    expect(await count(page)).toBe(`${catalogue.length} functions`);
    await close(page);
  });

  it("is reached with /, walked through with the arrows, and Enter goes to the function", async () => {
    const page = await open();
    await search(page, "coper");
    await page.keyboard.press("ArrowDown");
    expect(await focused(page)).toBe("LOT.COPPER");
    await page.keyboard.press("ArrowUp");
    expect(await focused(page)).toBe("search");
    await page.keyboard.press("Enter");
    await expect.poll(() => focused(page)).toBe("LOT.COPPER");
    expect(new URL(page.url()).hash).toBe("#COPPER");
    expect(Math.abs(await topOf(page, "COPPER"))).toBeLessThan(12);
    expect(await page.locator(".lw-hit[aria-current]").getAttribute("href")).toBe("#COPPER");
    await search(page, "copper");
    expect(await page.locator(".lw-hit[aria-current]").getAttribute("href")).toBe("#COPPER");
    // A slash in the field is a slash.
    await search(page, "m3/h");
    expect(await page.getByRole("searchbox").inputValue()).toBe("m3/h");
    await close(page);
  });

  it("opens over a narrow page, and closes when a function is chosen, with Escape, and when one reads on", async () => {
    const page = await open(FROM_DISK, { viewport: NARROW });
    const list = page.locator(".results");
    expect(await list.isVisible()).toBe(false);
    await search(page, "fume");
    expect(await list.isVisible()).toBe(true);
    await page.getByRole("link", { name: /^LOT.FUME/ }).first().click();
    expect(await list.isVisible()).toBe(false);
    const bar = (await page.locator(".finder").boundingBox())?.height ?? 0;
    expect(await topOf(page, "FUME")).toBeGreaterThanOrEqual(bar - 1);
    expect(await topOf(page, "FUME")).toBeLessThan(bar + 12);
    await page.keyboard.press("/");
    expect(await list.isVisible()).toBe(true);
    // Once for the words, once for the list.
    await page.keyboard.press("Escape");
    expect(await list.isVisible()).toBe(true);
    await page.keyboard.press("Escape");
    expect(await list.isVisible()).toBe(false);
    await page.keyboard.press("/");
    await search(page, "fume");
    expect(await list.isVisible()).toBe(true);
    await page.locator("h1").evaluate((heading) => heading.dispatchEvent(new PointerEvent("pointerdown", { bubbles: true })));
    expect(await list.isVisible()).toBe(false);
    await close(page);
  });

  it("is not there without a script, and the page is whole all the same", async () => {
    const page = await open(FROM_DISK, { javaScriptEnabled: false });
    expect(await page.locator(".finder").isVisible()).toBe(false);
    await page.getByRole("link", { name: "LOT.COPPER", exact: true }).first().click();
    expect(new URL(page.url()).hash).toBe("#COPPER");
    expect(await examples(page, "COPPER")).toContain('=LOT.COPPER(10,"lb") shows 2.94553…');
    await close(page);
  });
});

describe("the examples on the reference page", () => {
  it("are written as the browser's language writes numbers, until the reader chooses, and the address remembers it", async () => {
    const page = await open(`${FROM_DISK}#COPPER`, { locale: "de-DE" });
    expect(await examples(page, "COPPER")).toContain('=LOT.COPPER(10;"lb") shows 2,94553…');
    await page.getByLabel("point").check();
    expect(await examples(page, "COPPER")).toContain('=LOT.COPPER(10,"lb") shows 2.94553…');
    expect(page.url()).toMatch(/reference\.html\?decimal=point#COPPER$/);
    await page.reload();
    expect(await examples(page, "COPPER")).toContain("2.94553…");
    expect(await page.getByLabel("point").isChecked()).toBe(true);
    // Going to a function keeps the choice.
    await search(page, "drop rate");
    await page.keyboard.press("Enter");
    await expect.poll(() => page.url()).toMatch(/reference\.html\?decimal=point#DROPRATE$/);
    expect(await page.evaluate(() => localStorage.length + sessionStorage.length + document.cookie.length)).toBe(0);
    await close(page);
  });

  it("are written as an address asks, whatever the language", async () => {
    const page = await open(`${FROM_DISK}?decimal=comma#PAYOUT`);
    expect(await examples(page, "PAYOUT")).toContain('=LOT.PAYOUT(100;"ozt";24,5;"97.5%";0,5;25) shows 2315');
    expect(await page.locator("#PAYOUT .signature").innerText()).toMatch(/^LOT\.PAYOUT\(fine; unit; /);
    await close(page);
  });
});

describe("the reference page", () => {
  it.each([
    ["wide", WIDE],
    ["narrow", NARROW],
  ] as const)("does not jump while it loads, and never needs scrolling sideways (%s)", async (_, viewport) => {
    const page = await open(`${FROM_DISK}?decimal=comma`, { viewport });
    const shift = await page.evaluate(
      () =>
        new Promise<number>((resolve) => {
          let sum = 0;
          new PerformanceObserver((list) => {
            for (const entry of list.getEntries()) sum += (entry as unknown as { value: number }).value;
          }).observe({ type: "layout-shift", buffered: true });
          setTimeout(() => resolve(sum), 300);
        }),
    );
    expect(shift).toBe(0);
    expect(await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)).toBeLessThanOrEqual(0);
    await close(page);
  });

  it("shows where the focus is on all that takes it", async () => {
    const page = await open();
    for (let i = 0; i < 6; i++) {
      await page.keyboard.press("Tab");
      const outline = await page.evaluate(() => getComputedStyle(document.activeElement as Element).outlineStyle);
      expect(outline, await focused(page)).not.toBe("none");
    }
    await close(page);
  });

  async function serious(page: Page): Promise<string[]> {
    await page.evaluate(axe.source);
    // It would load the style once more, which the policy forbids.
    const { violations } = await page.evaluate(() => (window as unknown as { axe: { run(options: object): Promise<AxeResults> } }).axe.run({ preload: false }));
    return violations
      .filter(({ impact }) => impact === "serious" || impact === "critical")
      .flatMap(({ id, nodes }) => nodes.map(({ target, failureSummary }) => `${id} at ${target.join(" ")}: ${failureSummary ?? ""}`));
  }

  it.each([
    ["wide, at a function", WIDE, "coper"],
    ["narrow, while searching", NARROW, "dwt"],
    ["narrow, with nothing found", NARROW, "xyzzy"],
  ] as const)("has nothing serious for axe, light and dark: %s", async (_, viewport, words) => {
    const page = await open(`${FROM_DISK}#COPPER`, { viewport });
    await search(page, words);
    for (const colorScheme of ["light", "dark"] as const) {
      await page.emulateMedia({ colorScheme });
      expect(await serious(page), colorScheme).toEqual([]);
    }
    await close(page);
  });

  it("would have: a field without a name is found", async () => {
    const page = await open();
    await page.evaluate(() => document.querySelector(".lw-search label")?.remove());
    await page.evaluate(() => document.querySelector(".lw-search input")?.removeAttribute("placeholder"));
    expect((await serious(page)).join("\n")).toContain("label");
    await close(page);
  });
});

outside("pdftotext", "the printed reference", (pdftotext) => {
  const folder = mkdtempSync(join(tmpdir(), "lotwright-printed-"));
  afterAll(() => rmSync(folder, { recursive: true }));

  it.each(["A4", "Letter"] as const)("has every function with what is folded on the screen, and neither search nor choice (%s)", async (format) => {
    const page = await open(`${FROM_DISK}?decimal=comma#FUME`);
    await search(page, "fume");
    const path = join(folder, `${format}.pdf`);
    await page.pdf({ path, format });
    await close(page);
    const printed = execFileSync(pdftotext, ["-layout", path, "-"], { encoding: "utf8" });
    const lines = printed.split("\n").map((line) => line.trim());
    for (const { name } of catalogue) expect(lines.filter((line) => line === name).length, name).toBe(1);
    expect(lines.filter((line) => line.startsWith("Gives ")).length).toBe(catalogue.length);
    expect(printed).toContain('=LOT.COPPER(10;"lb")');
    expect(lines.filter((line) => /Find a function|point 1\.5|^and \d+ more$/.test(line))).toEqual([]);
    const folded = await foldedChecks();
    expect(folded.length).toBeGreaterThan(50);
    const words = squeezed(printed);
    expect(folded.filter((check) => !words.includes(squeezed(check)))).toEqual([]);
  });

  /** The beginning of each check that is folded away on the screen. */
  async function foldedChecks(): Promise<string[]> {
    const page = await open();
    const texts = await page.locator("details li").evaluateAll((rows) => rows.map((row) => row.firstChild?.textContent ?? ""));
    await close(page);
    return texts.map((text) => text.slice(0, 30));
  }
  const squeezed = (text: string): string => text.replace(/\s+/g, "");
});

describe("the reference page in the embedded workbook", () => {
  let started: Started;
  beforeAll(async () => {
    started = await start();
  }, 240_000);
  afterAll(() => started?.stop());

  it("works under the policy of its server, with an anchor for every function", async () => {
    const page = await open(`${started.address}reference.html#COPPER`);
    for (const { id } of catalogue) expect(await page.locator(`article[id="${id}"]`).count(), id).toBe(1);
    await search(page, "payout");
    await page.keyboard.press("Enter");
    await expect.poll(() => focused(page)).toBe("LOT.PAYOUT");
    await close(page);
  });

  it("is opened from the pane at the function, written as the grid takes formulas", async () => {
    const page = await open(started.address, { locale: "de-DE", viewport: { width: 1280, height: 800 } });
    await page.locator(".busy").waitFor({ state: "hidden" });
    await page.getByRole("button", { name: /^All functions/ }).click();
    await page.getByRole("searchbox").fill("copper");
    await page.keyboard.press("Enter");
    const opening = page.waitForEvent("popup");
    await page.getByRole("link", { name: "LOT.COPPER in the reference" }).click();
    const reference = await opening;
    await reference.locator(".lw-count").waitFor();
    expect(reference.url()).toBe(`${started.address}reference.html?decimal=point#COPPER`);
    expect(await reference.locator("#COPPER .examples").innerText()).toContain('=LOT.COPPER(10,"lb") shows 2.94553…');
    await close(page);
  });

  it("is linked from the explanation of a cell, for each function in its formula", async () => {
    const page = await open(started.address, { viewport: { width: 1280, height: 800 } });
    await page.locator(".busy").waitFor({ state: "hidden" });
    await page.keyboard.type("=LOT.COPPER(LOT.FINEWEIGHT(10,\"lb\",925),\"ozt\")");
    await page.keyboard.press("Enter", { delay: 40 });
    await page.keyboard.press("ArrowUp", { delay: 40 });
    await page.getByRole("button", { name: /^Explain a cell/ }).click();
    const links = page.locator(".pane").getByRole("link", { name: /in the reference$/ });
    await expect.poll(() => links.evaluateAll((all) => all.map((link) => link.getAttribute("href")))).toEqual([
      "reference.html?decimal=point#FINEWEIGHT",
      "reference.html?decimal=point#COPPER",
    ]);
    await close(page);
  });
});

describe("the reference page in the folder for Excel", () => {
  let built: Built;
  const server = createServer();
  let address: string;
  beforeAll(async () => {
    built = await buildAddIn("https://example.org/lotwright/");
    server.on("request", serveFolder(built.folder));
    await new Promise<void>((listening) => server.listen(0, "127.0.0.1", listening));
    address = `http://127.0.0.1:${(server.address() as AddressInfo).port}/`;
  });
  afterAll(() => {
    server.close();
    if (built) rmSync(built.folder, { recursive: true });
  });

  it("works there: each function's help leads to an anchor that is there", async () => {
    const page = await open(`${address}reference.html`);
    const { functions } = JSON.parse(built.file("functions.json")?.toString() ?? "") as { functions: { helpUrl: string }[] };
    expect(functions.length).toBe(catalogue.length);
    for (const { helpUrl } of functions) {
      const { pathname, hash } = new URL(helpUrl);
      expect(pathname).toBe("/lotwright/reference.html");
      expect(await page.locator(`article${hash}`).count(), helpUrl).toBe(1);
    }
    await search(page, "settlement");
    await page.keyboard.press("Enter");
    await expect.poll(() => focused(page)).toBe("LOT.SETTLEMENT");
    await close(page);
  });
});
