import type { Browser, Page } from "playwright-core";
import { openXlsx } from "../../src/workbook/file";
import { FilePort } from "../../src/workbook/file-port";
import { launch } from "../browser/chromium";
import { serveTask } from "../journal/serve-task";
import { openPortPage } from "../office/port-page";
import { stubBook } from "./stub-book";
import { type WritingTask, books } from "./tasks";

export const ports = ["file", "grid", "Excel"] as const;
export type PortName = (typeof ports)[number];

export interface Pages {
  /** A task, filled in beside a port, until its review can be shown. */
  filled(port: PortName, task: WritingTask): Promise<Page>;
  leave(page: Page): Promise<void>;
  close(): Promise<void>;
}

/** Pages with the pane beside each port; with a stride they try each n-th fault alone. */
export async function openPages(stride = 1): Promise<Pages> {
  const [shop, months, ledger] = await Promise.all([books.shop(), books.months(), books.ledger()]);
  const bytes = { shop, months, ledger };
  const more = `&stride=${stride}`;
  const [browser, server, excel]: [Browser, Awaited<ReturnType<typeof serveTask>>, Awaited<ReturnType<typeof openPortPage>>] = await Promise.all([launch(), serveTask(bytes, "../faults/book-page.ts"), openPortPage("tests/faults/office-page.ts")]);
  return {
    async filled(port, { title, book, fill }) {
      const page = port === "Excel" ? excel.page : await browser.newPage({ viewport: { width: 400, height: 900 } });
      page.setDefaultTimeout(20_000);
      if (port === "Excel") {
        const held = await stubBook(new FilePort(openXlsx(bytes[book])));
        await page.goto(`${page.url().replace(/&stride=\d+$/, "")}${more}`);
        await page.evaluate((one) => window.stub.open(one), held);
      } else await page.goto(`${server.url}?book=${book}&port=${port}${more}`);
      await page.waitForFunction(() => window.trial);
      await page.evaluate((one) => window.trial.open(one), title);
      await fill(page);
      await page.evaluate(() => window.trial.settled());
      return page;
    },
    leave: async (page) => void (page === excel.page || (await page.close())),
    async close() {
      await browser.close();
      await server.close();
      await excel.close();
    },
  };
}
