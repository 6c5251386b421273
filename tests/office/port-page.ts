import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { bundle } from "../../src/build/bundle";
import { base } from "../../src/build/bundles/base";
import { inRepository } from "../../src/build/excel-files";
import { launch } from "../browser/chromium";
import { fileIn } from "./built";
import { openOfficePage } from "./office-page";

const PAGE = '<!doctype html><script src="https://appsforoffice.microsoft.com/lib/1/hosted/office.js"></script><script src="port.js" defer></script>';

export interface PortPage {
  readonly page: Page;
  close(): Promise<void>;
}

/** A page of Excel's with nothing in it but the port over Excel, or another script of the tests. */
export async function openPortPage(entry = "tests/office/port-in-page.ts"): Promise<PortPage> {
  const folder = mkdtempSync(join(tmpdir(), "lotwright-port-"));
  await bundle({ ...base, name: "port", entry: { port: inRepository(entry) }, output: { path: folder, filename: "[name].js" } });
  const browser = await launch();
  const { page } = await openOfficePage(browser, (name) => (name === "index.html" ? Buffer.from(PAGE) : fileIn(folder)(name)));
  await page.evaluate(() => Office.onReady());
  return {
    page,
    async close() {
      await browser.close();
      rmSync(folder, { recursive: true });
    },
  };
}
