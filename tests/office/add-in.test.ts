import { rmSync } from "node:fs";
import { gzipSync } from "node:zlib";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { catalogue } from "../../src/catalogue/catalogue";
import { argumentCell, evaluated } from "../../src/cli/called";
import { lotCalls } from "../../src/formulas/lot-calls";
import { Reference } from "../../src/functions/reference";
import { launch } from "../browser/chromium";
import { type Built, buildAddIn } from "./built";
import { type OfficePage, type Opening, openOfficePage } from "./office-page";

let built: Built;
let browser: Browser;

beforeAll(async () => {
  built = await buildAddIn("https://lotwright.example/addin/");
  browser = await launch();
});
afterAll(async () => {
  await browser?.close();
  rmSync(built.folder, { recursive: true });
});

async function opened(opening: Opening = {}, file = built.file): Promise<OfficePage> {
  const office = await openOfficePage(browser, file, opening);
  await office.page.evaluate(() => Office.onReady());
  return office;
}

/** What Excel is told when it calls a cell function. Excel gives every parameter, and null for one that is left out. */
async function called({ page }: OfficePage, id: string, cells: readonly unknown[]): Promise<unknown> {
  // Excel is told when the add-in can be called.
  await page.waitForFunction(() => window.stub.requests.some((request) => request.some(([, action]) => action.includes("ReadyForCustomFunctions"))));
  const call = await page.evaluate(([name, given]) => window.stub.call(name, given), [id, cells] as const);
  const result = await page.waitForFunction((number) => window.stub.results.find(([of]) => of === number), call);
  const [, good, value, code] = (await result.jsonValue()) as unknown as readonly [number, boolean, unknown, number];
  return good ? value : { code, message: value };
}

interface CellFault {
  readonly code: number;
  readonly message: string;
}

const errorText = ({ code, message }: CellFault): string => `${code === NA ? "#N/A" : "#VALUE!"} ${message}`;

/** An argument of an example as Excel gives it: null where it is left out, rows of cells for a range. */
function excelCell(text: string, isRange: boolean): unknown {
  const cell = argumentCell(text, evaluated);
  const value = cell instanceof Reference ? cell.holds : cell;
  return isRange && value !== null && !Array.isArray(value) ? [[value]] : value;
}

/** The numbers that stand for Excel's errors on the way to it. */
const NA = 1;
const VALUE = 7;

describe("the built page in Excel", () => {
  it.each(["excel", "web"] as const)("ties exactly the functions of functions.json (%s)", async (around) => {
    const { page } = await openOfficePage(browser, built.file, { around });
    const tied = await page.evaluate(() => Object.keys((CustomFunctions as unknown as { _association: { mappings: object } })._association.mappings));
    const { functions } = JSON.parse(built.file("functions.json")?.toString() ?? "") as { functions: { id: string }[] };
    expect(functions.length).toBeGreaterThan(20);
    expect(tied.sort()).toEqual(functions.map(({ id }) => id).sort());
  });

  it("gives Excel values: a number, a text, and rows for a spill", async () => {
    const office = await opened();
    expect(await called(office, "COPPER", [10, "lb", null, null, null])).toBeCloseTo(2.9455, 4);
    expect(await called(office, "FINENESS", ["sterling", "ppt"])).toBe(925);
    expect(await called(office, "VERSION", [])).toMatch(/^Lotwright \d+\.\d+\.\d+/);
    const rows = (await called(office, "SETTLEMENT", [100, "ozt", 925, 24.5, "98%", 0.5, 0.25, 25, null, null])) as unknown[][];
    expect(rows.length).toBeGreaterThan(3);
    expect(new Set(rows.map((row) => row.length)).size).toBe(1);
  });

  it("gives Excel what the first example of each function shows", async () => {
    const office = await opened();
    for (const { id, arity, parameters, examples } of catalogue)
      for (const { formula, shows } of examples.slice(0, 1)) {
        const [call] = lotCalls(formula);
        const cells = Array.from({ length: arity }, (_, i) => excelCell(call?.arguments[i] ?? "", parameters[i]?.shape === "range"));
        const given = await called(office, id, cells);
        const first = [given].flat(2)[0];
        const text = typeof first === "object" && first !== null && "code" in first ? errorText(first as unknown as CellFault) : String(first);
        expect(shows.endsWith("…") ? `${text.slice(0, shows.length - 1)}…` : text, formula).toBe(shows);
      }
  }, 180_000);

  it("gives Excel an error with its code and what to write instead", async () => {
    const office = await opened();
    expect(await called(office, "COPPER", [10, "oz", null, null, null])).toEqual({
      code: VALUE,
      message: expect.stringMatching(/^Cannot use unit = "oz": an ounce can be troy or avoirdupois.*write "ozt" .* or "ozav"/),
    });
    expect(await called(office, "FINENESS", [0.925, "stone"])).toEqual({ code: NA, message: expect.stringMatching(/^Cannot find to = "stone": write one of/) });
    expect(await called(office, "COPPER", [null, null, null, null, null])).toEqual({ code: VALUE, message: expect.stringMatching(/^Cannot compute without/) });
    expect(await called(office, "WEIGHT", [1e308, "lb", "gr"])).toEqual({ code: VALUE, message: expect.stringMatching(/^Cannot /) });
  });

  it("reads a price that is a currency value", async () => {
    const office = await opened();
    const price = { type: "FormattedNumber", basicType: "Double", basicValue: 24.5, numberFormat: "$0.00" };
    expect(await called(office, "PRICE", [price, "ozt", "g"])).toEqual(await called(office, "PRICE", [24.5, "ozt", "g"]));
  });

  it("is loaded with the workbook from the first call on", async () => {
    const office = await opened();
    const asked = (): Promise<number> => office.page.evaluate(() => window.stub.requests.filter((request) => JSON.stringify(request).includes("SetAppRuntimeStartState")).length);
    expect(await asked()).toBe(0);
    await called(office, "VERSION", []);
    await called(office, "VERSION", []);
    expect(await asked()).toBe(1);
  });

  it("breaks none of its own page's rules", async () => {
    const office = await opened();
    await called(office, "VERSION", []);
    await office.page.locator("#pane.lotwright-pane").waitFor();
    expect(office.complaints).toEqual([]);
    const rules = (await office.page.locator("meta[http-equiv=Content-Security-Policy]").getAttribute("content")) ?? "";
    expect(rules).toContain("default-src 'none'");
    expect(rules).toContain("connect-src 'none'");
    expect(rules).not.toMatch(/unsafe|\*/);
  });
});

describe("the pane in Excel", () => {
  const isPane = (name: string): boolean => /^pane\..*\.js$/.test(name);

  it("is not even loaded while only the functions are used, and appears when Excel shows it", async () => {
    const office = await opened({ hidden: true });
    await called(office, "VERSION", []);
    expect(office.asked.filter(isPane)).toEqual([]);
    await office.page.evaluate(() => window.stub.showPane());
    await office.page.locator("#pane.lotwright-pane").waitFor();
    expect(office.asked.filter(isPane)).toHaveLength(1);
  });

  it("appears at once where it was opened with the page", async () => {
    const office = await opened();
    await office.page.locator("#pane.lotwright-pane").waitFor();
    expect(await office.page.locator("#pane").innerText()).not.toBe("");
  });

  it("is dark where Excel is dark", async () => {
    const office = await opened({ book: { sheets: { Costs: {} }, selected: ["Costs", "B4"], theme: { bodyBackgroundColor: 0x262626, bodyForegroundColor: 0xffffff } } });
    await expect.poll(() => office.page.locator("#pane").getAttribute("data-scheme")).toBe("dark");
  });

  it("puts a formula into the selected cell, in the form that Excel takes whatever the user's own signs are", async () => {
    const { page } = await opened({ book: { sheets: { Costs: {} }, selected: ["Costs", "C7"], decimal: "," } });
    await page.getByText("All functions").click();
    await page.getByRole("searchbox").fill("copper demand");
    await page.getByText("LOT.COPPER", { exact: true }).click();
    await page.getByLabel("fine", { exact: true }).fill("2,5");
    await page.getByLabel("unit", { exact: true }).fill("lb");
    await expect.poll(() => page.locator("#pane").innerText()).toContain('=LOT.COPPER(2,5;"lb")');
    await page.getByRole("button", { name: "Insert at C7" }).click();
    await expect.poll(() => page.evaluate(() => window.stub.cells["Costs"]?.["C7"]?.formula)).toBe('=LOT.COPPER(2.5,"lb")');
  });

  it.each([
    ["in the user's browser", {}],
    ["in a tab of its own, where Excel opens no browser for an add-in", { opensNoBrowser: true }],
  ] as const)("opens the reference %s, at the function and written as this Excel takes formulas", async (_, excel) => {
    const { page } = await opened({ book: { sheets: { Costs: {} }, selected: ["Costs", "B4"], decimal: ",", ...excel } });
    await page.getByText("All functions").click();
    await page.getByRole("searchbox").fill("copper");
    await page.keyboard.press("Enter");
    const link = page.getByRole("link", { name: "LOT.COPPER in the reference" });
    const address = "https://lotwright.example/addin/reference.html?decimal=comma#COPPER";
    if ("opensNoBrowser" in excel) {
      await page.context().route("**/reference.html?*", (route) => route.fulfill({ body: built.file("reference.html") ?? "", contentType: "text/html" }));
      const [tab] = await Promise.all([page.waitForEvent("popup"), link.click()]);
      await tab.waitForURL(address);
      expect(await page.evaluate(() => window.stub.browsed)).toEqual([]);
    } else {
      await link.click();
      await expect.poll(() => page.evaluate(() => window.stub.browsed)).toEqual([address]);
      expect(page.context().pages().length).toBe(1);
    }
  });

  it("says so when its code cannot be had, and loads when it is shown again", async () => {
    let offline = true;
    const office = await opened({}, (name) => (offline && isPane(name) ? null : built.file(name)));
    await expect.poll(() => office.page.locator("#pane").innerText()).toMatch(/^The pane could not be loaded: see that this machine is online/);
    offline = false;
    await office.page.evaluate(() => window.stub.showPane());
    await office.page.locator("#pane.lotwright-pane").waitFor();
  });
});

describe("the built page elsewhere", () => {
  it("says in a plain browser where it belongs", async () => {
    const { page } = await opened({ around: "nothing" });
    await expect.poll(() => page.locator("#pane").innerText()).toMatch(/^This is Lotwright's pane for Excel/);
  });

  it("says that it misses Office's script when that cannot be had", async () => {
    const { page } = await openOfficePage(browser, built.file, { around: "no-office" });
    expect(await page.locator("#pane").innerText()).toMatch(/^Office's own script could not be loaded/);
  });
});

describe("the bundle", () => {
  const zipped = (name: string): number => gzipSync(built.file(name) ?? "").length;

  it("keeps the functions' start under 60 kB as it is sent", () => {
    expect(zipped("start.js")).toBeGreaterThan(1_000);
    expect(zipped("start.js")).toBeLessThan(60_000);
  });

  it("holds nothing of the embedded grid", () => {
    const modules = (built.stats.modules ?? []).flatMap(({ name, modules: inner }) => [name ?? "", ...(inner ?? []).map((module) => module.name ?? "")]);
    expect(modules.filter((name) => name.includes("src/excel/"))).not.toEqual([]);
    expect(modules.filter((name) => /o-spreadsheet|src\/engine|src\/host/.test(name))).toEqual([]);
  });
});
