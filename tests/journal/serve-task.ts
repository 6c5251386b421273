import axe, { type AxeResults } from "axe-core";
import { build } from "esbuild";
import { readFile } from "node:fs/promises";
import { createServer } from "node:http";
import type { AddressInfo } from "node:net";
import { fileURLToPath } from "node:url";
import type { Page } from "playwright-core";

const PAGE = `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<title>A task by itself</title>
<link rel="stylesheet" href="pane.css">
<link rel="stylesheet" href="page.css">
<script type="module" src="page.js"></script>
</head>
<body><div id="pane"></div></body>
</html>`;

/** Serves a task, or another script of the tests, on a page of its own, with these workbooks by their names. */
export async function serveTask(books: Readonly<Record<string, Uint8Array>>, script = "task-page.ts"): Promise<{ url: string; close(): Promise<void> }> {
  const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));
  const { outputFiles } = await build({ entryPoints: [here(script)], bundle: true, format: "esm", target: "es2022", mainFields: ["module", "main"], write: false });
  const files: Readonly<Record<string, readonly [type: string, text: string]>> = {
    "/": ["text/html", PAGE],
    "/page.js": ["text/javascript", outputFiles[0]?.text ?? ""],
    "/page.css": ["text/css", "html, body, #pane { margin: 0; block-size: 100%; }"],
    "/pane.css": ["text/css", await readFile(here("../../src/pane/pane.css"), "utf8")],
  };
  const server = createServer((request, response) => {
    const url = new URL(request.url ?? "/", "http://localhost");
    const book = url.pathname === "/book.xlsx" ? books[url.searchParams.get("book") ?? ""] : undefined;
    const [type, text] = files[url.pathname] ?? ["text/plain", null];
    response.writeHead(text === null && !book ? 404 : 200, { "content-type": `${type}; charset=utf-8` });
    response.end(book ?? text ?? "");
  });
  await new Promise<void>((ready) => server.listen(0, "127.0.0.1", ready));
  return {
    url: `http://127.0.0.1:${(server.address() as AddressInfo).port}/`,
    close: () => new Promise((closed) => server.close(() => closed())),
  };
}

/** What axe finds that keeps somebody from using the page, in light and in dark. */
export async function serious(page: Page): Promise<string[]> {
  await page.evaluate(axe.source);
  const found: string[] = [];
  for (const colorScheme of ["light", "dark"] as const) {
    await page.emulateMedia({ colorScheme });
    const { violations } = await page.evaluate(() => (window as unknown as { axe: { run(root: string): Promise<AxeResults> } }).axe.run("#pane"));
    found.push(...violations.filter(({ impact }) => impact === "serious" || impact === "critical").flatMap(({ id, nodes }) => nodes.map(({ target, failureSummary }) => `${colorScheme}: ${id} at ${target.join(" ")}: ${failureSummary ?? ""}`)));
  }
  return found;
}
