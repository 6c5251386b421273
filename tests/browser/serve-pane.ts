import { build } from "esbuild";
import { readFile } from "node:fs/promises";
import { createServer } from "node:http";
import type { AddressInfo } from "node:net";
import { fileURLToPath } from "node:url";

const PAGE = `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<title>The pane by itself</title>
<link rel="stylesheet" href="pane.css">
<link rel="stylesheet" href="page.css">
<script type="module" src="page.js"></script>
</head>
<body><div id="pane"></div></body>
</html>`;

/** As strict as the page in Excel: nothing inline, nothing evaluated, nothing from elsewhere. */
const POLICY = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; require-trusted-types-for 'script'; trusted-types 'none'";

/** Serves the pane, or a piece of it, on a page of its own, with a workbook in memory. */
export async function servePane(page = "pane-page.ts"): Promise<{ url: string; close(): Promise<void> }> {
  const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));
  const { outputFiles } = await build({ entryPoints: [here(page)], bundle: true, format: "esm", target: "es2022", write: false });
  const files: Readonly<Record<string, readonly [type: string, text: string]>> = {
    "/": ["text/html", PAGE],
    "/page.js": ["text/javascript", outputFiles[0]?.text ?? ""],
    "/page.css": ["text/css", "html, body, #pane { margin: 0; block-size: 100%; }"],
    "/pane.css": ["text/css", await readFile(here("../../src/pane/pane.css"), "utf8")],
  };
  const server = createServer((request, response) => {
    const [type, text] = files[new URL(request.url ?? "/", "http://localhost").pathname] ?? ["text/plain", null];
    response.writeHead(text === null ? 404 : 200, { "content-type": `${type}; charset=utf-8`, "content-security-policy": POLICY });
    response.end(text ?? "");
  });
  await new Promise<void>((ready) => server.listen(0, "127.0.0.1", ready));
  return {
    url: `http://127.0.0.1:${(server.address() as AddressInfo).port}/`,
    close: () => new Promise((closed) => server.close(() => closed())),
  };
}
