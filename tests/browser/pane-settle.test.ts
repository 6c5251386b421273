import axe, { type AxeResults } from "axe-core";
import { unzipSync } from "fflate";
import type { Browser, Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, describe, expect, it } from "vitest";
import type { Cell } from "../../src/workbook/file";
import type { FilePort } from "../../src/workbook/file-port";
import { launch } from "./chromium";
import { QuoteBook } from "./quote-book";
import { servePane } from "./serve-pane";
import { OPEN_LOT, sampleBook, settleBook } from "./settle-book";

let browser: Browser;
let server: Awaited<ReturnType<typeof servePane>>;
let page: Page;
let faults: string[] = [];

beforeAll(async () => {
  [browser, server] = await Promise.all([launch(), servePane("settle-page.ts")]);
});
afterAll(async () => {
  await browser?.close();
  await server?.close();
});
afterEach(async () => {
  await page.close();
  expect(faults).toEqual([]);
});

let book: FilePort;

async function show(shown: FilePort, query = ""): Promise<void> {
  book = shown;
  faults = [];
  page = await browser.newPage({ viewport: { width: 300, height: 700 } });
  page.setDefaultTimeout(15_000);
  page.on("pageerror", (error) => faults.push(error.message));
  await new QuoteBook(book).servedTo(page);
  await page.goto(server.url + query);
  await page.locator(".lw-lot-picker > *").first().waitFor();
}

const button = (name: string | RegExp) => page.getByRole("button", { name });
const field = (name: RegExp) => page.getByRole("textbox", { name });
const result = () => page.locator(".lw-result").textContent();
const rows = (table: number): Promise<string[]> => page.locator(".lw-statement").nth(table).locator("tr").allTextContents();
const cells = (sheet: string): Map<string, Cell> => new Map([...book.file.cells(sheet)].map((cell) => [cell.address, cell]));
const beside = (of: ReadonlyMap<string, Cell>, label: string): Cell | undefined => of.get(`B${[...of.values()].findLast(({ value, column }) => column === 1 && value === label)?.row}`);

/** By exchange of assays, the umpire's between the two, with an outturn. */
async function fillIn(): Promise<void> {
  await button(new RegExp(`^${OPEN_LOT}`)).click();
  for (const [name, value] of [[/^Our assay/, "800"], [/^The client’s assay/, "79.2%"], [/^Splitting limit/, "3"], [/^Umpire’s assay/, "796"], [/^Crystal weighed out/, "136"], [/^Silver on stubs/, "0.9"], [/^In filters/, "0.6"]] as const) await field(name).fill(value);
  await expect.poll(result).toContain("at 796 ‰");
}

/** What axe finds that keeps somebody from using the page. */
async function serious(): Promise<string[]> {
  await page.evaluate(axe.source);
  const { violations } = await page.evaluate(() => (window as unknown as { axe: { run(root: string): Promise<AxeResults> } }).axe.run("#pane"));
  return violations.filter(({ impact }) => impact === "serious" || impact === "critical").flatMap(({ id, nodes }) => nodes.map(({ target, failureSummary }) => `${id} at ${target.join(" ")}: ${failureSummary ?? ""}`));
}

describe("settling a lot", () => {
  it("goes from the open lot to its statement, its row and its picture, and back byte for byte", async () => {
    await show(await settleBook());
    const before = Buffer.from(book.file.bytes);
    expect(await page.locator(".lw-lots .lw-name").first().textContent()).toBe(OPEN_LOT);
    await fillIn();
    expect([await field(/^Statement number/).inputValue(), await field(/^Price/).inputValue(), await field(/^Refining charge/).inputValue()]).toEqual(["S-2026-041", "Prices!B5", "Prices!B14"]);
    const shown = await rows(0);
    expect(shown.at(-3)).toMatch(/^Payout\$3,5\d\d\.\d\d$/);
    expect(shown.at(-2)).toMatch(/^Quoted\$/);
    expect((await rows(1)).map((row) => row.split(/\d/)[0])).toEqual(["Crystal", "On stubs", "Filter and basket residues", "Unaccounted"]);
    await button("See what will be written").click();
    await page.getByText("A new sheet, ‘Statement S-2026-041’").waitFor();
    await page.getByLabel(/Overwrite Lots!I11/).check();
    await button("Write the settlement").click();
    await page.getByText(`Lot ${OPEN_LOT} is settled on the sheet ‘Statement S-2026-041’`).waitFor();

    const [statement, lots] = [cells("Statement S-2026-041"), cells("Lots")];
    expect([beside(statement, "Gross weight"), beside(statement, "Tare"), beside(statement, "Net weight")].map((cell) => cell?.value)).toEqual([lots.get("E11")?.value, lots.get("F11")?.value, lots.get("G11")?.value]);
    expect(beside(statement, "Agreed fineness, ‰")).toMatchObject({ value: 796, formula: expect.stringContaining("LOT.AGREEDASSAY") });
    expect(`Payout$${beside(statement, "Payout")?.value?.toLocaleString("en-US")}`).toBe(shown.at(-3));
    expect(lots.get("M11")?.value).toBe(136);
    expect(lots.get("Q11")?.value).toBe(beside(statement, "Payout")?.value);
    expect(Number(lots.get("N11")?.value)).toBeCloseTo(Number(beside(statement, "Recovery")?.value), 12);
    const drawings = Object.entries(unzipSync(book.file.bytes)).filter(([name]) => name.includes("drawings/drawing")).map(([, part]) => new TextDecoder().decode(part));
    expect(drawings.join("")).toMatch(/Where the silver went: of 139\.300 ozt charged, crystal 136\.000 ozt/);

    await button("Undo").click();
    await page.getByText("Undone: the workbook is as it was").waitFor();
    expect(Buffer.compare(Buffer.from(book.file.bytes), before)).toBe(0);
  }, 60_000);

  it("waits for the umpire without calling it a mistake, and asks for the limit where there are two assays", async () => {
    await show(await settleBook());
    await button(new RegExp(`^${OPEN_LOT}`)).click();
    await field(/^Our assay/).fill("800");
    expect(await field(/^Splitting limit/).isVisible()).toBe(false);
    await field(/^The client’s assay/).fill("792");
    await page.getByText("Write the splitting limit that was agreed").first().waitFor();
    await field(/^Splitting limit/).fill("3");
    await expect.poll(result).toContain("needs an umpire assay");
    expect(await page.locator("[aria-invalid=true]").count()).toBe(0);
    await button("See what will be written").click();
    await expect.poll(() => page.evaluate(() => (document.activeElement as HTMLInputElement).labels?.[0]?.textContent)).toContain("Umpire’s assay");
    expect(await page.locator(".lw-review").count()).toBe(0);
    // Within the limit their mean is settled on.
    await field(/^The client’s assay/).fill("798");
    await expect.poll(result).toContain("at 799 ‰");
  }, 60_000);

  it("says that the row's own formula pays something else, and writes the statement's payout there when it is ticked", async () => {
    await show(await settleBook());
    await fillIn();
    await field(/^Payable share/).fill("95%");
    await button("See what will be written").click();
    await page.getByText(/^Q11 \(Payout, \$\) will show [\d.,$]+ by its own formula, and the statement \$[\d.,]+: the terms differ, so look at them before you write, or tick Q11 to take the statement’s payout$/).waitFor();
    await page.getByLabel(/Overwrite Lots!Q11/).check();
    await button("Write the settlement").click();
    await page.getByText(/is settled on the sheet .*; 1 filled cell stays as before/).waitFor();
    const payout = beside(cells("Statement S-2026-041"), "Payout")?.value;
    expect(cells("Lots").get("Q11")).toMatchObject({ value: payout, formula: expect.stringMatching(/^='Statement S-2026-041'!\$B\$\d+$/) });
    expect(cells("Lots").get("I11")?.value).not.toBe(796);
  }, 60_000);

  it("says what looks odd, and draws more that came out than went in", async () => {
    await show(await settleBook());
    await fillIn();
    await field(/^Crystal weighed out/).fill("5");
    await page.getByLabel("Unit of crystal weighed out").selectOption("kg");
    await page.getByText(/^Outturn \(5 kg\) is above the fine weight that was charged/).waitFor();
    await page.getByText(/ozt more came out than went in/).waitFor();
    await expect.poll(async () => (await rows(1)).at(-1)).toMatch(/^Unaccounted[-−]/);
    await expect.poll(() => page.getByRole("img", { name: /more came out than went in$/ }).count()).toBe(1);
  }, 60_000);

  it("keeps what was written when the pane is closed, and forgets it for another lot", async () => {
    await show(await settleBook());
    await fillIn();
    await page.evaluate(() => window.settling.open());
    await expect.poll(() => field(/^Umpire’s assay/).inputValue()).toBe("796");
    await button("Another lot").click();
    await button(/^26-03-08/).click();
    expect(await field(/^Silver on stubs/).inputValue()).toBe("");
  }, 60_000);

  it("pays in metal", async () => {
    await show(await settleBook());
    await fillIn();
    await page.getByLabel("Payment").selectOption("metal");
    await page.getByLabel("Metal returned in").selectOption("g");
    await expect.poll(result).toMatch(/^Metal to return[\d.,]+ g$/);
    await button("See what will be written").click();
    await button("Write the settlement").click();
    await page.getByText("is settled on the sheet").waitFor();
    expect(beside(cells("Statement S-2026-041"), "Fine metal returned")?.formula).toContain("LOT.METALRETURN");
  }, 60_000);

  it("says what to do first in a workbook in which nothing was told", async () => {
    await show(await sampleBook());
    await page.getByText("set up a lot first, which finds the place and keeps it").waitFor();
    expect(await button("See what will be written").isVisible()).toBe(false);
    expect(await serious()).toEqual([]);
  }, 60_000);

  it("reads and writes numbers as the user's spreadsheet does", async () => {
    await show(await settleBook(), "?decimal=,");
    await button(new RegExp(`^${OPEN_LOT}`)).click();
    await field(/^Our assay/).fill("79,6%");
    await field(/^Crystal weighed out/).fill("136,25");
    await expect.poll(result).toContain("at 796 ‰");
    expect((await rows(1))[0]).toMatch(/^Crystal136,250 ozt9\d,\d\d %$/);
  }, 60_000);

  it("is usable by everyone, light, dark and in forced colours, and does not scroll sideways", async () => {
    await show(await settleBook());
    expect(await serious()).toEqual([]);
    await fillIn();
    await field(/^Liquor|^Left in the liquor/).fill("-1");
    await page.getByText("it must be a number from 0 up").waitFor();
    expect(await serious()).toEqual([]);
    await field(/^Left in the liquor/).fill("0.05");
    await button("See what will be written").click();
    await page.locator(".lw-review").waitFor();
    for (const look of [{ colorScheme: "light" }, { colorScheme: "dark" }, { colorScheme: "light", forcedColors: "active" }] as const) {
      await page.emulateMedia(look);
      expect(await serious(), JSON.stringify(look)).toEqual([]);
    }
    expect(await page.evaluate(() => (document.querySelector("#pane")?.scrollWidth ?? 0) - (document.querySelector("#pane")?.clientWidth ?? 0))).toBe(0);
  }, 60_000);
});
