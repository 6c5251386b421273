import type { Browser, Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from "vitest";
import { launch } from "./chromium";
import type {} from "./pane-page";
import { servePane } from "./serve-pane";

let browser: Browser;
let server: Awaited<ReturnType<typeof servePane>>;
let page: Page;
let faults: string[];

beforeAll(async () => {
  [browser, server] = await Promise.all([launch(), servePane()]);
});
afterAll(async () => {
  await browser?.close();
  await server?.close();
});
beforeEach(() => show());
afterEach(async () => {
  await page.close();
  expect(faults).toEqual([]);
});

async function show(query = "", width = 300): Promise<void> {
  faults = [];
  page = await browser.newPage({ viewport: { width, height: 700 } });
  page.setDefaultTimeout(10_000);
  page.on("pageerror", (error) => faults.push(error.message));
  page.on("console", (message) => {
    if (message.type() === "error" && !message.location().url.endsWith("favicon.ico")) faults.push(message.text());
  });
  await page.goto(server.url + query);
  await page.getByRole("button", { name: "All functions" }).waitFor();
}

const field = (label: string) => page.getByLabel(label, { exact: true });
const focused = () => page.evaluate(() => document.activeElement?.textContent ?? "");
const button = (name: string) => page.getByRole("button", { name, exact: true });
const result = () => page.locator("output");
const told = (sentence: string) => page.getByText(sentence, { exact: true }).waitFor();
const cell = (address: string) => page.evaluate((at) => window.shop.port.at(at), address);
const put = (address: string, value: number | string) => page.evaluate(([at, it]) => window.shop.port.put(at, it), [address, value] as const);
const move = (sheet: string, range: string) => page.evaluate(([name, at]) => window.shop.port.move(name, at), [sheet, range] as const);

async function openFunction(name: string): Promise<void> {
  await button("All functions Find a formula of the trade, fill it in with the result beside it, and put it into a cell.").click();
  await page.getByRole("searchbox").fill(name);
  await page.keyboard.press("Enter");
  await page.getByRole("heading", { name: `LOT.${name}` }).waitFor();
}

/** By the Tab key, past the tasks before it. */
async function enterAllFunctions(): Promise<void> {
  do await page.keyboard.press("Tab");
  while (!(await focused())?.startsWith("All functions"));
  await page.keyboard.press("Enter");
}

describe("the pane, by keyboard alone", () => {
  it("leads from the front page to a formula in a cell and back", async () => {
    await enterAllFunctions();
    await page.keyboard.type("how much coper");
    expect(await page.locator("mark").first().textContent()).toBe("COPPER");
    await page.keyboard.press("Enter");
    await page.getByRole("heading", { name: "LOT.COPPER" }).waitFor();
    await page.keyboard.type("B4");
    await page.keyboard.press("Enter");
    await expect.poll(() => field("unit").evaluate((input) => input === document.activeElement)).toBe(true);
    await page.keyboard.type("lb");
    await page.keyboard.press("Enter");
    await told("Inserted at B7");
    expect((await cell("B7")).formula).toBe('=LOT.COPPER(B4,"lb")');
    await page.keyboard.press("Escape");
    expect(await focused()).toContain("LOT.COPPER");
    await page.keyboard.press("Escape");
    expect(await focused()).toContain("All functions");
  });

  it("walks through what the search found with the arrow keys", async () => {
    await enterAllFunctions();
    await page.keyboard.type("copper");
    await page.keyboard.press("ArrowDown");
    expect(await focused()).toContain("LOT.COPPER");
    await page.keyboard.press("ArrowDown");
    expect(await focused()).not.toContain("LOT.COPPERCopper");
    await page.keyboard.press("ArrowUp");
    await page.keyboard.press("ArrowUp");
    expect(await page.getByRole("searchbox").evaluate((input) => input === document.activeElement)).toBe(true);
    await page.keyboard.press("Escape");
    expect(await page.getByRole("searchbox").inputValue()).toBe("");
    await page.keyboard.press("Escape");
    await told("What needs doing?");
  });
});

describe("the search", () => {
  it("says so when it finds nothing, and proposes words that do", async () => {
    await openFunction("COPPER");
    await page.keyboard.press("Escape");
    await page.getByRole("searchbox").fill("xyzzy");
    await told("No function for “xyzzy”: try weight, copper, payout");
    await button("payout").click();
    await page.getByText("LOT.PAYOUT", { exact: true }).waitFor();
  });
});

describe("a function's page", () => {
  it("shows the result while one types, with name and unit", async () => {
    await openFunction("COPPER");
    await expect.poll(() => result().textContent()).toBe("Still needed: fine, unit");
    await field("fine").fill("10");
    await field("unit").fill("lb");
    await expect.poll(() => result().textContent()).toMatch(/^copper2\.9455390930\d+ lb$/);
    expect(await page.locator(".lw-formula code").textContent()).toBe('=LOT.COPPER(10,"lb")');
  });

  it("shows a fault at the field that it names, and says so to a screen reader", async () => {
    await openFunction("FINEWEIGHT");
    await field("weight").fill("100");
    await field("unit").fill("oz");
    await expect.poll(() => field("unit").getAttribute("aria-invalid")).toBe("true");
    const said = await field("unit").evaluate((input) => (input.getAttribute("aria-describedby") ?? "").split(" ").map((id) => document.getElementById(id)?.textContent).join(" "));
    expect(said).toContain('write "ozt" (troy, 31.1034768 g)');
    await field("unit").fill("ozt");
    await expect.poll(() => field("unit").getAttribute("aria-invalid")).toBeNull();
  });

  it("takes the selected cell into a field", async () => {
    await openFunction("COPPER");
    await move("Sheet1", "B4:B5");
    await page.getByRole("button", { name: "Put B4 into fine" }).click();
    await field("unit").fill("lb");
    await told("B4 holds 10");
    await move("Sheet1", "C4:C5");
    expect(await field("fine").inputValue()).toBe("B4");
    await button("Insert at C4").waitFor();
  });

  it("keeps a field at its cell when another sheet is selected", async () => {
    await openFunction("COPPER");
    await field("fine").fill("B4");
    await move("Prices", "A1");
    await expect.poll(() => field("fine").inputValue()).toBe("Sheet1!B4");
    await field("unit").fill("lb");
    await button("Insert at A1").click();
    await told("Inserted at A1");
    expect((await cell("Prices!A1")).formula).toBe('=LOT.COPPER(Sheet1!B4,"lb")');
  });

  it("reads a cell again when something changed in the sheet", async () => {
    await openFunction("COPPER");
    await field("fine").fill("B4");
    await field("unit").fill("lb");
    await told("B4 holds 10");
    await put("B4", 20);
    await move("Sheet1", "B8");
    await told("B4 holds 20");
    await expect.poll(() => result().textContent()).toMatch(/5\.891/);
  });

  it("asks before it overwrites, shows before and after, and undoes", async () => {
    await openFunction("COPPER");
    await put("B7", 12.5);
    await field("fine").fill("10");
    await field("unit").fill("lb");
    await button("Insert at B7").click();
    await told("B7 is filled");
    expect(await page.locator(".lw-overwrite dd").allTextContents()).toEqual(["12.5", expect.stringMatching(/^=LOT\.COPPER\(10,"lb"\), shows 2\.9455/)]);
    expect(await button("Overwrite").isDisabled()).toBe(true);
    await page.keyboard.press("Escape");
    expect(await page.getByText("B7 is filled").count()).toBe(0);
    expect((await cell("B7")).value).toBe(12.5);

    await page.keyboard.press("Enter");
    await page.getByLabel("Overwrite B7").check();
    await button("Overwrite").click();
    await told("Inserted at B7");
    expect((await cell("B7")).formula).toBe('=LOT.COPPER(10,"lb")');
    await button("Undo").click();
    await told("B7 is as it was");
    expect(await cell("B7")).toMatchObject({ value: 12.5, formula: null });
  });

  it("withdraws its question when another cell is selected", async () => {
    await openFunction("VERSION");
    await put("B7", 1);
    await button("Insert at B7").click();
    await told("B7 is filled");
    await move("Sheet1", "B8");
    await expect.poll(() => page.getByText("B7 is filled").count()).toBe(0);
    await button("Insert at B8").click();
    await told("Inserted at B8");
    expect((await cell("B7")).value).toBe(1);
  });

  it("does not let a formula read itself", async () => {
    await openFunction("COPPER");
    await move("Sheet1", "B4");
    await field("fine").fill("B4");
    await field("unit").fill("lb");
    await button("Insert at B4").click();
    await told("The formula reads B4 and cannot stand in it: choose another cell");
    expect((await cell("B4")).formula).toBeNull();
  });

  it("fills the form with an example, and gives back what stood there", async () => {
    await openFunction("COPPER");
    await field("fine").fill("7");
    await page.getByText("3 examples").click();
    await page.getByRole("button", { name: '=LOT.COPPER(3,"lb","13%")' }).click();
    expect(await field("allowance 0 when left out").inputValue()).toBe("13%");
    await expect.poll(() => result().textContent()).toContain("0.998");
    await button("Put mine back").click();
    expect(await field("fine").inputValue()).toBe("7");
    expect(await field("unit").inputValue()).toBe("");
  });

  it("shows the cells that a statement fills and checks that they are free", async () => {
    await openFunction("SETTLEMENT");
    await page.getByText("An example").click();
    await page.locator(".lw-example").click();
    await expect.poll(() => result().textContent()).toBe("11 rows × 3 columns");
    await told("Fills B7:D17.");
    expect(await page.locator("tr").last().locator("td").allTextContents()).toEqual(["Payout", "2095.28", "money"]);
    await put("C9", "a note");
    await button("Insert at B7").click();
    await told("The result takes 11 rows × 3 columns, B7:D17, but C9 is filled: empty what is in the way or choose another cell");
    expect((await cell("B7")).formula).toBeNull();
    await move("Sheet1", "F1");
    await button("Insert at F1").click();
    await told("Inserted at F1");
  });

  it("unfolds the working and copies it as text", async () => {
    await page.context().grantPermissions(["clipboard-read", "clipboard-write"]);
    await openFunction("COPPER");
    await field("fine").fill("B4");
    await field("unit").fill("lb");
    await page.getByText("Working", { exact: true }).click();
    await told("silver = B4 = 10 lb = 4535.9237 g");
    await button("Copy as text").click();
    await told("Copied");
    expect(await page.evaluate(() => navigator.clipboard.readText())).toContain("\nPut in     silver = B4 = 10 lb = 4535.9237 g\n");
  });

  it("inserts a formula whose cells are still to be filled, but not one that is typed wrong", async () => {
    await openFunction("COPPER");
    await field("fine").fill("B4");
    await field("unit").fill("oz");
    await button("Insert at B7").click();
    await told("Not inserted: correct it first");
    expect(await field("unit").evaluate((input) => input === document.activeElement)).toBe(true);
    await field("fine").fill("A1");
    await field("unit").fill("lb");
    await button("Insert at B7").click();
    await told("Inserted at B7");
    expect((await cell("B7")).formula).toBe('=LOT.COPPER(A1,"lb")');
  });

  it("keeps what was typed when one goes back and forth and when the pane is closed", async () => {
    await openFunction("COPPER");
    await field("fine").fill("B4");
    await page.keyboard.press("Escape");
    await page.keyboard.press("Enter");
    expect(await field("fine").inputValue()).toBe("B4");
    await page.evaluate(() => {
      window.shop.unmount();
      window.shop.mount();
    });
    expect(await field("fine").inputValue()).toBe("B4");
    expect(await page.evaluate(() => localStorage.length + sessionStorage.length)).toBe(0);
  });

  it("says in a sentence what the workbook refuses", async () => {
    await openFunction("VERSION");
    await page.evaluate(() => (window.shop.port.fault = "The sheet is protected"));
    await button("Insert at B7").click();
    await told("The sheet is protected");
  });

  it("shows and takes numbers and lists as the user's spreadsheet does, and writes them as the workbook does", async () => {
    await page.close();
    await show("?separator=;&decimal=,");
    await openFunction("PAYOUT");
    await page.getByText("2 examples").click();
    await page.getByRole("button", { name: '=LOT.PAYOUT(100;"ozt";24,5;"97.5%";0,5;25)' }).click();
    expect(await page.locator(".lw-formula code").textContent()).toBe('=LOT.PAYOUT(100;"ozt";24,5;"97.5%";0,5;25)');
    await field("refining charge 0 when left out").fill("0,25");
    await expect.poll(() => result().textContent()).toContain("2339,38");
    await button("Insert at B7").click();
    await told("Inserted at B7");
    expect((await cell("B7")).formula).toBe('=LOT.PAYOUT(100,"ozt",24.5,"97.5%",0.25,25)');
  });

  it("treats what stands in the workbook as text, whatever it is", async () => {
    await put("B4", '<img src=x onerror="document.title=1">');
    await openFunction("COPPER");
    await field("fine").fill("B4");
    await field("unit").fill("lb");
    await page.getByText('B4 holds “<img src=x onerror="document.title=1">”').or(page.getByText("Cannot use fine")).first().waitFor();
    expect(await page.locator("img").count()).toBe(0);
  });
});

describe("the pane's looks", () => {
  it("fit in 300 pixels on every page, without scrolling sideways", async () => {
    const overflow = () => page.evaluate(() => (document.querySelector("#pane")?.scrollWidth ?? 0) - (document.querySelector("#pane")?.clientWidth ?? 0));
    await openFunction("COPPER");
    await page.keyboard.press("Escape");
    await page.getByRole("searchbox").fill("");
    const names = await page.locator(".lw-hit .lw-name").allTextContents();
    expect(names.length).toBeGreaterThan(20);
    expect(await overflow()).toBe(0);
    for (const name of names) {
      await page.locator(".lw-hit").filter({ has: page.getByText(name, { exact: true }) }).click();
      expect(await overflow(), name).toBe(0);
      await page.keyboard.press("Escape");
    }
  });

  it("never hide the control that one is in behind the result", async () => {
    await page.setViewportSize({ width: 300, height: 480 });
    await openFunction("SETTLEMENT");
    await page.getByText("An example").click();
    await page.locator(".lw-example").click();
    for (let tabs = 0; tabs < 22; tabs++) {
      const isHidden = await page.evaluate(() => {
        const [box, bar] = [document.activeElement, document.querySelector(".lw-bar")].map((it) => it?.getBoundingClientRect());
        const isInside = document.activeElement?.closest(".lw-bar");
        const isControl = document.activeElement?.matches("input, button, summary");
        return isControl && !isInside && box && bar ? box.bottom > bar.top || box.top < 0 : false;
      });
      expect(isHidden, await focused()).toBe(false);
      await page.keyboard.press("Tab");
    }
  });

  it("follow the host's colours, whatever the desktop's are", async () => {
    await page.emulateMedia({ colorScheme: "light" });
    await page.evaluate(() => window.shop.colours({ ground: "#262626", text: "#f0f0f0" }));
    const ground = () => page.locator("#pane").evaluate((pane) => [getComputedStyle(pane).backgroundColor, getComputedStyle(pane).colorScheme]);
    expect(await ground()).toEqual(["rgb(38, 38, 38)", "dark"]);
    await page.emulateMedia({ colorScheme: "dark" });
    await page.evaluate(() => window.shop.colours({ ground: "#ffffff", text: "#000000" }));
    expect(await ground()).toEqual(["rgb(255, 255, 255)", "light"]);
  });

  it("keep text readable: at least 4.5 to 1 against its ground, light and dark", async () => {
    await openFunction("COPPER");
    await put("B7", 1);
    await field("fine").fill("B4");
    await field("unit").fill("oz");
    await expect.poll(() => field("unit").getAttribute("aria-invalid")).toBe("true");
    for (const colorScheme of ["light", "dark"] as const) {
      await page.emulateMedia({ colorScheme });
      const poor = await page.evaluate(poorContrasts);
      expect(poor, colorScheme).toEqual([]);
    }
  });

  it("give every control a name that a screen reader can say", async () => {
    await openFunction("SETTLEMENT");
    const nameless = await page.locator("button, input, summary, [role=region]").evaluateAll((controls) =>
      controls.filter((it) => !(it.getAttribute("aria-label") || it.textContent || (it as HTMLInputElement).labels?.[0]?.textContent)).map((it) => it.outerHTML),
    );
    expect(nameless).toEqual([]);
  });
});

/** Texts that are too faint, by the contrast ratio of WCAG 2. */
function poorContrasts(): string[] {
  const channels = (colour: string): number[] => (colour.match(/[\d.]+/g) ?? []).map(Number);
  const luminance = (colour: number[]): number => {
    const [r = 0, g = 0, b = 0] = colour.map((c) => (c / 255 <= 0.04045 ? c / 255 / 12.92 : ((c / 255 + 0.055) / 1.055) ** 2.4));
    return 0.2126 * r + 0.7152 * g + 0.0722 * b;
  };
  const groundOf = (element: Element | null): number[] => {
    const colour = element ? channels(getComputedStyle(element).backgroundColor) : [255, 255, 255];
    return !element || (colour[3] ?? 1) > 0 ? colour : groundOf(element.parentElement);
  };
  const texts = [...document.querySelectorAll("#pane *")].filter((element) => [...element.childNodes].some((node) => node.nodeType === 3 && node.textContent?.trim()));
  return texts.flatMap((element) => {
    const [a, b] = [luminance(channels(getComputedStyle(element).color)), luminance(groundOf(element))].sort((x, y) => y - x) as [number, number];
    const ratio = (a + 0.05) / (b + 0.05);
    return ratio < 4.5 ? [`${element.textContent}: ${ratio.toFixed(2)}`] : [];
  });
}
