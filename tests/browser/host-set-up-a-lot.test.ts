import axe from "axe-core";
import { readFile } from "node:fs/promises";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { openXlsx } from "../../src/workbook/file";
import { type Started, start } from "../host/started";
import { uglyBooks } from "../lots/ugly/books";
import { tools } from "../outside-tools";
import { convertedTo } from "../workbook/libreoffice";
import { withoutNativeValues } from "../workbook/without-native-values";
import { launch } from "./chromium";

let started: Started;
let browser: Browser;

beforeAll(async () => {
  [started, browser] = await Promise.all([start(), launch()]);
}, 240_000);
afterAll(async () => {
  await browser.close();
  await started.stop();
});

async function open(name: string, bytes: Uint8Array): Promise<Page> {
  const page = await browser.newPage({ viewport: { width: 1280, height: 900 } });
  page.setDefaultTimeout(10_000);
  await page.goto(started.address);
  await page.locator(".file-name", { hasText: "cost-sheet.xlsx" }).waitFor();
  await page.locator(".busy").waitFor({ state: "hidden" });
  await page.locator("input[type=file]").setInputFiles({ name, mimeType: "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet", buffer: Buffer.from(bytes) });
  await page.locator(".file-name", { hasText: name }).waitFor();
  await page.locator(".busy").waitFor({ state: "hidden" });
  return page;
}

const pane = (page: Page) => page.locator(".pane");
const button = (page: Page, name: string | RegExp) => pane(page).getByRole("button", { name });
const field = (page: Page, label: string) => pane(page).getByLabel(new RegExp(`^${label}( may stay empty)?$`));
const at = (page: Page, step: string) => pane(page).getByRole("heading", { name: step, level: 2 }).waitFor();

async function saved(page: Page): Promise<Uint8Array> {
  const download = page.waitForEvent("download");
  await page.keyboard.press("Control+s");
  return new Uint8Array(await readFile(await (await download).path()));
}

async function faultless(page: Page): Promise<void> {
  await page.evaluate(axe.source);
  const { violations } = await page.evaluate(async () => (window as unknown as { axe: typeof axe }).axe.run(".pane"));
  const serious = violations.filter(({ impact }) => impact === "serious" || impact === "critical");
  expect(serious.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(", ")}`)).toEqual([]);
}

interface Case {
  readonly sheet: string;
  readonly row: number;
  /** By the label of the field. */
  readonly typed: Readonly<Record<string, string>>;
  readonly chosen?: Readonly<Record<string, string>>;
  /** By the letter of the column: the formula, or the value where there is none. */
  readonly holds: Readonly<Record<string, string | number>>;
  readonly shows: Readonly<Record<string, number>>;
  readonly note?: readonly [cell: string, text: string];
  /** What stands above Back and Next before anything is written. */
  readonly live: string;
}

const cases: Readonly<Record<string, Case>> = {
  "French Canada": {
    sheet: "Réception",
    row: 8,
    typed: { "Lot number": "26-03-04", Date: "2026-03-30", Client: "-Atelier Est-", Gross: "10", Tare: "0.25", Fineness: "92.5%", Price: "34" },
    chosen: { "Unit of gross": "lb", "Unit of tare": "lb" },
    holds: { A: "26-03-04", B: 46111, C: "-Atelier Est-", E: 4.5359237, F: 0.1133980925, G: "=E8-F8", H: 925, I: "=G8*H8/1000", J: 34, K: 0.96, L: 0.75, M: 40, N: "=ROUND(I8/0.0311034768*(J8*K8-L8)-M8,2)" },
    shows: { G: 4.4225256075, I: 4.0908361869375, N: 4154.28 },
    note: ["E8", "Given: 10 lb"],
    live: "Net9.75 lbFine131.523 oztPayout4158.23by the terms; its column’s formula decides",
  },
  table: {
    sheet: "Intake",
    row: 6,
    typed: { "Lot number": "T-11", Date: "2026-03-30", Client: "@bench", "What it is": "solder and rings", Gross: "104.5", Tare: "4.5", Fineness: "sterling" },
    chosen: { "Unit of gross": "g", "Unit of tare": "g" },
    holds: { B: "T-11", C: 46111, D: "@bench", E: "solder and rings", F: 100, G: 925, H: "=F6*G6/1000" },
    shows: { H: 92.5 },
    note: ["G6", "Given: sterling"],
    live: "Net100 gFine2.974 ozt",
  },
  "two-row headings": {
    sheet: "Lots 2026",
    row: 11,
    typed: { "Lot number": "2026-015", Date: "2026-03-30", Client: "=1+1", Gross: "1000", Tare: "20", Fineness: "900" },
    chosen: { "Known from": "our assay" },
    holds: { A: "2026-015", B: 46111, C: "=1+1", D: 1000, E: 20, F: "=D11-E11", G: 900, H: "=F11*G11/1000/31.1034768", I: 24, J: 0.95, K: "=ROUND(H11*I11*J11,2)" },
    shows: { F: 980, K: 646.54 },
    note: ["G11", "Fineness: our assay"],
    live: "Net980 gFine28.357 oztPayout646.54by the terms; its column’s formula decides",
  },
  "cost-sheet": {
    sheet: "Lots",
    row: 13,
    typed: { "Lot number": "26-03-09", Date: "2026-03-30", Client: "C-31", "What it is": "Forks", Gross: "15.5", Tare: "0.5", Fineness: "925", Payable: "95%" },
    chosen: { "Unit of gross": "lb", "Unit of tare": "lb" },
    holds: { A: "26-03-09", B: "C-31", C: 46111, E: 15.5, F: 0.5, G: "=E13-F13", H: "lb", I: 925, J: "=LOT.FINEWEIGHT(G13,H13,I13)", L: '=LOT.COPPERBARS(K13,"lb",CopperBar,"lb",BarStub)', O: 0.95, P: "=LotCharge", Q: '=LOT.PAYOUT(J13,"ozt",SilverPrice,O13,RefiningCharge,P13)' },
    shows: { G: 15, J: 202.34375, L: 3, Q: 5174.73 },
    live: "Net15 lbFine202.344 oztPayout5174.73",
  },
};

const bytesOf = async (name: string): Promise<Uint8Array> =>
  name === "cost-sheet" ? new Uint8Array(await readFile(new URL("../../sample-workbooks/cost-sheet.xlsx", import.meta.url))) : uglyBooks[name as keyof typeof uglyBooks]();

describe("setting up a lot in the embedded workbook", () => {
  for (const [name, { sheet, row, typed, chosen = {}, holds, shows, note, live }] of Object.entries(cases))
    it(`goes from the first click to the saved file, and back byte for byte: ${name}`, async () => {
      const original = await bytesOf(name);
      const page = await open(`${name.replaceAll(" ", "-")}.xlsx`, original);
      await button(page, /^Set up a lot/).click();
      await at(page, "Where lots live");
      await faultless(page);
      await button(page, "Next").click();
      await at(page, "The lot");
      for (const [label, text] of Object.entries(typed)) await field(page, label).fill(text);
      for (const [label, choice] of Object.entries(chosen)) await pane(page).getByLabel(label, { exact: true }).selectOption(choice);
      await expect.poll(() => pane(page).locator(".lw-figures").textContent()).toBe(live);
      await faultless(page);
      await field(page, "Gross").press("Enter");
      await at(page, "The plan");
      await button(page, "Next").click();
      await at(page, "What will be written");
      await pane(page).getByText("Kept in the workbook for next time: which column is which").waitFor();
      await faultless(page);
      for (const tick of await pane(page).getByRole("checkbox").all()) await tick.check();
      await button(page, "Write the lot").click();
      await pane(page).getByText(`Lot ${typed["Lot number"] ?? ""} is in row ${row} of ${sheet}`).waitFor();
      await faultless(page);

      const bytes = await saved(page);
      const file = openXlsx(bytes);
      const cells = new Map([...file.cells(sheet)].map((cell) => [cell.address, cell]));
      const held = Object.fromEntries(Object.keys(holds).map((letter) => [letter, cells.get(`${letter}${row}`)?.formula ?? cells.get(`${letter}${row}`)?.value]));
      expect(held).toEqual(holds);
      for (const [letter, value] of Object.entries(shows)) expect(Number(cells.get(`${letter}${row}`)?.value), letter).toBeCloseTo(value, 9);
      if (note) expect(file.notes(sheet).get(note[0])).toBe(note[1]);

      const soffice = tools.soffice.find();
      if (soffice !== undefined) {
        const theirs = new Map([...openXlsx(convertedTo(soffice, "book.xlsx", withoutNativeValues(bytes), "xlsx")).cells(sheet)].map(({ address, value }) => [address, value]));
        for (const letter of Object.keys(holds)) {
          const [ours, their] = [cells.get(`${letter}${row}`)?.value, theirs.get(`${letter}${row}`)];
          if (typeof ours === "number") expect(Math.abs(Number(their) - ours), letter).toBeLessThanOrEqual(1e-12 * Math.abs(ours));
          else expect(their, letter).toBe(ours);
        }
      }

      await button(page, "Undo").click();
      await pane(page).getByText("Undone: the workbook is as it was").waitFor();
      expect(Buffer.from(await saved(page)).equals(Buffer.from(original))).toBe(true);
      await page.close();
    }, 60_000);

  it("makes a sheet for the lots of a workbook that has none, and finds it again for the next one", async () => {
    const original = await bytesOf("no list");
    const page = await open("scribbles.xlsx", original);
    await button(page, /^Set up a lot/).click();
    await pane(page).getByText("No list of lots was found").waitFor();
    await button(page, "Next").click();
    await pane(page).getByText("Choose where your lots are listed").waitFor();
    await pane(page).getByLabel("On a new sheet").check();
    await button(page, "Next").click();
    await at(page, "The lot");
    await field(page, "Client").fill("+1 bench");
    await field(page, "Gross").fill("12.5");
    await button(page, "Another reading of gross").click();
    await field(page, "Gross, reading 2").fill("3.25");
    await field(page, "Fineness").fill("92.5");
    await pane(page).getByText('could be %, karat or ‰: write "92.5%" or 925').waitFor();
    await button(page, "Next").click();
    await at(page, "The lot");
    expect(await field(page, "Fineness").evaluate((input) => input === document.activeElement)).toBe(true);
    await field(page, "Fineness").fill("92.5%");
    await field(page, "Price").fill("Prices!A3");
    await field(page, "Payable").fill("98");
    await pane(page).getByText("write 98% or 0.98").waitFor();
    await field(page, "Payable").fill("98%");
    await expect.poll(() => pane(page).locator(".lw-figures").textContent()).toMatch(/Payout11\.25$/);
    await button(page, "Next").click();
    await at(page, "The plan");

    // One step back at a time, and nothing is lost; the pane may be closed too.
    await page.keyboard.press("Escape");
    await at(page, "The lot");
    expect(await field(page, "Gross, reading 2").inputValue()).toBe("3.25");
    await page.keyboard.press("Escape");
    await at(page, "Where lots live");
    await page.keyboard.press("Escape");
    await button(page, /^Set up a lot/).click();
    await at(page, "Where lots live");
    for (const step of ["The lot", "The plan", "What will be written"]) {
      await button(page, "Next").click();
      await at(page, step);
    }
    await button(page, "Write the lot").click();
    await pane(page).getByText(/^Lot \d{4}-001 is in row 2 of Lots$/).waitFor();

    const file = openXlsx(await saved(page));
    const cells = new Map([...file.cells("Lots")].map((cell) => [cell.address, cell.formula ?? cell.value]));
    expect(["C2", "E2", "G2", "H2", "J2", "K2", "O2"].map((cell) => cells.get(cell))).toEqual(["+1 bench", 15.75, "=E2-F2", "92.5%", '=LOT.FINEWEIGHT(G2,"g",H2)', "=Prices!$A$3", '=LOT.PAYOUT(J2,"ozt",K2,L2,M2,N2)']);
    expect(cells.get("L2")).toBe(0.98);
    expect(file.sheets.map(({ name, state }) => [name, state])).toContainEqual(["Lotwright", "hidden"]);

    await button(page, "Set up another lot").click();
    await pane(page).getByText("Lots live on ‘Lots’, row 2.").waitFor();
    await button(page, "Next").click();
    await at(page, "The lot");
    expect(await field(page, "Lot number").inputValue()).toMatch(/^\d{4}-002$/);
    await page.close();
  }, 60_000);

  it("asks for units that the headings do not say, and takes the price from the selected cell", async () => {
    const page = await open("ounces.xlsx", await bytesOf("bare ounces"));
    await button(page, /^Set up a lot/).click();
    await at(page, "Where lots live");
    await button(page, "Next").click();
    await at(page, "Where lots live");
    const unit = pane(page).getByLabel("Unit of net", { exact: true });
    expect(await unit.evaluate((select) => select === document.activeElement)).toBe(true);
    await unit.selectOption("ozt");
    await pane(page).getByLabel("Unit of fineness", { exact: true }).selectOption("%");
    await pane(page).getByLabel("Unit of fine weight").selectOption("ozt");
    await pane(page).getByText(/fields without a column/).click();
    await pane(page).getByLabel("Price", { exact: true }).selectOption("+");
    await pane(page).getByLabel("Payout", { exact: true }).selectOption("+");
    await button(page, "Next").click();
    await at(page, "The lot");
    await button(page, /^Put Lots!A1 into price/).click();
    await pane(page).getByText("Lots!A1").waitFor({ state: "hidden" });
    await field(page, "Price").fill("Lots!C3");
    await field(page, "Gross").fill("10");
    await field(page, "Fineness").fill("925");
    for (const step of ["The plan", "What will be written"]) {
      await button(page, "Next").click();
      await at(page, step);
    }
    await button(page, "Write the lot").click();
    await button(page, "Undo").waitFor();
    const cells = new Map([...openXlsx(await saved(page)).cells("Lots")].map((cell) => [cell.address, cell.formula ?? cell.value]));
    expect(["F1", "G1", "C5", "D5", "E5", "F5", "G5"].map((cell) => cells.get(cell))).toEqual(["Price (per ozt)", "Payout", 10, 92.5, '=LOT.FINEWEIGHT(C5,"ozt",D5/100)', "=$C$3", '=LOT.PAYOUT(E5,"ozt",F5)']);
    await page.close();
  }, 60_000);
});
