import { existsSync, readFileSync } from "node:fs";
import type { RequestListener } from "node:http";
import { extname, join } from "node:path";

const TYPES: Readonly<Record<string, string>> = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".json": "application/json; charset=utf-8",
  ".xml": "application/xml; charset=utf-8",
  ".txt": "text/plain; charset=utf-8",
  ".png": "image/png",
};

/** Serves the files that lie in one folder, and nothing beside or below it. */
export const serveFolder =
  (folder: string): RequestListener =>
  (request, response) => {
    const name = (request.url ?? "").replace(/[?#].*$/, "").slice(1) || "index.html";
    const path = join(folder, name);
    if (request.method !== "GET" && request.method !== "HEAD") return void response.writeHead(405, { allow: "GET, HEAD" }).end();
    if (!/^[\w-][\w.-]*$/.test(name) || !existsSync(path)) return void response.writeHead(404, { "content-type": "text/plain" }).end("There is no such file here");
    response.writeHead(200, {
      "content-type": TYPES[extname(name)] ?? "application/octet-stream",
      // Excel would keep an old build otherwise, and Excel on the web asks from an address of its own.
      "cache-control": "no-store",
      "access-control-allow-origin": "*",
      "x-content-type-options": "nosniff",
    });
    response.end(request.method === "HEAD" ? undefined : readFileSync(path));
  };
