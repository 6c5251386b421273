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

async function open(task: RegExp): Promise<Page> {
  const page = await browser.newPage({ viewport: { width: 300, height: 700 } });
  page.setDefaultTimeout(10_000);
  await page.goto(server.url);
  await page.getByRole("button", { name: task }).click();
  return page;
}

const openFunction = async (name: string): Promise<Page> => {
  const page = await open(/^All functions/);
  await page.getByRole("searchbox").fill(name);
  await page.keyboard.press("Enter");
  await page.getByRole("heading", { name: `LOT.${name}` }).waitFor();
  return page;
};

const explained = async (cell: string): Promise<Page> => {
  const page = await open(/^Explain a cell/);
  await page.evaluate((at) => window.shop.port.move("Lots", at), cell);
  await page.getByText(`Lots!${cell}`).first().waitFor();
  return page;
};

/** Each page of the pane, in the state in which there is most on it. */
const pages: Readonly<Record<string, () => Promise<Page>>> = {
  "the front page": async () => {
    const page = await browser.newPage({ viewport: { width: 300, height: 700 } });
    await page.goto(server.url);
    await page.getByRole("heading", { name: "Lotwright" }).waitFor();
    return page;
  },
  "the list of all functions": async () => {
    const page = await open(/^All functions/);
    await page.getByRole("searchbox").fill("copper");
    return page;
  },
  "a function with a fault in its form": async () => {
    const page = await openFunction("COPPER");
    await page.getByLabel("fine", { exact: true }).fill("B4");
    await page.getByLabel("unit", { exact: true }).fill("oz");
    await expect.poll(() => page.getByLabel("unit", { exact: true }).getAttribute("aria-invalid")).toBe("true");
    return page;
  },
  "a function whose result fills many cells": async () => {
    const page = await openFunction("SETTLEMENT");
    await page.getByText("An example").click();
    await page.locator(".lw-example").click();
    await page.getByText("Working", { exact: true }).click();
    return page;
  },
  "a question before overwriting": async () => {
    const page = await openFunction("VERSION");
    await page.evaluate(() => window.shop.port.put("B7", 1));
    await page.getByRole("button", { name: "Insert at B7" }).click();
    await page.getByText("B7 is filled").waitFor();
    return page;
  },
  "a cell with nothing to explain": () => open(/^Explain a cell/),
  "the explanation of a cell, all of it unfolded": async () => {
    const page = await explained("G2");
    await page.getByText("Their source").click();
    await page.getByText("Without the add-in").click();
    await page.getByRole("button", { name: "Go to Copper allowance, Prices!B5" }).click();
    await page.getByRole("button", { name: "Back to Lots!G2" }).waitFor();
    return page;
  },
  "the explanation of an error": () => explained("F4"),
  "a note before it is written": async () => {
    const page = await explained("F2");
    await page.getByRole("button", { name: "Put beside as a note" }).click();
    await page.getByRole("button", { name: "Write it" }).waitFor();
    return page;
  },
};

/** What axe finds that keeps somebody from using the page. */
async function serious(page: Page): Promise<string[]> {
  await page.evaluate(axe.source);
  const { violations } = await page.evaluate(() => (window as unknown as { axe: { run(root: string): Promise<AxeResults> } }).axe.run("#pane"));
  return violations
    .filter(({ impact }) => impact === "serious" || impact === "critical")
    .flatMap(({ id, nodes }) => nodes.map(({ target, failureSummary }) => `${id} at ${target.join(" ")}: ${failureSummary ?? ""}`));
}

describe("axe finds nothing serious", () => {
  it.each(Object.entries(pages))("on %s, light and dark", async (_, show) => {
    const page = await show();
    for (const colorScheme of ["light", "dark"] as const) {
      await page.emulateMedia({ colorScheme });
      expect(await serious(page), colorScheme).toEqual([]);
    }
    await page.close();
  });

  it("unless there is something: a field without a name is found", async () => {
    const page = await openFunction("COPPER");
    await page.evaluate(() => document.querySelector("#pane label")?.remove());
    expect((await serious(page)).join("\n")).toContain("label");
    await page.close();
  });
});
