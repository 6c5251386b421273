import { mkdtemp, readFile, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import axe from "axe-core";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import { findLots } from "../../src/lots/find";
import { readSheets } from "../../src/lots/sheet-reading";
import { placeChanges } from "../../src/lots/where";
import { type Cell, openXlsx } from "../../src/workbook/file";
import { FilePort } from "../../src/workbook/file-port";
import { type Started, start } from "../host/started";
import { outside } from "../outside";
import { shownBy } from "../workbook/libreoffice";
import { launch } from "./chromium";

let started: Started;
let browser: Browser;
let page: Page;
/** The sample, in which where its lots live is kept. */
let placed = new Uint8Array();
let written = new Uint8Array();

beforeAll(async () => {
  [started, browser] = await Promise.all([start(), launch()]);
  const port = new FilePort(openXlsx(new Uint8Array(await readFile(new URL("../../sample-workbooks/cost-sheet.xlsx", import.meta.url)))));
  const [proposal] = findLots(await readSheets(port)).proposals;
  if (!proposal) throw new Error("The sample has no list of lots");
  await port.write(await placeChanges(port, proposal));
  placed = new Uint8Array(port.file.bytes);
  page = await browser.newPage({ viewport: { width: 1280, height: 900 } });
  page.setDefaultTimeout(15_000);
  await page.goto(started.address);
  await page.locator(".file-name", { hasText: "cost-sheet.xlsx" }).waitFor();
  await page.locator(".busy").waitFor({ state: "hidden" });
  const path = join(await mkdtemp(join(tmpdir(), "lotwright-settle-")), "placed.xlsx");
  await writeFile(path, placed);
  const [chooser] = await Promise.all([page.waitForEvent("filechooser"), page.getByRole("button", { name: /^Open/ }).click()]);
  await chooser.setFiles(path);
  await page.locator(".file-name", { hasText: "placed.xlsx" }).waitFor();
  await page.locator(".busy").waitFor({ state: "hidden" });
}, 240_000);
afterAll(async () => {
  await browser.close();
  await started.stop();
});

const pane = () => page.locator(".pane");
const button = (name: string | RegExp) => pane().getByRole("button", { name });
const field = (name: RegExp) => pane().getByRole("textbox", { name });
const saved = async (): Promise<Uint8Array> => {
  const [download] = await Promise.all([page.waitForEvent("download"), page.keyboard.press("Control+s")]);
  return new Uint8Array(await readFile(await download.path()));
};
const cellsOf = (bytes: Uint8Array, sheet: string): Map<string, Cell> => new Map([...openXlsx(bytes).cells(sheet)].map((cell) => [cell.address, cell]));

it("shows the formats of a workbook to which a sheet of ours was added", async () => {
  expect(await page.getByText("cannot be shown here").count()).toBe(0);
});

it("a lot is settled by exchange of assays, with its statement and its row, in one step", async () => {
  await button(/^Settle a lot/).click();
  // The lot that is still in process comes first.
  await expect.poll(() => pane().locator(".lw-lots .lw-name").first().textContent()).toBe("26-03-07");
  await pane().getByRole("searchbox").fill("trays");
  await button(/26-03-07/).click();
  await field(/^Our assay/).fill("800");
  await field(/^The client’s assay/).fill("79.2%");
  await field(/^Splitting limit/).fill("3");
  await field(/^Price/).fill("Prices!B5");
  await pane().getByText(/needs an umpire assay/).waitFor();
  await field(/^Umpire’s assay/).fill("796");
  await field(/^Crystal weighed out/).fill("136");
  await field(/^Silver on stubs/).fill("0.9");
  await expect.poll(() => pane().locator(".lw-result").textContent()).toContain("at 796 ‰");

  await page.evaluate(axe.source);
  const found = await page.evaluate(async () => {
    const { violations } = await (window as unknown as { axe: { run(on: string): Promise<{ violations: { id: string; impact: string }[] }> } }).axe.run(".pane");
    return violations.filter(({ impact }) => impact === "serious" || impact === "critical").map(({ id }) => id);
  });
  expect(found).toEqual([]);

  // A form survives the pane's leaving it.
  await page.keyboard.press("Escape");
  await button(/^Settle a lot/).click();
  await expect.poll(() => field(/^Umpire’s assay/).inputValue()).toBe("796");

  await button("See what will be written").click();
  await pane().getByText("A new sheet, ‘Statement S-2026-001’").waitFor();
  // The list's own formula knows a refining charge that the form does not.
  await pane().getByText(/Q11 \(Payout, \$\) will show 3,516\.98 by its own formula, and the statement 3,641\.38: the terms differ/).waitFor();
  await page.keyboard.press("Escape");
  await field(/^Refining charge/).fill("Prices!B14");
  await button("See what will be written").click();
  await pane().getByText("A new sheet, ‘Statement S-2026-001’").waitFor();
  expect(await pane().getByText("the terms differ").count()).toBe(0);
  await pane().getByText(/Overwrite Lots!I11|Overwrite I11/).click();
  await button("Write the settlement").click();
  await pane().getByText("Lot 26-03-07 is settled on the sheet ‘Statement S-2026-001’").waitFor();
  expect(await page.evaluate(() => document.scrollingElement?.scrollTop)).toBe(0);

  written = new Uint8Array(await saved());
  const [statement, lots] = [cellsOf(written, "Statement S-2026-001"), cellsOf(written, "Lots")];
  const beside = (label: string): Cell | undefined => statement.get(`B${[...statement.values()].findLast(({ value }) => value === label)?.row}`);
  expect(beside("Agreed fineness, ‰")).toMatchObject({ value: 796, formula: expect.stringContaining("LOT.AGREEDASSAY") });
  expect(lots.get("I11")?.value).toBe(796);
  expect(lots.get("M11")?.value).toBe(136);
  expect(lots.get("Q11")).toMatchObject({ value: beside("Payout")?.value, formula: cellsOf(placed, "Lots").get("Q11")?.formula });
  expect(Number(lots.get("N11")?.value)).toBeCloseTo(Number(beside("Recovery")?.value), 12);

  await button("Undo").click();
  await pane().getByText("Undone: the workbook is as it was").waitFor();
  expect(Buffer.compare(placed, await saved())).toBe(0);
}, 90_000);

outside("soffice", "the settled workbook, opened by LibreOffice", (soffice) => {
  it("shows the stored values of the statement", () => {
    const rows = shownBy(soffice, written).get("Statement S-2026-001") ?? [];
    let compared = 0;
    for (const { row, column, value, formula } of cellsOf(written, "Statement S-2026-001").values()) {
      if (typeof value !== "number" || formula === null) continue;
      const shown = rows[row - 1]?.[column - 1] ?? "";
      const number = shown.endsWith("%") ? Number(shown.slice(0, -1)) / 100 : Number(shown.replace(/[^\d.eE+-]/g, ""));
      expect(Math.abs(number - value), `row ${row} shows ${shown} for ${value}`).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(value)));
      compared++;
    }
    expect(compared).toBeGreaterThan(8);
  }, 60_000);
});
