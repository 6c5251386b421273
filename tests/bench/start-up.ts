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
  const built = await buildAddIn(PAGE);
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

const PAGE = "https://lotwright.example/addin/";

interface Tried {
  readonly took: number;
  readonly value: unknown;
}

async function firstValue(browser: Browser, script: string): Promise<number> {
  const page = await browser.newPage();
  const files: Readonly<Record<string, string>> = {
    "": '<!doctype html><div id="pane"></div><script src="script.js"></script>',
    "script.js": `${BEFORE}${script};${AFTER}`,
  };
  await page.route("**/*", (route) => {
    const name = route.request().url().slice(PAGE.length);
    return route.fulfill({ body: files[name] ?? "", contentType: name ? "text/javascript" : "text/html" });
  });
  try {
    await page.goto(PAGE);
    const { took, value } = await page.evaluate(() => (window as unknown as { tried: Tried }).tried);
    if (value !== 2315) throw new Error(`The first value in the page is ${String(value)}`);
    return took;
  } finally {
    await page.close();
  }
}

/** Excel's side of the page, as far as a first value needs it. */
const BEFORE = `
const functions = new Map();
window.Office = { onReady: () => new Promise(() => undefined) };
window.CustomFunctions = { associate: (id, compute) => functions.set(id, compute), Error, ErrorCode: {} };
const start = performance.now();
`;
const AFTER = `
const value = functions.get("PAYOUT")(100, "ozt", 24.5, "97.5%", 0.5, 25, null, {});
window.tried = { took: performance.now() - start, value };
`;
