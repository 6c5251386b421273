import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { launch } from "../browser/chromium";
import { serious, serveTask } from "../journal/serve-task";
import type {} from "../journal/task-page";
import { placed } from "../month/books";
import { bookOf, goodRows, seeded } from "./reconcile-books";
import { uglyBooks } from "./ugly/books";
import { march } from "./ugly/writing";

let browser: Browser;
let server: Awaited<ReturnType<typeof serveTask>>;

const WRONG = { A9: "26-003", B9: march(0), D6: "4 lb", F7: 1996.5, N12: 1400, O3: 999, E4: 1400 } as const;

beforeAll(async () => {
  const books = {
    wrong: (await placed(await seeded(WRONG, 38))).file.bytes,
    good: (await placed(await bookOf(goodRows(38)))).file.bytes,
    many: (await placed(await seeded({ N6: 1, N3000: 1 }, 3000))).file.bytes,
    unplaced: await uglyBooks["French Canada"](),
  };
  [browser, server] = await Promise.all([launch(), serveTask(books)]);
}, 120_000);
afterAll(async () => {
  await browser?.close();
  await server?.close();
});

async function open(book: string): Promise<Page> {
  const page = await browser.newPage({ viewport: { width: 300, height: 700 } });
  page.setDefaultTimeout(15_000);
  await page.goto(`${server.url}?task=reconcile&book=${book}`);
  await page.getByRole("heading", { name: "Reconcile" }).waitFor();
  return page;
}
const selected = (page: Page): Promise<string[]> => page.evaluate(() => window.taskShop.selected());

describe("Reconcile", () => {
  it("lists what contradicts itself by kinds, and goes to each cell from the keyboard", async () => {
    const page = await open("wrong");
    await page.getByText(/^\d+ contradictions in 6 lots of 38$/).waitFor();
    expect(await page.getByRole("heading", { level: 2 }).allTextContents()).toEqual(["Lot numbers (1)", "Dates (1)", "Units and scales (1)", expect.stringMatching(/^Weights/), "Outturn (1)", "Recovery (1)", "Payout (2)", expect.stringMatching(/^Overtyped/)]);
    expect(await page.getByRole("button", { name: /^N12 Payout/ }).textContent()).toMatch(/Lot 26-011.*The terms of its row give \d+\.\d\d, and payout says 1400\.00/);
    expect(await serious(page)).toEqual([]);
    await page.getByRole("button", { name: "Look again" }).focus();
    await page.keyboard.press("Tab");
    await page.keyboard.press("Enter");
    await page.keyboard.press("ArrowDown");
    await page.keyboard.press("Enter");
    await page.keyboard.press("End");
    await page.keyboard.press("Enter");
    await expect.poll(() => selected(page)).toEqual(["Lots!A9", "Lots!B9", "Lots!F7"]);
    expect(await page.locator(".lw-place[aria-current]").textContent()).toMatch(/^F7/);
    await page.keyboard.press("Tab");
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe("What was looked at");
    await page.close();
  });

  it("looks again after mending, and says what was looked at where nothing is left", async () => {
    const page = await open("wrong");
    await page.getByText(/^\d+ contradictions in 6 lots of 38$/).waitFor();
    const good = goodRows(38);
    await page.evaluate(
      (cells) => window.taskShop.write(...cells),
      Object.keys(WRONG).map((cell) => {
        const [, letter = "", row = ""] = /^([A-Z])(\d+)$/.exec(cell) ?? [];
        const content = good[Number(row) - 2]?.["ABCDEFGHIJKLMNOP".indexOf(letter)];
        return { sheet: "Lots", cell, content: typeof content === "object" && content !== null && "formula" in content ? `=${content.formula}` : (content as number) };
      }),
    );
    await page.getByRole("button", { name: "Look again" }).click();
    await page.getByText("Nothing contradicts itself in 38 lots").waitFor();
    expect(await page.getByRole("button", { name: "Look again" }).evaluate((button) => button === document.activeElement)).toBe(true);
    const looked = await page.locator(".lw-looked > div").allTextContents();
    expect(looked).toContain("Dates38 lots");
    expect(looked).toContain("Out-of-date valuesnot looked at: no cell of the list holds a formula of Lotwright that can be computed here");
    expect(await serious(page)).toEqual([]);
    await page.close();
  });

  it("can be stopped, with what was found so far", async () => {
    const page = await browser.newPage({ viewport: { width: 300, height: 700 } });
    page.setDefaultTimeout(15_000);
    // Faster than any hand, since the whole is done in a blink.
    await page.addInitScript(() =>
      new MutationObserver((_, observer) => {
        if ((document.querySelector("progress")?.value ?? 0) === 0) return;
        observer.disconnect();
        [...document.querySelectorAll("button")].find(({ textContent }) => textContent === "Stop")?.click();
      }).observe(document, { subtree: true, childList: true, attributes: true }),
    );
    await page.goto(`${server.url}?task=reconcile&book=many`);
    await page.getByText(/^Stopped\. 1 contradiction in 1 lot of the first \d+ of 3000 lots$/).waitFor();
    await page.getByRole("button", { name: "Look again" }).click();
    await page.getByText("2 contradictions in 2 lots of 3000").waitFor({ timeout: 30_000 });
    await page.close();
  }, 60_000);

  it("says what to do where no list is set up, and Escape leaves", async () => {
    const page = await open("unplaced");
    await page.getByText("It is not set up yet where this workbook keeps its lots").waitFor();
    expect(await page.getByText(/open Set up a lot/).count()).toBe(1);
    expect(await serious(page)).toEqual([]);
    await page.keyboard.press("Escape");
    expect(await page.evaluate(() => window.taskShop.hasLeft())).toBe(true);
    await page.close();
  });
});
