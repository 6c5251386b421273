import { readFileSync, realpathSync, statSync } from "node:fs";
import type { RequestListener } from "node:http";
import { dirname, extname, join } from "node:path";
import { isThisMachine } from "./this-machine.mjs";

const TYPES: Readonly<Record<string, string>> = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".json": "application/json; charset=utf-8",
  ".xml": "application/xml; charset=utf-8",
  ".txt": "text/plain; charset=utf-8",
  ".png": "image/png",
};

const PLAIN = { "content-type": "text/plain; charset=utf-8", "x-content-type-options": "nosniff" };

/** Serves the files that lie in one folder, and nothing beside or below it, to this machine alone. */
export const serveFolder =
  (folder: string): RequestListener =>
  (request, response) => {
    const name = (request.url ?? "").replace(/[?#].*$/, "").slice(1) || "index.html";
    // A page elsewhere that points its own name at this machine must not read what is served here.
    if (!isThisMachine(request.headers.host)) return void response.writeHead(403, PLAIN).end("Lotwright answers on this machine alone: open it at localhost");
    if (request.method !== "GET" && request.method !== "HEAD") return void response.writeHead(405, { ...PLAIN, allow: "GET, HEAD" }).end("Lotwright only gives files");
    const path = fileIn(folder, name);
    if (path === null) return void response.writeHead(404, PLAIN).end("There is no such file here");
    response.writeHead(200, {
      "content-type": TYPES[extname(name)] ?? "application/octet-stream",
      // Excel would keep an old build otherwise, and Excel on the web asks from an address of its own.
      "cache-control": "no-store",
      "access-control-allow-origin": "*",
      "x-content-type-options": "nosniff",
    });
    response.end(request.method === "HEAD" ? undefined : readFileSync(path));
  };

/** A file of that name which lies in the folder itself, also after every link is followed. */
function fileIn(folder: string, name: string): string | null {
  if (!/^[\w-][\w.-]*$/.test(name)) return null;
  try {
    const found = realpathSync(join(folder, name));
    return dirname(found) === realpathSync(folder) && statSync(found).isFile() ? found : null;
  } catch {
    return null;
  }
}
