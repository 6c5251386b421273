import { existsSync, readFileSync } from "node:fs";
import { extname } from "node:path";
import type { Browser, Page } from "playwright-core";
import { inRepository } from "../../src/build/excel-files";
import { type StubBook, installStub } from "./stub-excel";

const OFFICE = "https://appsforoffice.microsoft.com/lib/1/hosted";
const ADD_IN = "https://lotwright.example/addin";
const TYPES: Readonly<Record<string, string>> = { ".html": "text/html", ".js": "text/javascript", ".css": "text/css", ".json": "application/json", ".png": "image/png" };

export interface OfficePage {
  readonly page: Page;
  /** Names of the add-in's own files that the page has asked for. */
  readonly asked: readonly string[];
  /** What the page complained of: faults, and what its policy forbade. */
  readonly complaints: readonly string[];
}

export interface Opening {
  readonly book?: StubBook;
  /** Excel on Windows; Excel on the web, of which nobody answers here; no Excel; or not even Office's own script. */
  readonly around?: "excel" | "web" | "nothing" | "no-office";
  /** Excel keeps the page loaded for the functions without showing it. */
  readonly hidden?: boolean;
}

/** How Excel tells office.js where it runs; the last number says that the page serves cell functions. */
const HOSTS = {
  excel: "?_host_Info=Excel$Win32$16.01$en-US$$$$2",
  web: "?_host_Info=Excel$Web$16.01$en-US$$$$2",
  nothing: "",
  "no-office": "",
};

const EMPTY: StubBook = { sheets: { Costs: {} }, selected: ["Costs", "B4"] };

/** Opens a folder's page as Excel does, with the real office.js from the package and no network. */
export async function openOfficePage(browser: Browser, file: (name: string) => Buffer | null, opening: Opening = {}): Promise<OfficePage> {
  const { book = EMPTY, around = "excel", hidden = false } = opening;
  const context = await browser.newContext({ viewport: { width: 320, height: 600 } });
  const page = await context.newPage();
  const asked: string[] = [];
  const complaints: string[] = [];
  page.on("pageerror", (error) => complaints.push(error.message));
  page.on("console", (message) => {
    if (message.type() === "error") complaints.push(message.text());
  });
  await page.route("**/*", (route) => {
    const address = route.request().url().replace(/[?#].*/, "");
    const give = (body: Buffer | null): Promise<void> =>
      body
        ? route.fulfill({ body, contentType: TYPES[extname(address)] ?? "text/plain", headers: { "access-control-allow-origin": "*" } })
        : route.fulfill({ status: 404 });
    if (address.startsWith(OFFICE)) return around === "no-office" ? route.abort() : give(officeFile(address.slice(OFFICE.length)));
    if (!address.startsWith(ADD_IN)) return route.abort();
    const name = address.slice(ADD_IN.length + 1);
    asked.push(name);
    return give(file(name));
  });
  if (around === "excel") await page.addInitScript(installStub, book);
  if (hidden) await page.addInitScript(() => void Object.defineProperty(window, "innerWidth", { value: 0 }));
  await page.goto(`${ADD_IN}/index.html${HOSTS[around]}`);
  return { page, asked, complaints };
}

function officeFile(path: string): Buffer | null {
  const file = inRepository(`node_modules/@microsoft/office-js/dist${path}`);
  return existsSync(file) ? readFileSync(file) : null;
}
