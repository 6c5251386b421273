import { readFileSync, rmSync } from "node:fs";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import { openXlsx } from "../../src/workbook/file";
import { launch } from "../browser/chromium";
import { type Built, buildAddIn } from "./built";
import { type OfficePage, openOfficePage } from "./office-page";

let built: Built;
let browser: Browser;
const sample = readFileSync(new URL("../../sample-workbooks/cost-sheet.xlsx", import.meta.url));

beforeAll(async () => {
  built = await buildAddIn("https://lotwright.example/addin/");
  browser = await launch();
}, 120_000);
afterAll(async () => {
  await browser?.close();
  rmSync(built.folder, { recursive: true });
});

interface Handing {
  opened: string[];
  closed: number;
}

/** The pane in a workbook whose file Excel gives in slices, and which takes new workbooks. */
async function shared(fails: boolean): Promise<OfficePage> {
  const office = await openOfficePage(browser, built.file, {});
  await office.page.evaluate(() => Office.onReady());
  await office.page.evaluate(
    ([bytes, broken]) => {
      const handing: Handing = { opened: [], closed: 0 };
      (window as unknown as { handing: Handing }).handing = handing;
      const data = [...atob(bytes)].map((sign) => sign.charCodeAt(0));
      const size = 5000;
      const status = (good: boolean): string => (good ? "succeeded" : "failed");
      type Answer = (result: unknown) => void;
      const file = {
        size: data.length,
        sliceCount: Math.ceil(data.length / size),
        getSliceAsync: (i: number, answer: Answer): void => answer({ status: status(!(broken && i === 1)), error: { message: "the file is in use" }, value: { data: data.slice(i * size, (i + 1) * size) } }),
        closeAsync: (): void => void handing.closed++,
      };
      const document = { url: "https://files.example/books/cost%20sheet.xlsx", getFileAsync: (_type: string, _options: object, answer: Answer) => answer({ status: status(true), value: file }) };
      // What office.js itself gives here cannot be written over.
      Object.assign(window, { Office: Object.create(Office, { context: { value: Object.create(Office.context, { document: { value: document } }) } }) });
      Object.assign(Excel, { createWorkbook: async (base64: string) => void handing.opened.push(base64) });
    },
    [sample.toString("base64"), fails] as const,
  );
  await office.page.getByRole("button", { name: /^Share a copy/ }).click();
  await office.page.getByRole("button", { name: "Make the copy" }).click();
  return office;
}
const handing = ({ page }: OfficePage): Promise<Handing> => page.evaluate(() => (window as unknown as { handing: Handing }).handing);

it("the workbook's own file becomes a copy without our formulas, opened as a new workbook", async () => {
  const office = await shared(false);
  await office.page.getByText(/it is open as a new workbook: save it, as cost sheet for the bookkeeper\.xlsx/).waitFor();
  const { opened, closed } = await handing(office);
  expect([opened.length, closed]).toEqual([1, 1]);
  const copy = openXlsx(Buffer.from(opened[0] ?? "", "base64"));
  expect(copy.sheets.flatMap(({ name }) => [...copy.cells(name)].filter(({ formula }) => formula?.includes("LOT.")))).toEqual([]);
  expect(office.complaints).toEqual([]);
}, 60_000);

it("nothing is opened where Excel cannot give the file, and the pane says why", async () => {
  const office = await shared(true);
  await office.page.getByText("Cannot read the workbook's own file: the file is in use").waitFor();
  expect(await handing(office)).toEqual({ opened: [], closed: 1 });
}, 60_000);
