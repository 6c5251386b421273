import { rmSync } from "node:fs";
import type { Browser } from "playwright-core";
import { buildAddIn } from "../office/built";
import { launch } from "../browser/chromium";
import { median } from "./measure";
import { type Row, below } from "./row";

const PAGES = 9;
const MOST_MS = 50;

/** From the first line of what Excel loads to the first value, in a page that is new each time. Its size stands in `npm run sizes`. */
export async function startUp(): Promise<Row[]> {
  const built = await buildAddIn("https://lotwright.example/addin/");
  const script = built.file("start.js")?.toString() ?? "";
  const browser = await launch();
  try {
    const took: number[] = [];
    for (let i = 0; i < PAGES; i++) took.push(await firstValue(browser, script));
    return [below("script from start-up to the first value, in Chromium", median(took), MOST_MS)];
  } finally {
    await browser.close();
    rmSync(built.folder, { recursive: true });
  }
}

interface Tried {
  readonly took: number;
  readonly value: unknown;
}

async function firstValue(browser: Browser, script: string): Promise<number> {
  const page = await browser.newPage();
  try {
    await page.setContent('<div id="pane"></div>');
    await page.addScriptTag({
      content: `{
        const functions = new Map();
        window.CustomFunctions = { associate: (id, compute) => functions.set(id, compute), Error, ErrorCode: {} };
        window.Excel = undefined;
        const start = performance.now();
        ${script};
        let value;
        try { value = functions.get("PAYOUT")(100, "ozt", 24.5, "97.5%", 0.5, 25, null, {}); } catch (fault) { value = String(fault); }
        window.tried = { took: performance.now() - start, value };
      }`,
    });
    const { took, value } = await page.evaluate(() => (window as unknown as { tried: Tried }).tried);
    if (value !== 2315) throw new Error(`The first value in the page is ${String(value)}`);
    return took;
  } finally {
    await page.close();
  }
}
